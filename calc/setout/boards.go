package setout

import (
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Boards says where batter boards stand and how long the strings are.
type Boards struct {
	Offset      measure.Length // from the frame's outside face to the boards
	Clear       measure.Length // from the edge of the nearest hole to the boards
	StringLong  measure.Length // board to board along the length
	StringCross measure.Length
	StringTotal measure.Length // two of each, with a tail for the knots
	BoardLong   measure.Length // of one board
	KnotTail    measure.Length // spare string for each string's two knots
	Boards      int
	Stakes      int
}

// AtFarBoard returns how far an end string must go on its far board so that the
// far corners slide against the near ones by so much. The string turns about its
// kerf in the near board, so between the corners it turns less than from board to
// board, and the near corners go a little the same way.
//
//	s (b + 2 e) / b   with b the width of the rectangle, e the boards' offset
//
// Derived, by similar triangles.
func (b Boards) AtFarBoard(slide, width measure.Length) measure.Length {
	return slide.Scale(1 + 2*b.Offset.Metres()/width.Metres())
}

// BatterBoards returns where two boards stand at each corner of a rectangle
// whose holes reach beyond its faces by overhang (less than zero when the holes
// stay inside).
func BatterBoards(r Rectangle, overhang measure.Length, system measure.System) Boards {
	clearOf := trade.BoardClear.In(system)
	b := Boards{Clear: clearOf, Offset: clearOf + max(overhang, 0), BoardLong: trade.BoardLong.In(system), KnotTail: trade.KnotTail.In(system), Boards: 8, Stakes: 16}
	b.StringLong = r.Length + 2*b.Offset
	b.StringCross = r.Width + 2*b.Offset
	b.StringTotal = 2*(b.StringLong+b.StringCross) + 4*b.KnotTail
	return b
}
