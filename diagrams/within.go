package diagrams

import "pierbook/calc/measure"

// bounded is a drawing that can be drawn to a smaller scale where its page is
// short of room. Lettering keeps its size, so no drawing gets as low as one likes.
type bounded interface{ within(most float64) Drawing }

// DrawWithin returns the drawing as [Draw] does, at most so many millimetres
// high as far as its lettering allows. The scale that it states is the one that
// it is drawn to.
func DrawWithin(d Drawing, style measure.Style, most float64) ([]byte, error) {
	if b, ok := d.(bounded); ok {
		d = b.within(most)
	}
	return Draw(d, style)
}

// limit is the height that a drawing keeps to, in millimetres; zero for as high
// as it is read best.
type limit struct{ most float64 }

// room returns the height left for the picture itself: usual, or what the limit
// leaves beside the rest of the sheet, but never less than least.
func (l limit) room(usual, rest, least float64) float64 {
	if l.most == 0 {
		return usual
	}
	return min(usual, max(l.most-rest, least))
}

func (g Grid) bounded(most float64) Grid {
	g.most = most
	return g
}

func (p Plan) within(most float64) Drawing {
	p.Grid = p.bounded(max(most, 83)) // lower, the figures along the side would not stand level
	return p
}

func (c Contours) within(most float64) Drawing {
	c.Grid = c.bounded(max(most, 74))
	return c
}

func (a AsBuilt) within(most float64) Drawing {
	a.Grid = a.bounded(most)
	return a
}

func (t Strings) within(most float64) Drawing {
	if t.Width <= t.Length { // one that is wider than long would be too narrow for its figures
		t.Grid = t.bounded(most)
	}
	return t
}

func (p PierSection) within(most float64) Drawing {
	p.most = most
	return p
}

func (r Rectangles) within(most float64) Drawing {
	r.most = most
	return r
}

func (h HeightCurve) within(most float64) Drawing {
	h.most = most
	return h
}

func (c Section) within(most float64) Drawing {
	c.most = most
	return c
}

func (c Curves) within(most float64) Drawing {
	c.most = most
	return c
}

func (p Splice) within(most float64) Drawing {
	p.most = most
	return p
}

func (q Squaring) within(most float64) Drawing {
	q.most = most
	return q
}

func (r Racking) within(most float64) Drawing {
	r.most = most
	return r
}

func (m JoistMarks) within(most float64) Drawing {
	m.most = most
	return m
}

func (p Panels) within(most float64) Drawing {
	p.most = most
	return p
}

func (b Boards) within(most float64) Drawing {
	b.most = most
	return b
}
