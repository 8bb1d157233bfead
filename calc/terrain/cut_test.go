package terrain_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/fieldtest"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// flat is the sample with every pier read at the height of the bench mark.
func flat(cuts map[string]job.Cut) *job.Job {
	j := fieldtest.AllRead()
	for i := range j.Ground.SetUps[0] {
		j.Ground.SetUps[0][i].Reading = fieldtest.In(60)
	}
	j.Ground.Cuts = cuts
	return j
}

func groundOf(t *testing.T, j *job.Job) (*terrain.Ground, string) {
	book, faults := levelling.Reduce(j)
	require.NoError(t, faults.Err())
	g, faults := terrain.Read(j, fieldtest.SampleFrame(), book)
	if err := faults.Err(); err != nil {
		return g, err.Error()
	}
	return g, ""
}

func levelAt(g *terrain.Ground, pier string) terrain.Level {
	for _, l := range g.Levels {
		if l.Pier == pier {
			return l
		}
	}
	panic("no pier " + pier)
}

// By hand, a foot off flat ground over 4 by 3 ft with sides 1 up in 2 out: the box
// 12 ft3, four wedges of (1 × 2 / 2) × 14 ft = 14 ft3, and at the corners four
// quarters of a cone of radius 2 and height 1, 4π/3 ft3.
func TestVolumeOfACutByHand(t *testing.T) {
	g, wrong := groundOf(t, flat(map[string]job.Cut{"bay": {By: measure.Foot, X: 6 * measure.Foot, Y: 4 * measure.Foot, Length: 4 * measure.Foot, Width: 3 * measure.Foot}}))
	require.Empty(t, wrong)
	cuts := g.Cuts()
	require.Len(t, cuts, 1)
	feet := float64(cuts[0].Volume) / math.Pow(measure.Foot.Metres(), 3)
	assert.InEpsilon(t, 12+14+4*math.Pi/3, feet, 0.01)
	assert.Equal(t, measure.Foot, cuts[0].Deepest)
}

// The same ground cut twice over is moved once.
func TestWhatOneCutTakesTheNextDoesNot(t *testing.T) {
	cut := job.Cut{By: fieldtest.In(6), X: 0, Y: 0, Length: 4 * measure.Foot, Width: 4 * measure.Foot}
	g, _ := groundOf(t, flat(map[string]job.Cut{"a": cut, "b": cut}))
	cuts := g.Cuts()
	assert.Positive(t, float64(cuts[0].Volume))
	assert.Zero(t, float64(cuts[1].Volume))
	assert.Equal(t, fieldtest.In(6), levelAt(g, "A1").Cut, "the deeper rules, they are not added")
}

// Two feet off over a strip that ends 3 ft short of a pier: its side comes up 1 in
// 2 and takes half a foot at the pier.
func TestSideOfACutReachesAPierBesideIt(t *testing.T) {
	pier := fieldtest.SampleFrame().Piers[2] // A3
	end := pier.X - 3*measure.Foot
	g, _ := groundOf(t, flat(map[string]job.Cut{"end": {By: 2 * measure.Foot, X: -10 * measure.Foot, Y: -10 * measure.Foot, Length: 10*measure.Foot + end, Width: 40 * measure.Foot}}))
	assert.Equal(t, -2*measure.Foot, levelAt(g, "A1").Height)
	assert.Equal(t, fieldtest.In(6), levelAt(g, "A3").Cut)
	assert.Equal(t, -fieldtest.In(6), levelAt(g, "A3").Height)
	assert.Zero(t, levelAt(g, "A5").Cut)
	assert.Equal(t, levelAt(g, "A3").Height, g.Surface.At(pier.X, pier.Y), "the surface is the ground of the piers")
	assert.Equal(t, measure.Length(0), g.Surface.AsRead(pier.X, pier.Y))
}

// Down to a height only what stands over it goes.
func TestCutDownToAHeight(t *testing.T) {
	j := fieldtest.AllRead()
	plain, _ := groundOf(t, j)
	to := levelAt(plain, "A1").Height - fieldtest.In(2)
	j.Ground.Cuts = map[string]job.Cut{"all": {To: &to, X: -measure.Foot, Y: -measure.Foot, Length: 18 * measure.Foot, Width: 14 * measure.Foot}}
	g, wrong := groundOf(t, j)
	require.Empty(t, wrong)
	for i, l := range g.Levels {
		assert.Equal(t, min(to, plain.Levels[i].Height), l.Height, l.Pier)
		assert.Equal(t, plain.Levels[i].Height, l.Height+l.Cut)
	}
}

func TestCutsThatCannotBe(t *testing.T) {
	high, deep := fieldtest.In(10), fieldtest.In(-60)
	for _, of := range []struct {
		cut  job.Cut
		says string
	}{
		{job.Cut{To: &high, Piers: []string{"A1"}, Reach: 2 * measure.Foot}, "nothing is taken off"},
		{job.Cut{To: &deep, Piers: []string{"A1"}, Reach: 2 * measure.Foot}, "at its deepest"},
		{job.Cut{By: fieldtest.In(9), Piers: []string{"C1"}, Reach: 2 * measure.Foot}, "the bar met rock"},
	} {
		j := flat(map[string]job.Cut{"one": of.cut})
		j.Ground.Probes = map[string]job.Probe{"C1": {Depth: fieldtest.In(7.5), Found: "rock"}}
		_, wrong := groundOf(t, j)
		assert.Contains(t, wrong, of.says)
	}
}
