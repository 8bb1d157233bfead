package strength

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/statics"
)

// TestBuildingReliesOnItsLeastWeight works a floor whose eaves walls stand out
// past the outer lines and so lift the middle line. Statics by the three-moment
// equation: with both ends turned down by M over two equal spans L, the middle
// line gets −3·M/L of one joist's strip.
func TestBuildingReliesOnItsLeastWeight(t *testing.T) {
	j := sample.Shed()
	j.Frame.Beams.Inset = 18 * in
	j.Building.WeightLeast, j.Building.WeightMost = 1000*measure.PoundForce, 6000*measure.PoundForce
	heavy := work(t, j)
	middle := pierOf(t, heavy, "B3")
	require.Negative(t, float64(middle.Building), "the walls lift the middle line")
	assert.InEpsilon(t, float64(middle.Building)/6, float64(middle.BuildingMost), 1e-9, "only the lightest building relieves it")

	roof := 10.0 * 17 * 13 // 10 psf of its plan, 6 in over on all sides
	walls, span, over := (6000-roof)/56, (12.0*12-2*18-3.5)/2/12, (18+1.75)/12
	eaves := -3 * (walls + roof/32) * 18 / 12 / span * 16          // both long walls, 18 in out, over 16 ft of line
	ends := 2 * walls * (span*10/8 - 3*over*over/2/span)           // two end walls over the whole width
	assert.InDelta(t, eaves+ends, buildingOn(heavy, 'B'), 1, "lb") // three-moment equation

	bare := sample.Shed()
	bare.Frame.Beams.Inset, bare.Building.WeightLeast = 18*in, 0
	bare.Building.WeightMost = 6000 * measure.PoundForce
	assert.GreaterOrEqual(t, float64(pierOf(t, work(t, bare), "B3").Most), float64(middle.Most), "a lighter building relieves less")
}

// TestSnowLiftsTheMiddleLine checks that a roof whose walls stand out past the
// outer lines asks for the middle of the floor to be held down.
func TestSnowLiftsTheMiddleLine(t *testing.T) {
	j := sample.Shed()
	j.Frame.Beams.Inset, j.Site.GroundSnow = 18*in, psf(60)
	s := work(t, j)
	p := pierOf(t, s, "B3")
	require.Negative(t, float64(p.Dead+p.Snow))
	check, ok := s.Find("pier.B3.lift")
	require.True(t, ok)
	assert.Equal(t, "D + S", check.Combination)
	assert.InDelta(t, float64(p.Dead+p.BuildingLeast+p.Snow), float64(p.Lightest), 1e-6)
	assert.NotEmpty(t, check.Needs)
}

// buildingOn sums the building's weight on a line, in pounds.
func buildingOn(s *Strength, line byte) float64 {
	sum := 0.0
	for _, p := range s.Piers {
		if p.Name[0] == line {
			sum += float64(p.Building / measure.PoundForce)
		}
	}
	return sum
}

func pierOf(t *testing.T, s *Strength, name string) statics.PierLoad {
	t.Helper()
	for _, p := range s.Piers {
		if p.Name == name {
			return p
		}
	}
	require.Fail(t, "no pier "+name)
	return statics.PierLoad{}
}

// TestEachHungJoistBearsByItself checks joists between three lines: at the middle
// one two ends meet, each with a hanger of its own and half a bay. Statics.
func TestEachHungJoistBearsByItself(t *testing.T) {
	j := sample.Deck()
	j.Frame.Joists.Sit = "between_beams"
	j.Site.GroundSnow = 0
	s := work(t, j)
	check, ok := s.Find("joist.bearing")
	require.True(t, ok)
	bay := (12*ft - in*7/2).Metres() / 2 // centre to centre of the lines
	area := psf(40) + own(s)
	assert.InEpsilon(t, float64(area)*bay/2*(16*in).Metres(), float64(check.Demand.(measure.Force)), 0.002)
}

// own returns the weight of surface and joists by area.
func own(s *Strength) measure.Stress {
	sum := measure.Stress(0)
	for _, l := range s.Loads {
		if l.ID == "surface" || l.ID == "joists" {
			sum += l.Amount.(measure.Stress)
		}
	}
	return sum
}

// TestThinBedIsReckonedWith checks that before the ground is known a pier with a
// bed of its own is checked on that bed.
func TestThinBedIsReckonedWith(t *testing.T) {
	j := sample.Shed()
	thin := 2 * in
	j.Piers = map[string]job.Exception{"B2": {Bed: &thin}}
	s, faults := Work(Input{Job: j, Frame: sample.Frame(j)})
	require.NoError(t, faults.Err())
	on, _ := s.Find("pier.B2.soil")
	beside, _ := s.Find("pier.B4.soil")
	assert.InEpsilon(t, 18.0*18/14/14, float64(on.Ratio/beside.Ratio), 0.1, "spread through 2 in and through 6 in")
}
