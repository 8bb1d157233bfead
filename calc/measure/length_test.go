package measure_test

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
)

func TestUnitsOfLengthAreExact(t *testing.T) {
	assert.Equal(t, measure.Length(396_875), measure.SixtyFourth)
	assert.Equal(t, measure.Inch, 64*measure.SixtyFourth)
	assert.Equal(t, measure.Foot, 304*measure.Millimetre+800*measure.Micrometre)
}

// Triples: Pythagoras. 16 ft by 12 ft has a diagonal of 20 ft.
func TestDiagonalOfARectangle(t *testing.T) {
	assert.Equal(t, 20*measure.Foot, measure.Hypot(16*measure.Foot, 12*measure.Foot))
	assert.Equal(t, 13*measure.Metre, measure.Hypot(5*measure.Metre, 12*measure.Metre))
}

func TestRoundingGoesToAMarkAndTheRightWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := measure.Length(rapid.Int64Range(-1e13, 1e13).Draw(t, "length"))
		step := measure.Length(rapid.Int64Range(1, 1e9).Draw(t, "step"))
		down, up, near := l.RoundDownTo(step), l.RoundUpTo(step), l.RoundTo(step)
		for _, rounded := range []measure.Length{down, up, near} {
			require.Zero(t, rounded%step)
			require.Less(t, (rounded - l).Abs(), step)
		}
		require.LessOrEqual(t, down, l)
		require.GreaterOrEqual(t, up, l)
		require.LessOrEqual(t, 2*(near-l).Abs(), step)
		require.Equal(t, -near, (-l).RoundTo(step), "halves go away from zero")
	})
}

func TestPartsOfALengthAreWorkedFromTheOrigin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := rapid.Int64Range(-math.MaxInt64, math.MaxInt64).Draw(t, "length")
		n := rapid.IntRange(1, 1000).Draw(t, "parts")
		i := rapid.IntRange(0, n).Draw(t, "part")
		exact := new(big.Rat).Mul(new(big.Rat).SetInt64(l), big.NewRat(int64(i), int64(n)))
		got := new(big.Rat).SetInt64(int64(measure.Length(l).Part(i, n)))
		require.LessOrEqual(t, new(big.Rat).Abs(new(big.Rat).Sub(got, exact)).Cmp(big.NewRat(1, 2)), 0)
	})
}

func TestLengthsBeyondTheRangeStopAtItsEnd(t *testing.T) {
	assert.Equal(t, measure.Length(math.MaxInt64), measure.FromMetres(1e12))
	assert.Equal(t, measure.Length(-math.MaxInt64), measure.FromMetres(math.Inf(-1)))
	assert.Equal(t, measure.Length(0), measure.FromMetres(math.NaN()))
	assert.Equal(t, measure.Length(math.MaxInt64), measure.Length(math.MaxInt64).Scale(2))
	assert.Equal(t, 3*measure.Foot, measure.Foot.Scale(3))
}

func TestProductsOfQuantities(t *testing.T) {
	area := (16 * measure.Foot).Times(12 * measure.Foot)
	assert.InEpsilon(t, float64(192*measure.SquareFoot), float64(area), 1e-12)
	assert.InEpsilon(t, float64(64*measure.CubicFoot), float64(area.Deep(4*measure.Inch)), 1e-12)
	assert.InEpsilon(t, float64(9600*measure.PoundForce), float64((50 * measure.PoundPerSquareFt).On(area)), 1e-12)
	assert.InEpsilon(t, float64(50*measure.PoundPerSquareFt), float64((9600 * measure.PoundForce).Over(area)), 1e-12)
	assert.InEpsilon(t, float64(100*measure.PoundForce), float64((100 * measure.Pound).Weight()), 1e-12)
	assert.InEpsilon(t, float64(100*measure.Pound), float64((100 * measure.PoundForce).Mass()), 1e-12)
	assert.InEpsilon(t, float64(2850*measure.Pound), float64((2850 * measure.PoundPerCubicFoot / 27).Of(measure.CubicYard)), 1e-12)
}
