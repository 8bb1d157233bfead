package heights_test

import (
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/fieldtest"
	"pierbook/calc/frame"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

func TestBeforehandIsWhatTheJobSaysOnceItHappens(t *testing.T) {
	g := fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame())
	solved := map[string]heights.Beforehand{}
	for _, b := range g.Beforehand(measure.Inch, 3) {
		solved[b.Pier] = b
		assert.Equal(t, fieldtest.Pier(t, g, b.Pier).Hole.Least, b.Shallowest)
	}
	// C2 is dug to 9 1/16 so that the shortest post fits: rock an inch above that
	// wants an inch less of bed, or an inch more of floor.
	b := solved["C2"]
	require.Len(t, b.Rows, 3)
	for i, row := range b.Rows {
		short := measure.Length(i+1) * measure.Inch
		require.NotNil(t, row.Bed)
		assert.Equal(t, fieldtest.In(6)-short, *row.Bed)
		assert.False(t, row.UnderRule)

		hit := fieldtest.SampleJob()
		hit.Ground.Probes["C2"] = job.Probe{Depth: row.Depth, Found: "rock"}
		hit.Platform.Floor = job.Floor{Height: g.Floor.Height}
		assert.NotNil(t, fieldtest.Work(t, hit, fieldtest.SampleFrame()).Clash, "rock there does not fit the plan")
		hit.Piers["C2"] = job.Exception{Bed: row.Bed}
		assert.Nil(t, fieldtest.Work(t, hit, fieldtest.SampleFrame()).Clash, "with the thinner bed it does")
		if row.LiftFloor != nil {
			delete(hit.Piers, "C2")
			hit.Platform.Floor.Height += *row.LiftFloor
			assert.Nil(t, fieldtest.Work(t, hit, fieldtest.SampleFrame()).Clash, "and with the higher floor")
			hit.Platform.Floor.Height--
			assert.NotNil(t, fieldtest.Work(t, hit, fieldtest.SampleFrame()).Clash, "but not with less")
		}
	}
	assert.NotNil(t, b.Rows[0].LiftFloor)
}

// A higher floor is a way on only where all the other piers can follow it.
func TestAFloorIsLiftedNoHigherThanTheOthersAllow(t *testing.T) {
	lifted, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		j, f := randomSite(t)
		g := fieldtest.Work(t, j, f)
		for _, b := range g.Beforehand(measure.Inch, 3) {
			for _, row := range b.Rows {
				hit := *j
				hit.Ground.Probes = maps.Clone(j.Ground.Probes)
				hit.Ground.Probes[b.Pier] = job.Probe{Depth: row.Depth, Found: "rock"}
				if row.LiftFloor == nil {
					hit.Platform.Floor = job.Floor{Lowest: true}
					if fieldtest.Work(t, &hit, f).Floor == nil {
						refused++
					}
					continue
				}
				hit.Platform.Floor = job.Floor{Height: g.Floor.Height + *row.LiftFloor}
				require.Nil(t, fieldtest.Work(t, &hit, f).Clash, "%s met at %v, floor lifted by %v", b.Pier, row.Depth, *row.LiftFloor)
				lifted++
			}
		}
	})
	assert.Positive(t, lifted)
	assert.Positive(t, refused)
}

// Firm ground that can be dug asks for no thin bed: every bed under the least is
// marked as the exception on rock that it is.
func TestABedUnderTheLeastIsMarked(t *testing.T) {
	j := fieldtest.SampleJob()
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	marked := 0
	for _, b := range g.Beforehand(measure.Inch, 3) {
		least := j.Stone.Least
		if own := j.Piers[b.Pier].Bed; own != nil {
			least = *own
		}
		for _, row := range b.Rows {
			if row.Bed != nil {
				assert.Equal(t, *row.Bed < least, row.Thin, "%s at %v", b.Pier, row.Depth)
				marked++
			}
		}
	}
	assert.Positive(t, marked)
}

// How far a pier may move is tried by laying the frame with it there: within the
// move the job has no clash, and no move is more than a quarter of its bay.
func TestAPierMayMoveAsFarAsTheSurfaceMeetsTheLimits(t *testing.T) {
	f := fieldtest.SampleFrame()
	j := fieldtest.AllRead()
	g := fieldtest.Work(t, j, f)
	moved := 0
	for _, b := range g.Beforehand(measure.Inch, 3) {
		at, _ := f.Pier(b.Pier)
		for _, to := range []measure.Length{b.Move.On, -b.Move.Back} {
			assert.LessOrEqual(t, to.Abs(), b.Move.Bay/4)
			if to == 0 {
				continue
			}
			moved++
			there := *f
			there.Piers = slices.Clone(f.Piers)
			i := slices.IndexFunc(there.Piers, func(p frame.Pier) bool { return p.Name == b.Pier })
			there.Piers[i].X = at.X + to
			held := fieldtest.AllRead()
			held.Platform.Floor = job.Floor{Height: g.Floor.Height}
			sights := held.Ground.SetUps[0]
			k := slices.IndexFunc(sights, func(s job.Sight) bool { return s.Point == b.Pier })
			sights[k].Reading += to.Scale(0.02)
			assert.Nil(t, fieldtest.Work(t, held, &there).Clash, "%s by %v", b.Pier, to)
		}
		if at.Splice {
			assert.Zero(t, b.Move.On+b.Move.Back, "a joint keeps %s where it is", b.Pier)
		}
		if at.Number == 1 {
			assert.Zero(t, b.Move.Back, "off the end of the beam")
		}
	}
	assert.Positive(t, moved)

	// A mound a foot on from A1, read just outside the beam, stands in its way.
	mound := fieldtest.AllRead()
	mound.Ground.Spots["mound"] = job.Spot{X: f.Piers[0].X + fieldtest.In(12), Y: fieldtest.In(-1)}
	mound.Ground.SetUps[0] = append(mound.Ground.SetUps[0], job.Sight{Point: "mound", Reading: fieldtest.In(60 - 14)})
	mound.Platform.Floor = job.Floor{Height: fieldtest.In(24)}
	s := fieldtest.Work(t, mound, f)
	require.Nil(t, s.Clash)
	first := s.Beforehand(measure.Inch, 1)[0].Move
	assert.Less(t, first.On, fieldtest.In(10))
	assert.Equal(t, fieldtest.In(0), first.On%measure.Inch, "the last step at which the limits are met")
}
