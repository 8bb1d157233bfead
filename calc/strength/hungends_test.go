package strength

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/check"
	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/statics"
)

// A deck without snow whose beams end 3 ft inside, by hand. The end joist, its
// centre 3/4 in from the end, carries half a bay; the joists at 16 and 32 in, off
// the beams too, a whole one. Each gives half of its floor to each rim:
//
//	R = (40 psf + own weight) · strip · 12 ft / 2
//	M = Σ R (36 in − x) at the end of the beam
func TestRimPastASetBackBeamByHand(t *testing.T) {
	j := sample.Deck()
	j.Site.GroundSnow = 0
	j.Frame.Beams.SetBack = 3 * ft
	f := sample.Frame(j)
	s, faults := Work(Input{Job: j, Frame: f})
	require.NoError(t, faults.Err())
	c, ok := s.Find("rim.bending")
	require.True(t, ok)
	k := NewTrial(Input{Job: j, Frame: f}, statics.NewGauges(), RatiosOnly)
	require.True(t, k.Run())
	area := k.Loads.Area[loads.DeadCase] + k.Loads.Area[loads.LiveCase]
	moment, last := 0.0, 0.0
	for i, joist := range f.Joists {
		if joist.Centre >= 3*ft {
			break
		}
		next := (joist.Centre + f.Joists[i+1].Centre).Metres() / 2
		strip := next - last
		last = next
		moment += area * strip * f.Width.Metres() / 2 * (3*ft - joist.Centre).Metres()
	}
	assert.InEpsilon(t, moment, float64(c.Demand.(measure.Moment)), 0.01, "besides the rim's own weight")
	end, ok := s.Find("end_joist.bending")
	require.True(t, ok)
	span := (f.Width - f.Sections.Rim.Width).Metres()
	bay := (f.Joists[3].Centre - f.Joists[1].Centre).Metres() / 2 // of the joist at 32 in
	assert.InEpsilon(t, area*bay*span*span/8, float64(end.Demand.(measure.Moment)), 0.002)
}

// The garden room with its beams 4 ft inside: gable wall, roof and snow hang on the
// rims at more than three times what they bear.
func TestGardenRoomOnRimsFails(t *testing.T) {
	j := sample.Shed()
	j.Frame.Beams.SetBack = 4 * ft
	s, faults := Work(Input{Job: j, Frame: sample.Frame(j)})
	require.NoError(t, faults.Err())
	c, _ := s.Find("rim.bending")
	assert.True(t, c.Fails())
	assert.Greater(t, float64(c.Ratio), 3.0)
	j.Frame.Beams.SetBack = 0
	s, _ = Work(Input{Job: j, Frame: sample.Frame(j)})
	_, there := s.Find("rim.bending")
	assert.False(t, there, "nothing hangs on the rims")
}

// A deck on three lines whose beams end 3 ft inside, without its own weight's share:
// the floor past them comes down on the outer beams alone, where it stands. By hand, of 40 psf on
// the strip of 40 in that the hung joists carry to the middle of the next bay: half to
// each outer line, at its own place beyond the end of the beam.
func TestFloorPastSetBackBeamsComesToTheOuterLines(t *testing.T) {
	j := sample.Deck()
	j.Site.GroundSnow = 0
	j.Frame.Beams.SetBack = 3 * ft
	f := sample.Frame(j)
	s, faults := Work(Input{Job: j, Frame: f})
	require.NoError(t, faults.Err())
	assert.Empty(t, standing(s, check.Fails), "nothing is lost on the way")
	for _, b := range s.Balance {
		assert.InEpsilon(t, float64(b.Applied), float64(b.Reactions), 1e-9, b.Case)
	}
	back := sample.Deck()
	back.Site.GroundSnow = 0
	full := work(t, back)
	outer, inner := pierOf(t, s, "A1"), pierOf(t, s, "B1")
	assert.Greater(t, float64(outer.Dead), 2*float64(pierOf(t, full, "A1").Dead), "the outer pier takes what hangs past it")
	assert.Less(t, float64(inner.Dead), float64(pierOf(t, full, "B1").Dead), "the middle one does not")
}

// What the frame used to remark by the way is a check, or stands among the remarks.
func TestRemarksOfTheFrameAreChecks(t *testing.T) {
	for _, row := range []struct {
		name, id string
		change   func(*job.Job)
	}{
		{"a stub in hangers", "joist.hung_overhang", func(j *job.Job) { j.Frame.Joists.Sit, j.Frame.Beams.Inset = "between_beams", ft }},
		{"joists barely on the beam", "joist.seat", func(j *job.Job) { j.Frame.Beams.Width = 5 * in / 2 }},
		{"an outer post half beside the beam", "post.under_beam", func(j *job.Job) { first := in; j.Frame.Piers.First = &first }},
	} {
		j := sample.Shed()
		row.change(j)
		s, faults := Work(Input{Job: j, Frame: sample.Frame(j)})
		require.NoError(t, faults.Err(), row.name)
		c, ok := s.Find(row.id)
		require.True(t, ok, row.name)
		assert.True(t, c.Fails(), row.name)
	}
	j := sample.Shed()
	f := sample.Frame(j)
	f.Surface.OneBay = true
	s, faults := Work(Input{Job: j, Frame: f})
	require.NoError(t, faults.Err())
	one, _ := s.Find("surface.two_spans")
	assert.True(t, one.Fails(), "panels over one bay")
	j.Frame.Beams.Width, j.Frame.Beams.Plies = 3*in/2, 3
	s, faults = Work(Input{Job: j, Frame: sample.Frame(j)})
	require.NoError(t, faults.Err())
	assert.Contains(t, standing(s, check.ByOthers), "the outer plies hang over")
}

// One load of 1,200 lb and its two halves side by side are the same load.
func TestALoadAndItsHalvesGiveTheSame(t *testing.T) {
	ratio := func(patches ...loads.Patch) measure.Ratio {
		j := sample.Deck()
		s, faults := Work(Input{Job: j, Frame: sample.Frame(j), Patches: patches})
		require.NoError(t, faults.Err())
		c, _ := s.Find("joist.bending")
		return c.Ratio
	}
	tank := loads.Patch{Name: "tank", X: 5 * ft, Y: 2 * ft, Length: 2 * ft, Width: 2 * ft, Load: 1200 * measure.PoundForce}
	a, b := tank, tank
	a.Length, b.Length, b.X, a.Load, b.Load = ft, ft, 6*ft, tank.Load/2, tank.Load/2
	assert.InEpsilon(t, float64(ratio(tank)), float64(ratio(a, b)), 1e-9)
	a, b = tank, tank
	a.Width, b.Width, b.Y, a.Load, b.Load = ft, ft, 3*ft, tank.Load/2, tank.Load/2
	assert.InEpsilon(t, float64(ratio(tank)), float64(ratio(a, b)), 1e-9)
	same := tank
	same.Load /= 2
	assert.InEpsilon(t, float64(ratio(tank)), float64(ratio(same, same)), 1e-9)
	assert.Greater(t, float64(ratio(tank)), float64(ratio()))
}

// Bearing above the presumed, a floor load below the use's and ground that no code
// presumes a bearing of are said under the word that they deserve.
func TestWhatIsTakenOnTrustIsSaid(t *testing.T) {
	of := func(change func(*job.Job)) *Strength {
		j := sample.Shed()
		change(j)
		s, faults := Work(Input{Job: j, Frame: sample.Frame(j)})
		require.NoError(t, faults.Err())
		return s
	}
	assert.Contains(t, standing(of(func(j *job.Job) { j.Site.Soil.Bearing = 4000 * measure.PoundPerSquareFt }), check.NotCounted), "more than the")
	assert.Contains(t, standing(of(func(j *job.Job) { j.Site.Soil.Class = "peat" }), check.ByOthers), "An engineer who has tested the ground of peat, for the 1500\u00a0psf given are taken as given: every pier")
	assert.Contains(t, standing(of(func(j *job.Job) { j.Site.Fill = "yes" }), check.ByOthers), "An engineer who has tested the ground of fill, for the 1500\u00a0psf given are taken as given: every pier")
	assert.Contains(t, standing(of(func(j *job.Job) { j.Platform.FloorLoad = 20 * measure.PoundPerSquareFt }), check.NotCounted), "less than the 40")
	assert.Empty(t, standing(of(func(*job.Job) {}), check.Fails))
}

func standing(s *Strength, word check.Standing) string {
	all := ""
	for _, r := range s.Remarks {
		if r.Standing == word {
			all += r.Words + "\n"
		}
	}
	return all
}
