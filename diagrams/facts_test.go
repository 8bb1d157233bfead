package diagrams

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// On a plane every point of a contour must lie on its level.
func TestContoursOfAPlaneLieOnTheirLevel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slopeX, slopeY := rapid.IntRange(-200, 200).Draw(t, "x"), rapid.IntRange(-200, 200).Draw(t, "y")
		f := Field{X1: 6 * measure.Metre, Y1: 4 * measure.Metre}
		height := func(x, y float64) float64 { return (x*float64(slopeX) + y*float64(slopeY)) / 1000 }
		for r := range 9 {
			var row []measure.Length
			for k := range 13 {
				x, y := f.X1.Part(k, 12), f.Y1.Part(r, 8)
				row = append(row, x.Part(slopeX, 1000)+y.Part(slopeY, 1000))
			}
			f.Heights = append(f.Heights, row)
		}
		level := measure.Length(rapid.Int64Range(int64(-measure.Metre), int64(measure.Metre)).Draw(t, "level"))
		v := gridView{Scale: kit.Scale{Ratio: 1}}
		for _, g := range f.on(v).cut(level) {
			for _, p := range []kit.Point{g.From, g.To} {
				if off := height(p.X, p.Y) - level.Millimetres(); off > 0.01 || off < -0.01 {
					t.Fatalf("%v is %v mm off its level", p, off)
				}
			}
		}
	})
}

func TestContoursRunWhereTheGroundPassesTheLevel(t *testing.T) {
	c := sampleContours(sites[0])
	low, high := c.Field.extremes()
	v := gridView{Scale: kit.Scale{Ratio: 50}}
	assert.NotEmpty(t, c.Field.on(v).cut((low+high)/2))
	assert.Empty(t, c.Field.on(v).cut(high+measure.Inch))
	assert.Empty(t, c.Field.on(v).cut(low-measure.Inch))
}

func TestPiecesKerfTrimAndOffcutMakeTheStick(t *testing.T) {
	for _, stick := range sampleSticks(sites[0]).Sticks {
		sum := stick.Offcut()
		if stick.Trim > 0 {
			sum += stick.Trim + stick.Kerf
		}
		for _, p := range stick.Pieces {
			sum += p.Long + stick.Kerf
		}
		if stick.Offcut() > 0 {
			assert.Equal(t, stick.Stock, sum, stick.Name)
		} else {
			assert.LessOrEqual(t, stick.Stock, sum, stick.Name)
		}
	}
}

func TestLongStickListsAreSplitInOrder(t *testing.T) {
	long := Sticks{Section: "2x6"}
	for range 40 {
		long.Sticks = append(long.Sticks, sampleSticks(sites[0]).Sticks...)
	}
	var together []Stick
	names := map[string]bool{}
	for _, part := range long.Split(imperial) {
		assert.Empty(t, faults(part.sheet(imperial).Record()))
		assert.False(t, names[part.About().Name])
		names[part.About().Name] = true
		together = append(together, part.Sticks...)
	}
	assert.Equal(t, long.Sticks, together)
	assert.Greater(t, len(names), 5)
}

// The drawing must not be mirrored: seen from A1 along line A, line B is on the
// hand that the job says.
func TestLinesLieOnTheHandThatTheJobSays(t *testing.T) {
	j := sites[0]
	for _, left := range []bool{true, false} {
		j.left = left
		v := j.grid().lay(room{left: 30, right: 30, near: 30, far: 30}, 165)
		a1, b1, a2 := v.At(v.Piers[0].X, v.Piers[0].Y), v.At(v.Piers[5].X, v.Piers[5].Y), v.At(v.Piers[1].X, v.Piers[1].Y)
		require.Greater(t, a2.X, a1.X)
		assert.Equal(t, left, b1.Y < a1.Y, "up on the sheet is left of rightward")
	}
}

func TestJoistStripsHoldEveryJoistOnce(t *testing.T) {
	for _, j := range sites {
		m := sampleJoistMarks(j)
		var numbers []int
		for _, row := range m.rows() {
			for _, joist := range row.joists {
				numbers = append(numbers, joist.Number)
				assert.GreaterOrEqual(t, joist.Near, row.from)
				assert.Less(t, joist.Near, row.to)
			}
		}
		require.Len(t, numbers, len(m.Joists))
		for i, n := range numbers {
			assert.Equal(t, i+1, n)
		}
	}
}

func TestCornerMovesSayTheWay(t *testing.T) {
	m := sampleMoves(sites[0])
	assert.Equal(t, []string{"held"}, m.words(0, imperial))
	assert.Equal(t, []string{"3/16″ towards A1", "9/16″ towards C5"}, m.words(1, imperial))
	assert.Equal(t, []string{"1\u00a03/8″ away from C1", "3/16″ towards A5"}, m.words(2, imperial))
	assert.Equal(t, []string{"stays"}, m.words(3, imperial))
}

func TestCurvePeaksAreTheLargestFirst(t *testing.T) {
	g := curve{points: []kit.Point{{Y: 0}, {Y: 3}, {Y: 1}, {Y: -5}, {Y: -2}, {Y: 0.1}, {Y: 0}}}
	assert.Equal(t, []int{3, 1}, g.peaks(), "the one under a tenth is left out")
}

func TestFallReadsTheGroundBetweenSpots(t *testing.T) {
	f := Fall{Ground: []Spot{{0, 0}, {10 * measure.Metre, 100 * mm}, {20 * measure.Metre, 0}}}
	assert.Equal(t, 50*mm, f.groundAt(5*measure.Metre))
	assert.Equal(t, 25*mm, f.groundAt(17500*mm))
	assert.Equal(t, measure.Length(0), f.groundAt(30*measure.Metre))
}
