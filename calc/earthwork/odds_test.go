package earthwork_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/fieldtest"
	"pierbook/calc/job"
)

func TestOddsOfTheStone(t *testing.T) {
	j := fieldtest.SampleJob()
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	o := g.Odds
	require.NotNil(t, o)
	assert.Equal(t, [2]int{3, 12}, [2]int{o.Probed, o.Unknown})
	assert.Equal(t, fieldtest.In(6), o.Mean, "6, 9 and 3")
	assert.Equal(t, fieldtest.In(3), o.Scatter)
	assert.GreaterOrEqual(t, o.NineInTen.Compacted, o.Even.Compacted)
	assert.GreaterOrEqual(t, float64(o.NineInTen.Chance), 0.9)
	assert.GreaterOrEqual(t, float64(o.Even.Chance), 0.5)
	assert.Positive(t, o.OneMoreSaves)
	// At even odds the unknown beds are taken at the mean of the known.
	side := fieldtest.In(20).Times(fieldtest.In(20))
	assert.InDelta(t, float64(side.Deep(fieldtest.In(18+12*6))+g.Stone.Beside), float64(o.Even.Compacted), 1e-9)

	j.Ground.Probes = map[string]job.Probe{"A1": {Depth: fieldtest.In(8.5), Found: "firm"}}
	assert.Nil(t, fieldtest.Work(t, j, fieldtest.SampleFrame()).Odds, "one probe says nothing of the scatter")
}

// On a slope along the frame alone, soil fills a wedge: V = width × depth² / (2 × slope).
func TestSoilLevelsTheLowSide(t *testing.T) {
	f := fieldtest.SampleFrame()
	j := fieldtest.AllRead()
	setUp := fieldtest.Sights("bench_mark", 60.0)
	for _, p := range f.Piers {
		setUp = append(setUp, job.Sight{Point: p.Name, Reading: fieldtest.In(60) + p.X.Scale(0.05)})
	}
	j.Ground.SetUps = [][]job.Sight{setUp}
	g := fieldtest.Work(t, j, f)
	low := -f.Length.Scale(0.05)
	depth := (g.Spoil.Level - low).Metres()
	assert.InDelta(t, float64(g.Spoil.Packed), f.Width.Metres()*depth*depth/(2*0.05), 1e-4)
	// The heap is a pyramid with slopes of 1 in 1.5: a third of its base by its height.
	side := g.Spoil.Heap.Metres()
	assert.InDelta(t, float64(g.Spoil.Loose), side*side*(side/3)/3, 1e-6)
}
