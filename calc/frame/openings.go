package frame

import "pierbook/calc/measure"

// Opening is a place of the floor that stays open, for a hatch, a post, a pipe
// or a sleeve, with what it cuts.
type Opening struct {
	Name string
	Rect
	CutOuts []CutOut // in the pieces of the surface, in their order
	Through []string // joists, rims and beams flush with the joists that it cuts, by name
	Close   []string // joists that it leaves whole and comes closer to than their thickness
	Over    []string // beam lines that run below it
	Bay     int      // number of the joist before it; 0 when it cuts the frame
	Blocks  []string // names of the blocks that carry its edges
	Bare    []string // edges that no block fits under, by the side they lie to
}

// NeedsHeaders says whether the opening cuts what carries the floor.
func (o Opening) NeedsHeaders() bool { return len(o.Through) > 0 }

// CutOut is the part of an opening that lies in one piece of the surface.
type CutOut struct {
	Piece string
	// X and Y are measured from the piece's own corner at the hook end nearest
	// side A; the size is along x and y.
	X, Y, Length, Width measure.Length
	Kind                string // "hole", "notch" at an edge, "in two" when nothing is left beside it, "all of it"
}

// Rect is an upright rectangle of the plan, by its corner nearest the origin.
type Rect struct{ X, Y, Length, Width measure.Length }

// meets says whether r and a share more than an edge.
func (r Rect) meets(a Rect) bool {
	return r.X < a.X+a.Length && a.X < r.X+r.Length && r.Y < a.Y+a.Width && a.Y < r.Y+r.Width
}

// openings finds what each opening cuts and puts blocks under the edges that
// nothing carries.
func (l *layout) openings() {
	f := l.frame
	for _, name := range l.job.Platform.OpeningNames() {
		wish := l.job.Platform.Openings[name]
		o := Opening{Name: name, Rect: Rect{wish.X, wish.Y, wish.Length, wish.Width}}
		o.CutOuts = f.cutOuts(o.Rect)
		l.framing(&o)
		f.Openings = append(f.Openings, o)
	}
	l.blockOpenings()
}

// cutOuts returns the parts of a rectangle that lie in pieces of the surface.
func (f *Frame) cutOuts(r Rect) []CutOut {
	var list []CutOut
	take := func(name string, piece Rect) {
		x, y := max(r.X, piece.X), max(r.Y, piece.Y)
		c := CutOut{Piece: name, X: x - piece.X, Y: y - piece.Y,
			Length: min(r.X+r.Length, piece.X+piece.Length) - x, Width: min(r.Y+r.Width, piece.Y+piece.Width) - y}
		if c.Length <= 0 || c.Width <= 0 {
			return
		}
		c.Kind = kindOfCut(c, piece)
		list = append(list, c)
	}
	for _, p := range f.Surface.Panels {
		take(p.Name, Rect{p.X, p.Y, p.Length, p.Width})
	}
	for _, b := range f.Surface.Boards {
		for _, p := range b.Pieces {
			take(p.Name, Rect{p.From, b.Y, p.Long(), b.Width})
		}
	}
	return list
}

func kindOfCut(c CutOut, piece Rect) string {
	wholeLength, wholeWidth := c.Length == piece.Length, c.Width == piece.Width
	atEnd := c.X == 0 || c.X+c.Length == piece.Length
	atSide := c.Y == 0 || c.Y+c.Width == piece.Width
	switch {
	case wholeLength && wholeWidth:
		return "all of it"
	case wholeWidth && !atEnd, wholeLength && !atSide:
		return "in two"
	case atEnd || atSide:
		return "notch"
	default:
		return "hole"
	}
}

// framing finds the members that an opening cuts or comes close to.
func (l *layout) framing(o *Opening) {
	f, thick := l.frame, l.frame.Sections.Joist.Width
	for _, j := range f.Joists {
		top := Rect{j.Near, j.From, thick, j.Long()}
		around := Rect{j.Near - thick, j.From, 3 * thick, j.Long()}
		switch {
		case o.meets(top):
			o.Through = append(o.Through, j.Name)
		case o.meets(around):
			o.Close = append(o.Close, j.Name)
		}
	}
	for _, m := range l.flush() {
		if o.meets(m.Rect) {
			o.Through = append(o.Through, m.name)
		}
	}
	half := f.Sections.Beam.Across() / 2
	for _, line := range f.Lines {
		if !l.between() && o.meets(Rect{line.Start, line.Y - half, line.End - line.Start, 2 * half}) {
			o.Over = append(o.Over, line.Name)
		}
	}
	if o.NeedsHeaders() {
		return
	}
	for i, near := range f.marks() {
		if near < o.X {
			o.Bay = i + 1
		}
	}
}

// member is a rim or a beam whose top is flush with the joists.
type member struct {
	name string
	Rect
}

// flush returns what runs along x with its top flush with the joists.
func (l *layout) flush() []member {
	f, rim := l.frame, l.rimThickness()
	var list []member
	for _, r := range f.Rims {
		y := r.Y
		if y > 0 {
			y -= rim
		}
		list = append(list, member{"the rim of side " + r.Side, Rect{0, y, f.Length, rim}})
	}
	if l.between() {
		across := f.Sections.Beam.Across()
		for _, line := range f.Lines {
			list = append(list, member{"beam " + line.Name, Rect{line.Start, line.Y - across/2, line.End - line.Start, across}})
		}
	}
	return list
}
