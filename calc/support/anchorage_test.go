package support

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// TestOverturningOfSheds: derived, computed here; they check
// arithmetic. No published case of a small building was found with its numbers.
func TestOverturningOfSheds(t *testing.T) {
	for _, c := range []struct {
		mph, kz, span, across, wall, cp, dead    float64
		up, over, resist, tie, friction, notHeld float64
	}{
		{115, .85, 9, 14, 7, .9, 20, 236, 13427, 6804, 736, 0, 1589.4},
		{105, .57, 8, 10, 7, .7, 18, -355.2, 4256, 3456, 100, 177.6, 457.2},
		{120, .85, 8, 8, 7, .9, 22, 122, 7327, 3379, 493, 0, 988.8},
	} {
		q := float64(loads.WindPressure(measure.Speed(c.mph)*measure.MilePerHour, c.kz, .85) / measure.PoundPerSquareFt)
		h := measure.Force(q*loads.Gust*loads.WallSides*c.wall*c.across) * lbf
		u := measure.Force(q*(loads.Gust*c.cp+.18)*c.span*c.across) * lbf
		d := measure.Force(c.dead*c.span*c.across) * lbf
		b := Overturn(d, h, u, .6, ft.Scale(c.wall/2), ft.Scale(c.span), .5)
		foot := float64(lbf) * .3048
		assert.InDelta(t, c.up, float64((b.Up-.6*d)/lbf), 1)
		assert.InDelta(t, c.over, float64(b.Turning)/foot, 1)
		assert.InDelta(t, c.resist, float64(b.Resisting)/foot, 1)
		assert.InDelta(t, c.tie, float64(b.Tie/lbf), 1)
		assert.InDelta(t, c.friction, float64(b.Friction/lbf), 1)
		assert.InDelta(t, c.notHeld, float64(b.Slide/lbf), 1)
	}
}
