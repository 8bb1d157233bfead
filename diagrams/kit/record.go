package kit

import "math"

// Record is what a sheet holds, for tests that ask whether it can be read.
type Record struct {
	Sheet  Box
	Ink    Box     // extent of all lines, half their width included
	Labels []Label // in the order they were written
	Arrows []Box
	Keep   []Box // places held free by the drawing
}

// Label is one piece of lettering and the room it takes.
type Label struct {
	Words string
	Box   Box
}

// Record returns what the sheet holds so far.
func (s *Sheet) Record() Record { return s.record }

// Reserve holds a place free of labels that are placed by [Sheet.WriteFirst].
func (s *Sheet) Reserve(b Box) { s.record.Keep = append(s.record.Keep, b) }

// Free says whether b lies on the sheet and clear of every label, arrowhead and
// reserved place.
func (s *Sheet) Free(b Box) bool {
	if !s.size.Holds(b) {
		return false
	}
	for _, l := range s.record.Labels {
		if l.Box.Meets(b) {
			return false
		}
	}
	return clear(s.record.Arrows, b) && clear(s.record.Keep, b)
}

func clear(taken []Box, b Box) bool {
	for _, t := range taken {
		if t.Meets(b) {
			return false
		}
	}
	return true
}

func (s *Sheet) ink(pen Pen, points ...Point) {
	b := bounds(points...).Grown(pen.width / 2)
	i := &s.record.Ink
	i.Left, i.Top = math.Min(i.Left, b.Left), math.Min(i.Top, b.Top)
	i.Right, i.Bottom = math.Max(i.Right, b.Right), math.Max(i.Bottom, b.Bottom)
}

func bounds(points ...Point) Box {
	b := Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		b.Left, b.Top = math.Min(b.Left, p.X), math.Min(b.Top, p.Y)
		b.Right, b.Bottom = math.Max(b.Right, p.X), math.Max(b.Bottom, p.Y)
	}
	return b
}
