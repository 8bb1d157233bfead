package heights

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// The expected move of the floor against a plain numerical integration.
func TestExpectedMoveByIntegration(t *testing.T) {
	for _, row := range []struct{ demand, rest, spread measure.Length }{
		{0, 0, measure.Inch}, {0, 2 * measure.Inch, measure.Inch}, {3 * measure.Inch, 0, measure.Inch},
		{measure.Inch, 0, 3 * measure.Inch}, {0, 20 * measure.Inch, measure.Inch},
	} {
		sum := 0.0
		const step = 1e-4
		for z := -8 + step/2; z < 8; z += step {
			demand := float64(row.demand) + z*float64(row.spread)
			move := math.Abs(max(float64(row.rest), demand) - float64(max(row.rest, row.demand)))
			sum += move * density(z) * step
		}
		assert.InDelta(t, sum/float64(measure.Inch), expectedMove(row.demand, row.rest, row.spread).Inches(), 1e-5)
	}
}

func TestNormalDistributionAtTabulatedValues(t *testing.T) {
	// Standard tables of the normal distribution.
	for z, want := range map[float64]float64{0: 0.5, 1: 0.8413, 1.96: 0.9750, -1.28: 0.1003, trade.OftenDeviate: float64(trade.Often)} {
		assert.InDelta(t, want, below(z), 5e-5)
	}
}
