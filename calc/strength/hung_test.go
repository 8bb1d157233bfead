package strength

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/statics"
)

// TestMetricJobWithJoistsBetweenBeams follows the middle beam by hand: half of
// both bays, 1.92 kPa.
func TestMetricJobWithJoistsBetweenBeams(t *testing.T) {
	j := sample.Summerhouse()
	s := work(t, j)
	f := sample.Frame(j)
	for _, b := range s.Balance {
		assert.InEpsilon(t, float64(b.Applied), float64(b.Reactions), 1e-9, b.Case)
	}
	k := NewTrial(Input{Job: j, Frame: f}, statics.NewGauges(), RatiosOnly)
	require.True(t, k.Run())
	bay := (f.Lines[2].Y - f.Lines[0].Y).Metres() / 2
	assert.InEpsilon(t, float64(j.Platform.FloorLoad)*bay, k.Lines[1].Load.LiveMost, 1e-9)
	joist, _ := s.Find("joist.bending")
	spacing, span := .4, bay
	assert.InEpsilon(t, (float64(j.Platform.FloorLoad)+k.Loads.Area[loads.DeadCase])*spacing*span*span/8, float64(joist.Demand.(measure.Moment)), .001)
}
