package setout

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
)

func ExampleRectangle_Diagonal() {
	// A frame of 12 by 16 ft measures 20 ft from corner to corner: the 3-4-5
	// triangle four times over (common practice, no source).
	r := Rectangle{Length: 16 * measure.Foot, Width: 12 * measure.Foot}
	fmt.Printf("%.2f in\n", r.Diagonal().Inches())
	// Output: 240.00 in
}

func TestRackingTableIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rectangle{
			Length: measure.Length(rapid.Int64Range(2e9, 12e9).Draw(t, "length")),
			Width:  measure.Length(rapid.Int64Range(2e9, 12e9).Draw(t, "width")),
		}
		for _, row := range RackingTable(r, measure.Inch/4, 2*measure.Inch) {
			assert.InDelta(t, float64(row.Slide), float64(Slide(r.Length, row.Long, row.Short)), 4)
			made := rackedBy(r.Length, r.Width, row.Slide)
			assert.InDelta(t, float64(row.Difference), float64(made.Difference), 4)
		}
	})
}

// NAHB, Residential Construction Performance Guidelines, 3rd ed. (2005), from
// memory: 1/2 in on the 20 ft hypotenuse of a 12 by 16 ft triangle lets a corner stand 5/8 in to the side; ours must be
// stricter than that, and a tape must still be able to show it.
func TestDiagonalLimitsKeepInsideThePublishedLimit(t *testing.T) {
	l := DiagonalLimits(sixteenByTwelve, measure.Sixteenth)
	assert.InDelta(t, 0.25, l.Lateral.Inches(), 1e-6)
	assert.InDelta(t, 0.40, l.Allowed.Inches(), 1e-6, "2·192·0.25/240")
	assert.InDelta(t, 1.96*math.Sqrt2/16, l.Guard.Inches(), 1e-6)
	assert.InDelta(t, 0.23, l.Accept.Inches(), 0.005)
	assert.InDelta(t, 0.57, l.Stop.Inches(), 0.005)
	assert.Less(t, l.Lateral.Inches(), 0.6243)
	assert.LessOrEqual(t, l.Do, l.Accept)
}

// The largest 3-4-5 multiples: 12-16-20 in a frame of 12 by 16 ft, and
// 300-400-500 mm multiples in metric: common practice, no source.
func TestLargestTriangle(t *testing.T) {
	assert.Equal(t, Triangle{16 * measure.Foot, 12 * measure.Foot, 20 * measure.Foot}, LargestTriangle(sixteenByTwelve, measure.Imperial))
	tall := Rectangle{Length: 9 * measure.Foot, Width: 12*measure.Foot + measure.Inch}
	assert.Equal(t, Triangle{9 * measure.Foot, 12 * measure.Foot, 15 * measure.Foot}, LargestTriangle(tall, measure.Imperial))
	hen := Rectangle{Length: 3600 * measure.Millimetre, Width: 2400 * measure.Millimetre}
	assert.Equal(t, Triangle{3200 * measure.Millimetre, 2400 * measure.Millimetre, 4000 * measure.Millimetre}, LargestTriangle(hen, measure.Metric))
	assert.Equal(t, Triangle{}, LargestTriangle(Rectangle{Length: 2 * measure.Foot, Width: 2 * measure.Foot}, measure.Imperial))
}

func TestBatterBoardsClearTheHoles(t *testing.T) {
	b := BatterBoards(sixteenByTwelve, 8*measure.Inch, measure.Imperial)
	assert.Equal(t, 4*measure.Foot+8*measure.Inch, b.Offset)
	assert.Equal(t, 25*measure.Foot+4*measure.Inch, b.StringLong)
	assert.Equal(t, 4*measure.Foot, BatterBoards(sixteenByTwelve, -measure.Inch, measure.Imperial).Offset)
}

// rackedBy returns the diagonals of a frame with true sides a (held) and b
// whose far side has slid by s, and the row of the table it makes.
//
//	d² = (a ± s)² + b² − s²
func rackedBy(a, b, slide measure.Length) Racked {
	am, bm, sm := a.Metres(), b.Metres(), slide.Metres()
	height := bm*bm - sm*sm
	long := measure.FromMetres(math.Sqrt((am+sm)*(am+sm) + height))
	short := measure.FromMetres(math.Sqrt((am-sm)*(am-sm) + height))
	return Racked{Difference: long - short, Slide: slide, Long: long, Short: short}
}
