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
