package order

import (
	"fmt"

	"pierbook/calc/frame"
	"pierbook/calc/measure"
)

// strip is the top of a member that the floor lies on: from one face to the
// other, and how far it reaches.
type strip struct{ face, back, from, to measure.Length }

// panels counts 6 in along panel edges that lie on framing and 12 in in the
// field. Where one sheet that was read has 6 in in the field of combination
// floors, the model code has 12 in; the code's is taken.
func (s scheduler) panels() joint {
	f, edge, field, count := s.frame, s.spaced(6), s.spaced(12), 0
	across, along := acrossStrips(f), alongStrips(f)
	for _, p := range f.Surface.Panels {
		count += panelNailCount(p, across, along, edge, field)
	}
	n, source, memory := panelNail(s.job.Platform.Surface.Thickness)
	return joint{part: "surface", nail: n, count: count, words: fmt.Sprintf("%s %s apart along edges that lie on framing, %s apart elsewhere", s.call(n), s.say(edge), s.say(field)), use: "floor panels",
		working: fmt.Sprintf("each panel on each member: %s apart at edges, %s in the field, both ends", s.say(edge), s.say(field)), source: source, memory: memory}
}

// panelNailCount counts the nails of one panel: a row on each joist under it,
// and one on each rim, flush beam or block along it.
func panelNailCount(p frame.Panel, across, along []strip, edge, field measure.Length) int {
	count, right, top := 0, p.X+p.Length, p.Y+p.Width
	row := func(m strip, from, to, long measure.Length) {
		switch {
		case m.back <= from || m.face >= to:
		case m.face <= from || m.back >= to:
			count += atSpacing(long, edge)
		default:
			count += atSpacing(long, field)
		}
	}
	for _, m := range across {
		row(m, p.X, right, p.Width)
	}
	for _, m := range along {
		row(m, p.Y, top, min(m.to, right)-max(m.from, p.X))
	}
	return count
}

// acrossStrips are the tops of the joists, one for each place along x.
func acrossStrips(f *frame.Frame) []strip {
	var strips []strip
	if len(f.Joists) == 0 {
		return nil
	}
	bay := f.Joists[0].Bay
	for _, j := range f.Joists {
		if j.Bay == bay {
			strips = append(strips, strip{face: j.Near, back: j.Near + f.Sections.Joist.Width, to: f.Width})
		}
	}
	return strips
}

// alongStrips are the tops of what runs along x flush with the joists: rims,
// beams with the joists between them, blocking.
func alongStrips(f *frame.Frame) []strip {
	var strips []strip
	for _, r := range f.Rims {
		near := r.Y
		if r.Y > 0 {
			near = r.Y - f.Sections.Rim.Width
		}
		strips = append(strips, strip{near, near + f.Sections.Rim.Width, 0, f.Length})
	}
	if half := f.Sections.Beam.Across() / 2; f.BuildUp.Joist == 0 {
		for _, line := range f.Lines {
			strips = append(strips, strip{line.Y - half, line.Y + half, line.Start, line.End})
		}
	}
	half := f.Sections.Joist.Width / 2
	for _, b := range f.Blocking {
		if b.Turned {
			continue // beside an opening, a few nails: not counted
		}
		strips = append(strips, strip{b.Y - half, b.Y + half, b.From, b.To})
	}
	return strips
}

// boards counts two screws wherever a piece of board lies on a joist.
func (s scheduler) boards() joint {
	places, across := 0, acrossStrips(s.frame)
	for _, b := range s.frame.Surface.Boards {
		for _, p := range b.Pieces {
			for _, m := range across {
				if m.face < p.To && m.back > p.From {
					places++
				}
			}
		}
	}
	n, source, memory := boardScrew(s.job.Platform.Surface.Thickness)
	return joint{part: "surface", nail: n, count: 2 * places, words: "two " + s.call(n) + " at each joist", use: "floor boards",
		working: fmt.Sprintf("%d crossings × 2", places), source: source, memory: memory}
}
