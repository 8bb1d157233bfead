package kit

import "math"

// Customary distances of dimensioning, in millimetres.
const (
	FirstDimension = 10.0 // from the outline to the first dimension line
	NextDimension  = 7.0  // from one dimension line to the next
	extensionGap   = 1.5  // from the outline to its extension line
	extensionPast  = 2.5  // how far the extension line runs past the dimension line
	tail           = 4.5  // of an arrow that stands outside
)

// DimensionAcross draws a level dimension between left and right at height y.
// The extension lines start at the edges, one for each end.
func (s *Sheet) DimensionAcross(left, right, y, leftEdge, rightEdge float64, words string) {
	s.extendUpright(left, leftEdge, y)
	s.extendUpright(right, rightEdge, y)
	half := Width(words, Small, false)/2 + 1
	middle := (left + right) / 2
	if right-left >= 2*half+2*arrowLength+2 {
		s.Lines(Thin, Segment{Point{left, y}, Point{middle - half, y}}, Segment{Point{middle + half, y}, Point{right, y}})
		s.arrows(Point{left, y}, Point{right, y}, false)
		s.Write(Text{Words: words, At: Point{middle, y}})
		return
	}
	outside := right-left < 2*arrowLength+1.5
	s.Across(Thin, left, right, y)
	s.arrows(Point{left, y}, Point{right, y}, outside)
	reach := 1.5
	if outside {
		s.Lines(Thin, Segment{Point{left - tail, y}, Point{left, y}}, Segment{Point{right, y}, Point{right + tail, y}})
		reach = tail + 0.8
	}
	s.writeSomewhere(
		Text{Words: words, At: Point{right + reach, y}, Align: Start},
		Text{Words: words, At: Point{left - reach, y}, Align: End},
		Text{Words: words, At: Point{middle, y - 3.5}},
		Text{Words: words, At: Point{middle, y + 3.5}},
		Text{Words: words, At: Point{right + reach, y - 4.2}, Align: Start},
		Text{Words: words, At: Point{left - reach, y - 4.2}, Align: End})
}

// DimensionUpright draws a vertical dimension between top and bottom at x, its
// figure level so that the sheet need not be turned. The extension lines start
// at the edges, one for each end.
func (s *Sheet) DimensionUpright(top, bottom, x, topEdge, bottomEdge float64, words string) {
	s.extendLevel(top, topEdge, x)
	s.extendLevel(bottom, bottomEdge, x)
	half := Pitch(Small)/2 + 0.5
	middle := (top + bottom) / 2
	if bottom-top >= 2*half+2*arrowLength+1 {
		s.Lines(Thin, Segment{Point{x, top}, Point{x, middle - half}}, Segment{Point{x, middle + half}, Point{x, bottom}})
		s.arrows(Point{x, top}, Point{x, bottom}, false)
		s.Write(Text{Words: words, At: Point{x, middle}})
		return
	}
	outside := bottom-top < 2*arrowLength+1.5
	s.Upright(Thin, x, top, bottom)
	s.arrows(Point{x, top}, Point{x, bottom}, outside)
	if outside {
		s.Lines(Thin, Segment{Point{x, top - tail}, Point{x, top}}, Segment{Point{x, bottom}, Point{x, bottom + tail}})
	}
	side, align := x+1.5, Start
	other, otherAlign := x-1.5, End
	if math.Max(topEdge, bottomEdge) > x {
		side, align, other, otherAlign = other, otherAlign, side, align
	}
	s.writeSomewhere(
		Text{Words: words, At: Point{side, middle}, Align: align},
		Text{Words: words, At: Point{side, top - tail}, Align: align},
		Text{Words: words, At: Point{side, bottom + tail}, Align: align},
		Text{Words: words, At: Point{other, middle}, Align: otherAlign},
		Text{Words: words, At: Point{x, top - tail - 3}},
		Text{Words: words, At: Point{x, bottom + tail + 3}})
}

// writeSomewhere writes the first text that finds room, and the first one of
// all when none does: a dimension must not go missing.
func (s *Sheet) writeSomewhere(choices ...Text) {
	if !s.WriteFirst(choices...) {
		s.Write(choices[0])
	}
}

func (s *Sheet) arrows(a, b Point, outside bool) {
	if outside {
		s.Arrow(a.Plus(a.X-b.X, a.Y-b.Y), a)
		s.Arrow(b.Plus(b.X-a.X, b.Y-a.Y), b)
		return
	}
	s.Arrow(b, a)
	s.Arrow(a, b)
}

// extendUpright draws the extension line at x from the edge to past y.
func (s *Sheet) extendUpright(x, edge, y float64) {
	if way := math.Copysign(1, y-edge); math.Abs(y-edge) > extensionGap {
		s.Upright(Thin, x, edge+way*extensionGap, y+way*extensionPast)
	}
}

func (s *Sheet) extendLevel(y, edge, x float64) {
	if way := math.Copysign(1, x-edge); math.Abs(x-edge) > extensionGap {
		s.Across(Thin, edge+way*extensionGap, x+way*extensionPast, y)
	}
}
