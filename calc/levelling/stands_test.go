package levelling_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/fieldtest"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

func TestBestStandIsWhereTheLongestSightIsShortest(t *testing.T) {
	stands := levelling.Stands(fieldtest.SampleJob(), fieldtest.SampleFrame())
	best := stands[0]
	assert.Equal(t, [2]measure.Length{8 * measure.Foot, 6 * measure.Foot}, [2]measure.Length{best.X, best.Y})
	// 1/8 in at 100 ft is 21.5 seconds of arc: at 9 ft 9 9/16 in it is 0.0123 in.
	assert.InDelta(t, 9.797*12/9600, best.Worst.Error.Inches(), 1e-5)
	for _, s := range stands[1:] {
		assert.Greater(t, s.Worst.Error, best.Worst.Error)
	}
	j := fieldtest.SampleJob()
	j.Ground.Instrument.Error = 0
	assert.Empty(t, levelling.Stands(j, fieldtest.SampleFrame()))
}
