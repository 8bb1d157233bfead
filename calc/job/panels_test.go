package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
)

// IRC 2021 Table R503.2.1.1(1): the rating that a panel of a thickness is sure of,
// and the other one that its stamp may say.
func TestTheRatingFollowsTheThickness(t *testing.T) {
	read := func(surface string) *job.Job {
		j, faults := job.Read(files("a.yaml", "name: A\nplatform: {length: 12', width: 8', use: shed, surface: {kind: panels, "+surface+"}}\ntimber: {species: hem_fir, grade: No.2}\nsite: {soil: {class: clay}}\n"), "a.yaml")
		require.True(t, faults.Empty(), "%s: %v", surface, faults)
		return j
	}
	for surface, want := range map[string]int{`thickness: 19/32"`: 16, `thickness: 5/8"`: 16, `thickness: 5/8", span_rating: 20`: 20, `thickness: 23/32"`: 24, `thickness: 18.3 mm`: 24, `thickness: 3/4"`: 24,
		`thickness: 7/8"`: 32, `thickness: 22 mm`: 24, `thickness: 1 3/32"`: 48, `thickness: 1 1/8"`: 48, `thickness: 1", span_rating: 32`: 32} {
		assert.Equal(t, want, read(surface).Platform.Surface.SpanRating, surface)
	}
}

// A rating that no panel of the thickness has is a fault; a thickness that has no
// published rating says its own, at most that of the thinner neighbours, and 18 mm
// is what 23/32 in is sold as (IRC 2021 Table R503.2.1.1(1)). None below 19/32 in.
func TestNoPanelIsRatedAboveItsThickness(t *testing.T) {
	for surface, wrong := range map[string]string{
		`thickness: 5/8", span_rating: 24`:   "no single-floor panel of 5/8″ is rated 24",
		`thickness: 3/4", span_rating: 48`:   "no single-floor panel of 3/4″ is rated 48",
		`thickness: 11/16", span_rating: 48`: "no single-floor panel of 11/16″ is rated 48",
		`thickness: 11/16"`:                  "no rating is published",
		`thickness: 1", span_rating: 48`:     "is rated 48",
		`thickness: 1/2", span_rating: 24`:   "for no single floor",
		`thickness: 15/32"`:                  "for no single floor",
		`thickness: 18 mm, span_rating: 24`:  "",
		`thickness: 11/16", span_rating: 20`: "",
		`thickness: 1 1/4", span_rating: 48`: "",
		`thickness: 12 mm, span_rating: 16`:  "for no single floor",
	} {
		_, faults := job.Read(files("a.yaml", bare+"platform: {length: 12', width: 8', use: shed, surface: {kind: panels, "+surface+"}}\n"), "a.yaml")
		if wrong == "" {
			assert.True(t, faults.Empty(), "%s: %v", surface, faults)
			continue
		}
		require.False(t, faults.Empty(), surface)
		assert.Contains(t, faults.Sorted()[0].Wrong, wrong, surface)
	}
}
