package setout

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
)

// crossing returns where the lines through a, b and through c, d meet.
func crossing(a, b, c, d point) point {
	r, s := point{b.x - a.x, b.y - a.y}, point{d.x - c.x, d.y - c.y}
	t := ((c.x-a.x)*s.y - (c.y-a.y)*s.x) / (r.x*s.y - r.y*s.x)
	return point{a.x + t*r.x, a.y + t*r.y}
}

// Strings are drawn from board to board and their crossings worked out by
// coordinates: once both end strings have moved on the far boards as the table
// says, the diagonals are equal to far less than a tape shows. A far string that
// slides along itself leaves every crossing where it was.
func TestEndStringsMovedOnTheFarBoardsMakeTheDiagonalsEqual(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(1.5, 15).Draw(t, "length")
		b := rapid.Float64Range(1.2, 8).Draw(t, "width")
		e := rapid.Float64Range(0.6, 2).Draw(t, "boards outside")
		lean := rapid.Float64Range(-0.05, 0.05).Draw(t, "lean") // of the far corners
		r := Rectangle{Length: measure.FromMetres(a), Width: measure.FromMetres(b)}
		boards := Boards{Offset: measure.FromMetres(e)}
		diagonals := func(move float64) (first, second float64) {
			slope := lean / b
			var corner [4]point
			for i, x := range []float64{0, a} {
				near, far := point{x - slope*e, -e}, point{x + slope*(b+e) + move, b + e}
				corner[i] = crossing(near, far, point{0, 0}, point{a, 0})
				corner[3-i] = crossing(near, far, point{0, b}, point{a, b})
			}
			return math.Hypot(corner[2].x-corner[0].x, corner[2].y-corner[0].y), math.Hypot(corner[3].x-corner[1].x, corner[3].y-corner[1].y)
		}
		first, second := diagonals(0)
		slide := Slide(r.Length, measure.FromMetres(max(first, second)), measure.FromMetres(min(first, second)))
		assert.InDelta(t, math.Abs(lean), slide.Metres(), 1e-6, "the far corners' slide")
		move := boards.AtFarBoard(slide, r.Width).Metres()
		if first > second {
			move = -move
		}
		first, second = diagonals(move)
		assert.InDelta(t, first, second, 1e-6)
	})
}

// By hand: 12 ft wide, boards 4 ft outside. Half an inch between the corners is
// 1/2 × (12 + 2×4)/12 = 5/6 in between the boards.
func TestMoveOnTheFarBoardByHand(t *testing.T) {
	got := Boards{Offset: 4 * measure.Foot}.AtFarBoard(measure.Inch/2, 12*measure.Foot)
	assert.InDelta(t, 5.0/6, got.Inches(), 1e-6)
}
