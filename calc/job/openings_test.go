package job_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

func withOpenings(openings string) string {
	return strings.Replace(dozen, "  use: hen_house\n", "  use: hen_house\n  openings:\n"+openings, 1)
}

func TestOpenings(t *testing.T) {
	j := read(t, "job.yaml", withOpenings("    hatch: {x: 30\", y: 2', length: 24\", width: 20\"}\n    pipe-1: {x: 54\", y: 0, length: 4\", width: 4\"}\n"))
	assert.Equal(t, map[string]job.Opening{
		"hatch":  {X: 30 * measure.Inch, Y: 24 * measure.Inch, Length: 24 * measure.Inch, Width: 20 * measure.Inch},
		"pipe-1": {X: 54 * measure.Inch, Length: 4 * measure.Inch, Width: 4 * measure.Inch},
	}, j.Platform.Openings, "an edge in common is no overlap")
	assert.Equal(t, []string{"hatch", "pipe-1"}, j.Platform.OpeningNames())
}

func TestFaultsOfOpeningsInOneGo(t *testing.T) {
	got := faultsOf(t, "job.yaml", withOpenings(`    a: {x: 9', y: 0, length: 2', width: 2'}
    b: {x: 0, y: 0, length: 11', width: 1'}
    c: {x: 1', y: 6', length: 0, width: 1'}
    d: {x: 9' 6", y: 1', length: 6", width: 6"}
    e: {x: 4', y: 7', length: 6"}
    <script>: {x: 4', y: 4', length: 6", width: 6"}
    f: {x: -1", y: 4', length: 6", width: 6"}
`))
	for _, want := range []string{
		"job.yaml:7:12: platform.openings.a.x: the opening ends at 11′ 0″ along the beams, and the frame at 10′ 0″",
		"begin it at 8′ 0″ or less",
		`job.yaml:8:5: platform.openings.b: the opening "b" overlaps the opening "a"`,
		"move one of the two, or make one opening of both",
		"job.yaml:8:29: platform.openings.b.length: the opening is 11′ 0″ along the beams, and the platform only 10′ 0″",
		"make it smaller than the platform",
		`job.yaml:9:31: platform.openings.c.length: "0" is too small`,
		`job.yaml:10:5: platform.openings.d: the opening "d" overlaps the opening "a"`,
		"job.yaml:11:5: platform.openings.e.width: is missing",
		"write its size across the beams",
		`job.yaml:12:5: platform.openings: "<script>" is not the name of a floor opening`,
		`job.yaml:13:12: platform.openings.f.x: "-1\"" is too small`,
	} {
		assert.Contains(t, plainly(got), want)
	}
	assert.Equal(t, 8, strings.Count(got, "job.yaml:"), "and no more: "+got)
}

func plainly(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }
