package kit

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/measure"
)

func TestFitTakesTheLargestScaleThatFits(t *testing.T) {
	// 16 ft are 4876.8 mm: 121.92 mm at 1:40.
	c := Fit(16*measure.Foot, 12*measure.Foot, 122, 200)
	assert.Equal(t, "1:40", c.Name())
	assert.InDelta(t, 121.92, c.Long(16*measure.Foot), 1e-9)
	assert.Equal(t, "1:45", Fit(16*measure.Foot, 12*measure.Foot, 121, 200).Name())
	assert.Equal(t, "1:2.5", Fit(100*measure.Millimetre, 0, 40, 40).Name())
	assert.Equal(t, 5000.0, Fit(500*measure.Metre, 0, 100, 100).Ratio)
}

func TestHeightsRiseAndStretch(t *testing.T) {
	c := Scale{Ratio: 10, Stretch: 3, Upward: true, Origin: Point{5, 50}}
	assert.Equal(t, Point{15, 20}, c.At(100*measure.Millimetre, 100*measure.Millimetre))
	assert.Equal(t, 2.0, Exaggeration(1*measure.Metre, 20, 140, 4))
	assert.Equal(t, 1.0, Exaggeration(1*measure.Metre, 20, 10, 4))
	assert.Equal(t, 4.0, Exaggeration(0, 20, 10, 4))
}
