package frame

import (
	"fmt"
	"slices"

	"pierbook/calc/measure"
)

// blockOpenings carries the edges of openings that lie between two joists: a
// block across the bay beyond each edge across the joists, and a piece between
// these blocks beyond each edge along them. An edge that wood flush with the
// joists reaches to within a joist's thickness is carried already. Common
// practice, no source: panel edges at an opening are carried.
//
// Openings that cut the frame get headers, which are not laid out here.
func (l *layout) blockOpenings() {
	f := l.frame
	for i := range f.Openings {
		l.clearBlocks(&f.Openings[i])
	}
	for i := range f.Openings {
		if o := &f.Openings[i]; !o.NeedsHeaders() {
			l.blockOpening(o, i+1)
		}
	}
}

// clearBlocks takes out the blocks under the long joints of panels that would
// stand in an opening.
func (l *layout) clearBlocks(o *Opening) {
	l.frame.Blocking = slices.DeleteFunc(l.frame.Blocking, func(b Blocking) bool { return o.meets(l.top(b)) })
}

// top returns the top of a block in plan.
func (l *layout) top(b Blocking) Rect {
	thick := l.frame.Sections.Joist.Width
	if b.Turned {
		return Rect{b.Y - thick/2, b.From, thick, b.Long()}
	}
	return Rect{b.From, b.Y - thick/2, b.Long(), thick}
}

// between is the room between two joists in which an opening lies.
type between struct {
	*layout
	opening  *Opening
	number   int // of the opening
	from, to measure.Length
}

func (l *layout) blockOpening(o *Opening, number int) {
	near, thick := l.frame.marks(), l.frame.Sections.Joist.Width
	b := between{l, o, number, near[o.Bay-1] + thick, near[o.Bay]}
	low := b.across("side "+l.frame.Lines[0].Name, b.carriedBelow(), o.Y-thick, o.Y)
	high := b.across("side "+l.frame.Lines[len(l.frame.Lines)-1].Name, b.carriedAbove(), o.Y+o.Width, o.Y+o.Width)
	if o.X-b.from >= thick {
		b.along("the hook end", o.X-thick, low, high)
	}
	if b.to-(o.X+o.Length) >= thick {
		b.along("the far end", o.X+o.Length, low, high)
	}
}

// carriedBelow returns where the wood ends that carries the edge towards side A,
// and nil when there is none.
func (b between) carriedBelow() *measure.Length {
	var best *measure.Length
	for _, r := range b.wood() {
		end := r.Y + r.Width
		if end <= b.opening.Y && b.opening.Y-end < b.frame.Sections.Joist.Width && (best == nil || end > *best) {
			best = &end
		}
	}
	return best
}

// carriedAbove returns where the wood begins that carries the other edge.
func (b between) carriedAbove() *measure.Length {
	var best *measure.Length
	edge := b.opening.Y + b.opening.Width
	for _, r := range b.wood() {
		if r.Y >= edge && r.Y-edge < b.frame.Sections.Joist.Width && (best == nil || r.Y < *best) {
			best = &r.Y
		}
	}
	return best
}

// wood returns the tops of all that lies across the whole bay.
func (b between) wood() []Rect {
	var list []Rect
	for _, m := range b.flush() {
		list = append(list, m.Rect)
	}
	for _, block := range b.frame.Blocking {
		if block.From == b.from && block.To == b.to && !block.Turned {
			list = append(list, b.top(block))
		}
	}
	return list
}

// across puts a block across the bay, its near face at y, unless the edge is
// carried. It returns where the wood faces the opening.
func (b between) across(side string, carried *measure.Length, y, face measure.Length) measure.Length {
	if carried != nil {
		return *carried
	}
	b.put(side, Blocking{Y: y + b.frame.Sections.Joist.Width/2, From: b.from, To: b.to})
	return face
}

// along puts a piece between the blocks, its near face at x.
func (b between) along(side string, x, from, to measure.Length) {
	b.put(side, Blocking{Y: x + b.frame.Sections.Joist.Width/2, From: from, To: to, Turned: true})
}

// put adds a block where it stands clear of openings and other blocks; otherwise
// the edge stays bare and is told.
func (b between) put(side string, block Blocking) {
	f, place := b.frame, b.top(block)
	for _, o := range f.Openings {
		if o.meets(place) {
			b.opening.Bare = append(b.opening.Bare, side)
			return
		}
	}
	for _, other := range f.Blocking {
		if b.top(other).meets(place) {
			b.opening.Bare = append(b.opening.Bare, side)
			return
		}
	}
	block.Name = fmt.Sprintf("Q%d.%d", b.number, len(b.opening.Blocks)+1)
	b.opening.Blocks = append(b.opening.Blocks, block.Name)
	f.Blocking = append(f.Blocking, block)
}
