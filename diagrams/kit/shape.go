package kit

import "math"

// Segment is a straight line between two points.
type Segment struct{ From, To Point }

// Line draws a straight line.
func (s *Sheet) Line(pen Pen, from, to Point) { s.Lines(pen, Segment{from, to}) }

// Across draws a level line.
func (s *Sheet) Across(pen Pen, left, right, y float64) {
	s.Line(pen, Point{left, y}, Point{right, y})
}

// Upright draws a vertical line.
func (s *Sheet) Upright(pen Pen, x, top, bottom float64) {
	s.Line(pen, Point{x, top}, Point{x, bottom})
}

// Lines draws separate straight lines as one element.
func (s *Sheet) Lines(pen Pen, segments ...Segment) {
	if len(segments) == 0 {
		return
	}
	d := make([]byte, 0, 28*len(segments))
	for _, g := range segments {
		s.ink(pen, g.From, g.To)
		d = s.appendPoint(append(d, 'M'), g.From)
		d = s.appendPoint(append(d, 'L'), g.To)
	}
	s.shapes.Path(string(d), pen.attributes(Open))
}

// Polyline draws a line through the points.
func (s *Sheet) Polyline(pen Pen, points ...Point) {
	if len(points) > 1 {
		s.shapes.Path(string(s.path(pen, nil, points)), pen.attributes(Open))
	}
}

// Polygon draws a closed outline through the points.
func (s *Sheet) Polygon(pen Pen, fill Fill, points ...Point) { s.polygons(pen, fill, points) }

// polygons draws several closed outlines as one element.
func (s *Sheet) polygons(pen Pen, fill Fill, outlines ...[]Point) {
	var d []byte
	for _, points := range outlines {
		if len(points) > 2 {
			d = append(s.path(pen, d, points), 'Z')
		}
	}
	if len(d) > 0 {
		s.shapes.Path(string(d), pen.attributes(fill))
	}
}

// Rectangle draws the outline of b.
func (s *Sheet) Rectangle(pen Pen, fill Fill, b Box) { s.Polygon(pen, fill, b.Outline()...) }

// Outline returns the corners of b in order.
func (b Box) Outline() []Point {
	return []Point{{b.Left, b.Top}, {b.Right, b.Top}, {b.Right, b.Bottom}, {b.Left, b.Bottom}}
}

// Circle draws a circle.
func (s *Sheet) Circle(pen Pen, fill Fill, centre Point, radius float64) {
	s.ink(pen, centre.Plus(-radius, -radius), centre.Plus(radius, radius))
	s.shapes.Circle(s.rounded(centre.X), s.rounded(centre.Y), s.rounded(radius),
		pen.attributes(fill))
}

// Cross draws a small X, the mark for the side of a line on which a part stands.
func (s *Sheet) Cross(pen Pen, centre Point, width, height float64) {
	x, y := width/2, height/2
	s.Lines(pen,
		Segment{centre.Plus(-x, -y), centre.Plus(x, y)},
		Segment{centre.Plus(-x, y), centre.Plus(x, -y)})
}

// The arrowhead of every drawing, in millimetres: about three to one.
const (
	arrowLength = 3.0
	arrowWidth  = 1.1
)

// Arrow draws an arrowhead with its tip at tip, flying away from tail.
func (s *Sheet) Arrow(tail, tip Point) { s.arrowhead(tail, tip, 1) }

// arrowhead draws the head so many times as large as on a thin line, and
// returns the middle of its base.
func (s *Sheet) arrowhead(tail, tip Point, times float64) Point {
	dx, dy := tip.X-tail.X, tip.Y-tail.Y
	long := math.Hypot(dx, dy)
	if long == 0 {
		return tip
	}
	dx, dy = dx/long, dy/long
	base := tip.Plus(-dx*arrowLength*times, -dy*arrowLength*times)
	half := arrowWidth * times / 2
	left, right := base.Plus(-dy*half, dx*half), base.Plus(dy*half, -dx*half)
	s.Polygon(Pen{}, Black, tip, left, right)
	s.record.Arrows = append(s.record.Arrows, bounds(tip, left, right))
	return base
}

// Pull draws a line with an arrowhead at its end, larger on a thick line.
func (s *Sheet) Pull(pen Pen, tail, tip Point) {
	base := s.arrowhead(tail, tip, math.Max(1, pen.width/0.45))
	if math.Hypot(tip.X-tail.X, tip.Y-tail.Y) > math.Hypot(tip.X-base.X, tip.Y-base.Y) {
		s.Line(pen, tail, base)
	}
}

// path appends the path through the points.
func (s *Sheet) path(pen Pen, d []byte, points []Point) []byte {
	s.ink(pen, points...)
	letter := byte('M')
	for _, p := range points {
		d = s.appendPoint(append(d, letter), p)
		letter = 'L'
	}
	return d
}
