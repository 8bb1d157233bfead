package blocks

import (
	"flag"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/job"
	"pierbook/content"
	"pierbook/diagrams"
)

var update = flag.Bool("update", false, "write the golden files anew")

// sample works the built-in sample job through.
func sample(t testing.TB) *calc.Plan {
	t.Helper()
	j, faults := job.Read(content.Sample, content.SampleJob)
	require.NoError(t, faults.Err())
	p, faults := calc.Work(j)
	require.NoError(t, faults.Err())
	return p
}

// The picture in the README is the sample's own section along line A.
func TestPictureOfTheReadme(t *testing.T) {
	p := sample(t)
	svg, err := diagrams.Draw(sections(p)[0], p.Style)
	require.NoError(t, err)
	const path = "../../testdata/drawings/section-a.svg"
	if *update {
		require.NoError(t, os.WriteFile(path, svg, 0o644))
	}
	kept, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(kept), string(svg), "run go test ./layouts/blocks -update and look at the picture")
}

// Where a step's front leaves little height for it, the ground plan still tells
// the height at every place.
func TestGroundPlanTellsEveryHeightWhereItIsSmall(t *testing.T) {
	p := sample(t)
	d := contours(p)[0].(diagrams.Contours)
	svg, err := diagrams.DrawWithin(d, p.Style, heightFor(content.Call{Front: true}))
	require.NoError(t, err)
	for _, spot := range d.Spots {
		assert.Contains(t, string(svg), ">"+spot.Height.Print(p.Style)+"<", spot.Name)
	}
}
