package heights_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/fieldtest"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Half a foot off the whole place is the same place half a foot lower: every
// reading half a foot longer, the bar half a foot sooner on what it met.
func TestCutPlaceIsTheSamePlaceLower(t *testing.T) {
	off := fieldtest.In(6)
	cut := fieldtest.SampleJob()
	delete(cut.Ground.Probes, "C1") // its rock lies too high for a hole half a foot lower
	cut.Ground.Cuts = map[string]job.Cut{"all": {By: off, X: -20 * measure.Foot, Y: -20 * measure.Foot, Length: 60 * measure.Foot, Width: 60 * measure.Foot}}
	lower := fieldtest.SampleJob()
	delete(lower.Ground.Probes, "C1")
	for s, setUp := range lower.Ground.SetUps {
		for i, sight := range setUp {
			if sight.Point != "bench_mark" && sight.Point != "TP1" {
				lower.Ground.SetUps[s][i].Reading += off
			}
		}
	}
	for name, probe := range lower.Ground.Probes {
		probe.Depth -= off
		lower.Ground.Probes[name] = probe
	}
	f := fieldtest.SampleFrame()
	got, want := fieldtest.Work(t, cut, f), fieldtest.Work(t, lower, f)
	require.NotNil(t, want.Floor)
	assert.Equal(t, want.Floor.Height, got.Floor.Height)
	for i := range want.Piers {
		assert.InDelta(t, float64(want.Piers[i].Hole.Dig), float64(got.Piers[i].Hole.Dig), 100, want.Piers[i].Name)
		assert.InDelta(t, float64(want.Piers[i].Hole.Stone), float64(got.Piers[i].Hole.Stone), 100)
		assert.InDelta(t, float64(want.Piers[i].Hole.Post), float64(got.Piers[i].Hole.Post), 100)
	}
	drops, cutDrops := want.Heights.Drops, got.Heights.Drops
	for i := range drops {
		assert.InDelta(t, float64(drops[i].Drop), float64(cutDrops[i].Drop), 100, "the drops beside the floor grow with it")
	}
	assert.Equal(t, len(want.Heights.Humps), len(got.Heights.Humps))
}

// Cutting the high end takes away a clash that nothing else but a taller post does.
func TestCutHighEndFreesTheHeights(t *testing.T) {
	j := fieldtest.AllRead()
	j.Frame.Posts.Longest = fieldtest.In(4)
	f := fieldtest.SampleFrame()
	clash := fieldtest.Work(t, j, f).Clash
	require.NotNil(t, clash)
	var piers []string
	for _, p := range f.Piers {
		piers = append(piers, p.Name)
	}
	low := fieldtest.Work(t, j, f).Piers[0].Level.Height
	for _, p := range fieldtest.Work(t, j, f).Piers {
		low = min(low, p.Level.Height)
	}
	j.Ground.Cuts = map[string]job.Cut{"bench": {To: &low, Piers: piers, Reach: 2 * measure.Foot}}
	assert.Nil(t, fieldtest.Work(t, j, f).Clash)
}
