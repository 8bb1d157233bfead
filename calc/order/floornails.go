package order

import (
	"fmt"

	"pierbook/calc/frame"
	"pierbook/calc/measure"
)

// strip is the top of a member that the floor lies on: from one face to the
// other, and how far it reaches.
type strip struct{ face, back, from, to measure.Length }

// panels counts one spacing along panel edges that lie on framing and another in
// the field.
func (s scheduler) panels() Joint {
	f, row := s.frame, s.joint("surface", "panel", s.job.Platform.Surface.Thickness)
	across, along := acrossStrips(f), alongStrips(f)
	for _, p := range f.Surface.Panels {
		row.Count += panelNailCount(p, across, along, row.Edge, row.Field)
	}
	row.words = fmt.Sprintf("%s %s apart along edges that lie on framing, %s apart elsewhere", s.call(row.Nail), s.say(row.Edge), s.say(row.Field))
	row.use, row.working = "floor panels", fmt.Sprintf("each panel on each member: %s apart at edges, %s in the field, both ends", s.say(row.Edge), s.say(row.Field))
	return row
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

// boards counts the screws wherever a piece of board lies on a joist.
func (s scheduler) boards() Joint {
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
	row := s.joint("surface", "board", s.job.Platform.Surface.Thickness)
	return row.atPlaces(places, "crossings", s.some(row)+" at each joist", "floor boards")
}
