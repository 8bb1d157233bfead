package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Squaring shows the four strings from above with the 3-4-5 triangle that turns
// the second string square to the first, the sides and both diagonals.
type Squaring struct {
	limit
	Frame                           Rectangle
	LinesGoLeft                     bool
	AlongLength, AlongWidth, Across measure.Length // the triangle's legs and its long side; zero when none fits
}

// About returns the record of the drawing.
func (q Squaring) About() About {
	about := About{Name: "squaring", Title: "Four strings, the triangle and the diagonals"}
	about.Shows = "The frame's outside faces from above as four strings, with its corners, sides and both diagonals, which must be equal."
	if q.AlongLength > 0 {
		about.Shows += " At " + q.Frame.Corners[0] + " a triangle is marked on two strings: one leg along each, and the long side between the marks."
	}
	return about
}

func (q Squaring) sheet(style measure.Style) *kit.Sheet {
	if q.Frame.Length <= 0 || q.Frame.Width <= 0 {
		return blankSheet(q, "No frame to square yet")
	}
	const head, foot, side = 12.0, 24.0, 32.0
	c := kit.Fit(q.Frame.Length, q.Frame.Width, pageWidth-2*side, q.room(74, head+foot, 34))
	wide, high := max(c.Long(q.Frame.Length), 40), max(c.Long(q.Frame.Width), 30)
	near := foot
	if q.LinesGoLeft {
		near = head
	}
	b := kit.Around(kit.Point{X: pageWidth / 2, Y: near + high/2}, wide, high)
	s := newSheet(q, head+foot+high)
	corners := Rectangles{LinesGoLeft: q.LinesGoLeft}.round(b)
	q.drawStrings(s, b)
	for i, at := range corners {
		s.Circle(kit.Thin, kit.Black, at, 0.9)
		dx, dy := outwardOf(b, at)
		s.Write(kit.Text{Words: q.Frame.Corners[i], At: at.Plus(dx*5.4, dy*4), Size: kit.Medium, Bold: true})
	}
	q.drawTriangle(s, c, b, corners, style)
	q.writeSizes(s, b, corners, style)
	scaleNote(s, c.Name()+"; long-short lines = strings, thin = diagonals, bold = the triangle")
	return s
}

// drawStrings draws the strings past their crossings.
func (q Squaring) drawStrings(s *kit.Sheet, b kit.Box) {
	const over = 8.0
	s.Lines(kit.Centre,
		kit.Segment{From: kit.Point{X: b.Left - over, Y: b.Top}, To: kit.Point{X: b.Right + over, Y: b.Top}},
		kit.Segment{From: kit.Point{X: b.Left - over, Y: b.Bottom}, To: kit.Point{X: b.Right + over, Y: b.Bottom}},
		kit.Segment{From: kit.Point{X: b.Left, Y: b.Top - over}, To: kit.Point{X: b.Left, Y: b.Bottom + over}},
		kit.Segment{From: kit.Point{X: b.Right, Y: b.Top - over}, To: kit.Point{X: b.Right, Y: b.Bottom + over}})
}

// drawTriangle draws the legs on the strings and the long side between the marks.
func (q Squaring) drawTriangle(s *kit.Sheet, c kit.Scale, b kit.Box, corners [4]kit.Point, style measure.Style) {
	if q.AlongLength <= 0 {
		return
	}
	across, up := c.Long(q.AlongLength), c.Long(q.AlongWidth)
	_, dy := outwardOf(b, corners[0])
	first, second := corners[0].Plus(across, 0), corners[0].Plus(0, -dy*up)
	s.Lines(kit.Bold, kit.Segment{From: corners[0], To: first}, kit.Segment{From: corners[0], To: second}, kit.Segment{From: first, To: second})
	for _, mark := range []kit.Segment{{From: first.Plus(0, -2), To: first.Plus(0, 2)}, {From: second.Plus(-2, 0), To: second.Plus(2, 0)}} {
		s.Line(kit.Outline, mark.From, mark.To)
	}
	// Where the string turns square, in the corner itself.
	s.Polyline(kit.Thin, corners[0].Plus(3, 0), corners[0].Plus(3, -dy*3), corners[0].Plus(0, -dy*3))
	bold := kit.Text{Bold: true, Size: kit.Medium}
	leg := bold
	leg.Words, leg.At = q.AlongLength.Print(style), kit.Point{X: corners[0].X + across*0.62, Y: corners[0].Y - dy*3.4}
	s.Write(leg)
	long := bold
	long.Words = q.Across.Print(style)
	s.WriteFirst(moved(long, along(first, second, 0.5)), moved(long, along(first, second, 0.38)), moved(long, along(first, second, 0.62)))
	rise := bold
	rise.Words, rise.Turned = q.AlongWidth.Print(style), true
	s.WriteFirst(moved(rise, kit.Point{X: corners[0].X + 3.6, Y: corners[0].Y - dy*up*0.6}), moved(rise, kit.Point{X: corners[0].X - 3.6, Y: corners[0].Y - dy*up*0.5}))
}

// writeSizes writes the sides outside and the diagonal on each diagonal, clear of
// the triangle.
func (q Squaring) writeSizes(s *kit.Sheet, b kit.Box, corners [4]kit.Point, style measure.Style) {
	s.Lines(kit.Thin, kit.Segment{From: corners[0], To: corners[2]}, kit.Segment{From: corners[1], To: corners[3]})
	diagonal := kit.Text{Words: q.Frame.Diagonal.Print(style), Bold: true}
	s.WriteFirst(moved(diagonal, along(corners[0], corners[2], 0.8)), moved(diagonal, along(corners[0], corners[2], 0.7)))
	s.WriteFirst(moved(diagonal, along(corners[1], corners[3], 0.2)), moved(diagonal, along(corners[1], corners[3], 0.3)))
	_, dy := outwardOf(b, corners[0])
	s.DimensionAcross(b.Left, b.Right, corners[0].Y+dy*13, corners[0].Y+dy*9, corners[0].Y+dy*9, q.Frame.Length.Print(style))
	s.DimensionUpright(b.Top, b.Bottom, b.Right+16, b.Right+9, b.Right+9, q.Frame.Width.Print(style))
}
