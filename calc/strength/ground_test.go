package strength

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
	"pierbook/calc/sample"
)

// IBC 2021 1806.2 and IRC 2021 R401.4: no bearing is presumed of peat, organic soil
// and fill, so a bearing given for them settles nothing at any pier.
func TestUntestedGroundIsByOthersAtEveryPier(t *testing.T) {
	for _, class := range []string{"peat", "organic", "fill", "clay"} {
		j := sample.Shed()
		j.Site.Soil.Class = class
		if class == "clay" {
			j.Site.Fill = "yes"
		}
		s := work(t, j)
		for _, p := range s.Piers {
			c, found := s.Find("pier." + p.Name + ".ground")
			require.True(t, found, "%s %s", class, p.Name)
			assert.False(t, c.Fails())
			assert.Contains(t, c.Verdict(), "by others: an engineer who has tested the ground")
			assert.Contains(t, c.Verdict(), "1500\u00a0psf given are taken as given")
		}
	}
	s := work(t, sample.Shed())
	_, found := s.Find("pier.A1.ground")
	assert.False(t, found, "silty sand is in the table")
}

// IRC 2021 R403.1.7: 43.1 per cent over 1 in 3 is 1.293.
func TestASteepSlopeIsByOthers(t *testing.T) {
	j := sample.Shed()
	f := sample.Frame(j)
	s, faults := Work(Input{Job: j, Frame: f, Heights: heights(f, 9*in), Steep: map[string]measure.Percent{"A2": 0.431}})
	require.NoError(t, faults.Err())
	c, found := s.Find("pier.A2.slope")
	require.True(t, found)
	assert.InDelta(t, 1.293, float64(c.Ratio), 0.001)
	assert.Contains(t, c.Verdict(), "by others")
	_, found = s.Find("pier.A1.slope")
	assert.False(t, found)
}

// A pressure above the presumptive one of IRC 2021 Table R401.4.1 (clay 1,500 psf)
// or IBC 2012 Table 1806.2 (gravel 3,000 psf) is printed beside it at its check.
func TestAPressureAboveThePresumedIsPrintedBesideIt(t *testing.T) {
	j := sample.Shed()
	j.Site.Soil.Class, j.Site.Soil.Bearing, j.Design.StoneBearing = "clay", 4000*measure.PoundPerSquareFt, 5000*measure.PoundPerSquareFt
	s := work(t, j)
	soil, _ := s.Find("pier.A1.soil")
	assert.Contains(t, soil.Clause, "4000\u00a0psf as given, above the 1500\u00a0psf presumed of clay")
	stone, _ := s.Find("pier.A1.stone")
	assert.Contains(t, stone.Clause, "5000\u00a0psf as given, above the 3000\u00a0psf")

	j.Site.Soil.Bearing, j.Design.StoneBearing = 1500*measure.PoundPerSquareFt, 0
	s = work(t, j)
	soil, _ = s.Find("pier.A1.soil")
	assert.NotContains(t, soil.Clause, "above")
}
