package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Rectangles are the two rectangles that make the platform square: the outside
// faces of the frame and the centres of the corner piers.
type Rectangles struct {
	limit
	Frame, Piers  Rectangle
	LinesGoLeft   bool
	AcrossToPier  measure.Length // from the frame corner to the centre of A1, along x
	ForwardToPier measure.Length // likewise along y
}

// Rectangle is one with its sides and its diagonal.
type Rectangle struct {
	Corners  [4]string      // round it: A1, the end of A, the end of the last line, its first
	Length   measure.Length // along the beams
	Width    measure.Length
	Diagonal measure.Length
}

// About returns the record of the drawing.
func (r Rectangles) About() About {
	return About{
		Name:  "rectangles",
		Title: "The two rectangles and their diagonals",
		Shows: "On the left the outside faces of the frame, on the right the centres of the corner piers. " +
			"Each has its corners named, two sides and both diagonals, which must be equal.",
	}
}

func (r Rectangles) sheet(style measure.Style) *kit.Sheet {
	if r.Frame.Length <= 0 || r.Frame.Width <= 0 {
		return blankSheet(r, "No frame to draw yet")
	}
	const across, down, top = 52.0, 66.0, 19.0
	c := kit.Fit(r.Frame.Length, r.Frame.Width, across, r.room(down, top+26, 28))
	high := max(c.Long(r.Frame.Width), 30)
	s := newSheet(r, top+high+26)
	middle := top + high/2
	r.draw(s, r.Frame, boxOf(c, r.Frame, kit.Point{X: 49, Y: middle}), "Frame, outside faces", kit.Outline, style)
	r.draw(s, r.Piers, boxOf(c, r.Piers, kit.Point{X: 133, Y: middle}), "Pier centres", kit.Centre, style)
	s.Write(kit.Text{
		Words: "centre of " + r.Frame.Corners[0] + ": " + r.AcrossToPier.Print(style) + " along and " + r.ForwardToPier.Print(style) + " across from the frame corner",
		At:    kit.Point{X: 1, Y: s.Size().Bottom - 2.6}, Align: kit.Start,
	})
	scaleNote(s, c.Name())
	return s
}

// boxOf returns the rectangle at its scale about the centre, never so thin that
// its figures would not fit.
func boxOf(c kit.Scale, r Rectangle, centre kit.Point) kit.Box {
	return kit.Around(centre, max(c.Long(r.Length), 30), max(c.Long(r.Width), 28))
}

func (r Rectangles) draw(s *kit.Sheet, one Rectangle, b kit.Box, title string, pen kit.Pen, style measure.Style) {
	s.Write(kit.Text{Words: title, At: kit.Point{X: b.Centre().X, Y: 3.5}, Size: kit.Medium, Bold: true})
	corners := r.round(b)
	s.Rectangle(pen, kit.Open, b)
	s.Lines(kit.Thin, kit.Segment{From: corners[0], To: corners[2]}, kit.Segment{From: corners[1], To: corners[3]})
	for i, at := range corners {
		s.Circle(kit.Thin, kit.Black, at, 0.9)
		dx, dy := outwardOf(b, at)
		s.Write(kit.Text{Words: one.Corners[i], At: at.Plus(dx*4.6, dy*3.4), Size: kit.Medium, Bold: true})
	}
	diagonal := one.Diagonal.Print(style)
	s.Write(kit.Text{Words: diagonal, At: along(corners[0], corners[2], 0.27), Bold: true})
	other := kit.Text{Words: diagonal, Bold: true}
	s.WriteFirst(moved(other, along(corners[1], corners[3], 0.27)), moved(other, along(corners[1], corners[3], 0.73)))
	below := b.Bottom + 12
	s.DimensionAcross(b.Left, b.Right, below, b.Bottom, b.Bottom, one.Length.Print(style))
	beside := b.Left - 12
	s.DimensionUpright(b.Top, b.Bottom, beside, b.Left, b.Left, one.Width.Print(style))
}

// round returns the corners of the box in the order of the names: the first at
// the hook corner, which is below when the lines go left.
func (r Rectangles) round(b kit.Box) [4]kit.Point {
	near, far := b.Top, b.Bottom
	if r.LinesGoLeft {
		near, far = far, near
	}
	return [4]kit.Point{{X: b.Left, Y: near}, {X: b.Right, Y: near}, {X: b.Right, Y: far}, {X: b.Left, Y: far}}
}

// outwardOf returns the signs of the way out of a box from one of its corners.
func outwardOf(b kit.Box, corner kit.Point) (dx, dy float64) {
	dx, dy = 1, 1
	if corner.X < b.Centre().X {
		dx = -1
	}
	if corner.Y < b.Centre().Y {
		dy = -1
	}
	return dx, dy
}

// along returns the point at a part of the way from a to b.
func along(a, b kit.Point, part float64) kit.Point {
	return kit.Point{X: a.X + (b.X-a.X)*part, Y: a.Y + (b.Y-a.Y)*part}
}
