package strength

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/check"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/statics"
)

// randomJob draws a platform that can be laid out.
func randomJob(t *rapid.T) (*job.Job, *frame.Frame) {
	j := sample.Shed()
	if rapid.Bool().Draw(t, "open deck") {
		j.Building = nil
	} else {
		j.Building.Roof.Eaves = rapid.SampledFrom([]string{"along_length", "along_width"}).Draw(t, "eaves")
		j.Building.Roof.Shape = rapid.SampledFrom([]string{"gable", "shed", "hip", "flat"}).Draw(t, "roof")
	}
	j.Platform.Length = measure.Length(rapid.IntRange(8, 24).Draw(t, "length")) * ft
	j.Platform.Width = measure.Length(rapid.IntRange(6, 14).Draw(t, "width")) * ft
	j.Platform.FloorLoad = psf(float64(rapid.IntRange(20, 100).Draw(t, "floor load")))
	j.Frame.Joists.Section = sample.Section(rapid.SampledFrom([]string{"2x6", "2x8", "2x10"}).Draw(t, "joists"), 1)
	j.Frame.Rims = j.Frame.Joists.Section
	j.Frame.Joists.Spacing = rapid.SampledFrom([]measure.Length{12 * in, 16 * in, 24 * in}).Draw(t, "spacing")
	j.Frame.Beams.Section = sample.Section(rapid.SampledFrom([]string{"4x6", "4x8", "4x10"}).Draw(t, "beams"), 1)
	if rapid.Bool().Draw(t, "built up") {
		j.Frame.Beams.Section = sample.Section("2x10", rapid.IntRange(2, 3).Draw(t, "plies"))
	}
	j.Frame.Beams.Lines = rapid.IntRange(2, 4).Draw(t, "lines")
	j.Frame.Beams.Inset = measure.Length(rapid.IntRange(0, 12).Draw(t, "inset")) * in
	j.Frame.Piers.PerLine = rapid.IntRange(3, 7).Draw(t, "piers")
	f, faults := frame.Skeleton(j)
	if !faults.Empty() {
		t.Skip("cannot be laid out")
	}
	return j, f
}

func workOf(t require.TestingT, j *job.Job, f *frame.Frame, patches ...loads.Patch) *Strength {
	s, faults := Work(Input{Job: j, Frame: f, Patches: patches})
	require.NoError(t, faults.Err())
	return s
}

// ratiosOf makes every check without its words and returns the ratios by id.
func ratiosOf(t require.TestingT, j *job.Job, f *frame.Frame) map[string]measure.Ratio {
	k := NewTrial(Input{Job: j, Frame: f}, statics.NewGauges(), RatiosOnly)
	require.True(t, k.Run())
	ratios := map[string]measure.Ratio{}
	for _, c := range k.Checks {
		ratios[c.ID] = c.Ratio
	}
	return ratios
}

// TestReactionsOfAnyFrameAddUpToTheLoads checks each load case from the floor to
// the piers.
func TestReactionsOfAnyFrameAddUpToTheLoads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, f := randomJob(t)
		stove := loads.Patch{Name: "stove", X: 2 * ft, Y: 3 * ft, Length: 2 * ft, Width: ft, Load: 400 * lbf}
		s := workOf(t, j, f, stove)
		require.NotEmpty(t, s.Balance)
		for _, b := range s.Balance {
			require.InEpsilon(t, float64(b.Applied), float64(b.Reactions), 1e-9, b.Case)
		}
	})
}

// TestFirstLoadsAddUpToTheLoads checks the tributary areas against the whole.
func TestFirstLoadsAddUpToTheLoads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, f := randomJob(t)
		s := workOf(t, j, f)
		var live float64
		for _, p := range s.First {
			live += float64(p.Live)
		}
		require.InEpsilon(t, float64(j.Platform.FloorLoad.On(f.Length.Times(f.Width))), live, 1e-9)
	})
}

// scaled makes every load of an open deck k times as heavy.
func scaled(j *job.Job, k float64) *job.Job {
	copied := *j
	copied.Platform.FloorLoad *= measure.Stress(k)
	copied.Site.GroundSnow *= measure.Stress(k)
	copied.Timber.Density = 30 * measure.PoundPerCubicFoot * measure.Density(k)
	copied.Platform.Surface.Density = 36 * measure.PoundPerCubicFoot * measure.Density(k)
	return &copied
}

// TestScalingLoadsScalesRatios checks the members: all their demands are linear.
func TestScalingLoadsScalesRatios(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, f := randomJob(t)
		j.Building = nil
		k := rapid.Float64Range(1.1, 3).Draw(t, "scale")
		one, more := ratiosOf(t, scaled(j, 1), f), ratiosOf(t, scaled(j, k), f)
		for id, ratio := range one {
			switch check.KindOf(id) {
			case "joist.bending", "joist.shear", "joist.live_deflection", "joist.total_deflection", "beam.bending", "beam.shear", "beam.live_deflection", "beam.total_deflection", "beam.bearing", "pier.block", "post.column":
				require.InEpsilon(t, float64(ratio)*k, float64(more[id]), 1e-6, id)
			}
		}
	})
}

// TestADeeperBeamNeverFailsWhereAShallowerPassed checks beams and joists; their own
// weight is left out, for a heavier member loads the ground more.
func TestADeeperBeamNeverFailsWhereAShallowerPassed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, f := randomJob(t)
		j.Timber.Density = measure.PoundPerCubicFoot / 1000
		deeper := *j
		next, ok := deeper.Frame.Beams.Section, false
		for _, pair := range [][2]string{{"4x6", "4x8"}, {"4x8", "4x10"}, {"4x10", "4x12"}, {"2x10", "2x12"}} {
			if next.Size == pair[0] {
				next, ok = sample.Section(pair[1], next.Plies), true
				break
			}
		}
		require.True(t, ok)
		deeper.Frame.Beams.Section = next
		g, faults := frame.Skeleton(&deeper)
		if !faults.Empty() {
			t.Skip("cannot be laid out")
		}
		before, after := ratiosOf(t, j, f), ratiosOf(t, &deeper, g)
		for id, ratio := range before {
			if strings.HasPrefix(id, "beam.") && check.KindOf(id) != "beam.stability" && ratio <= check.Slack {
				require.LessOrEqual(t, after[id], measure.Ratio(check.Slack), "%s: %v before", id, ratio)
			}
		}
	})
}

// TestMirroredPlatformHasMirroredLoads checks both symmetries of a frame that has
// them: line A and the last, pier 1 and the last.
func TestMirroredPlatformHasMirroredLoads(t *testing.T) {
	s := work(t, sample.Shed())
	load := map[string]statics.PierLoad{}
	for _, p := range s.Piers {
		load[p.Name] = p
	}
	for _, pair := range [][2]string{{"A1", "C1"}, {"A2", "C4"}, {"A3", "C3"}, {"B1", "B5"}, {"B2", "B4"}} {
		a, b := load[pair[0]], load[pair[1]]
		assert.InEpsilon(t, float64(a.Most), float64(b.Most), 1e-9, pair)
		assert.InEpsilon(t, float64(a.Live), float64(b.Live), 1e-9, pair)
	}
	beamA, _ := s.Find("beam.A.bending")
	beamC, _ := s.Find("beam.C.bending")
	assert.InEpsilon(t, float64(beamA.Ratio), float64(beamC.Ratio), 1e-9)
}

// TestPatchMirrored moves a patch to its mirror image and wants the mirrored loads.
func TestPatchMirrored(t *testing.T) {
	j := sample.Deck()
	f := sample.Frame(j)
	near := workOf(t, j, f, loads.Patch{Name: "tank", X: ft, Y: ft, Length: 2 * ft, Width: 3 * ft, Load: 900 * lbf})
	far := workOf(t, j, f, loads.Patch{Name: "tank", X: j.Platform.Length - 3*ft, Y: j.Platform.Width - 4*ft, Length: 2 * ft, Width: 3 * ft, Load: 900 * lbf})
	a, _ := near.Find("pier.A1.block")
	b, _ := far.Find("pier.C5.block")
	assert.InEpsilon(t, float64(a.Ratio), float64(b.Ratio), 1e-9)
	plain, _ := work(t, j).Find("pier.A1.block")
	assert.Greater(t, a.Ratio, plain.Ratio)
}

// TestTributaryAreas is derived: 12 by 16 ft, three
// lines, four piers in each at the very edges, 50 psf.
func TestTributaryAreas(t *testing.T) {
	lines := []float64{0, 6 * .3048, 12 * .3048}
	g, err := statics.NewGauges().Of(statics.Run{End: lines[2], Supports: lines, Hinges: []bool{true, true, true}}, nil)
	require.NoError(t, err)
	edge, middle := g.Whole.Reactions[0]/.3048, g.Whole.Reactions[1]/.3048 // ft of floor on each line
	bays := statics.Run{End: 16, Hinges: []bool{true, true, true, true}, Supports: []float64{0, 16. / 3, 32. / 3, 16}}
	for _, c := range []struct{ wide, end, inner float64 }{{edge, 400, 800}, {middle, 800, 1600}} {
		a, err := bays.Solve([]statics.Push{{From: 0, To: 16, Size: 50 * c.wide}})
		require.NoError(t, err)
		assert.InDelta(t, c.end, a.Reactions[0], .01)
		assert.InDelta(t, c.inner, a.Reactions[1], .01)
	}
}

// TestPathEndsAtTheLoadOfItsPier checks the running sum of the load path and that
// every pier has its joints told.
func TestPathEndsAtTheLoadOfItsPier(t *testing.T) {
	for name, j := range map[string]*job.Job{"shed": sample.Shed(), "deck": sample.Deck(), "summerhouse": sample.Summerhouse()} {
		s := work(t, j)
		sum := measure.Force(0)
		for _, step := range s.Path {
			sum += step.Adds
			assert.InDelta(t, float64(sum), float64(step.Sum), 1e-6, name)
			if step.Part == "post" {
				for _, p := range s.Piers {
					if p.Name == s.WorstPier {
						assert.InDelta(t, float64(p.Most), float64(step.Sum), 1e-6, name)
					}
				}
			}
		}
		assert.Equal(t, "soil", s.Path[len(s.Path)-1].Part, name)
		joined := map[string]bool{}
		for _, tie := range s.Ties {
			joined[tie.Pier] = joined[tie.Pier] || tie.Level > 0
		}
		assert.Len(t, joined, len(s.Piers), name)
	}
}

// TestLiftedEndsAreFastened checks a deck whose light ends lift under load on the
// bay beside: the fastening is told, and nothing fails for it.
func TestLiftedEndsAreFastened(t *testing.T) {
	s := work(t, sample.Deck())
	for _, p := range s.Piers {
		c, found := s.Find("pier." + p.Name + ".lift")
		assert.Equal(t, p.Lightest < 0, found, p.Name)
		if found {
			assert.False(t, c.Fails())
			assert.Equal(t, -p.Lightest <= 48*measure.PoundForce, c.Holds(), "cap, strap and the weight of the block hold %s", p.Name)
		}
	}
	_, found := s.Find("pier.A1.lift")
	assert.True(t, found)
}
