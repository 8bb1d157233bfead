package frame

import (
	"fmt"

	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// narrowest returns the least width of a ripped row. Sheets that are no wider
// than the published least are made to be laid as they are; half of one is the
// least then (common practice, no source).
func (p *floor) narrowest() measure.Length {
	if p.faceWidth > p.narrow {
		return p.narrow
	}
	return p.faceWidth / 2
}

// panels lays sheets across the joists, rows from y = 0, end joints over joists.
func (l *layout) panels() {
	wish := l.job.Platform.Surface
	l.positive("platform.surface.face.length", wish.FaceLength)
	l.positive("platform.surface.face.width", wish.FaceWidth)
	if wish.FaceLength <= 0 || wish.FaceWidth <= 0 {
		return
	}
	p := l.floorOf(l.frame.Length, l.frame.Width, l.frame.marks())
	c, ok := p.best()
	if !ok {
		p.bays = 1
		if c, ok = p.best(); !ok {
			l.wrong("frame.joists.spacing", fmt.Sprintf("space the joists at %s or closer, so that a panel reaches from one to the next", l.sayDown(wish.FaceLength)),
				"no panel %s long ends on joists %s apart", l.say(wish.FaceLength), l.say(l.frame.WidestBay))
			return
		}
		l.frame.Surface.OneBay = true
	}
	l.write(p, c)
	l.adviseRows(p, c)
}

// floorOf returns a floor of that size on joists with these near faces.
func (l *layout) floorOf(length, width measure.Length, near []measure.Length) *floor {
	wish := l.job.Platform.Surface
	rest := l.rimThickness()
	if l.between() && l.job.Frame.Beams.Inset <= rest {
		rest += l.frame.Sections.Beam.Across()
	}
	return &floor{
		length: length, width: width, face: wish.FaceLength, faceWidth: wish.FaceWidth,
		gap: wish.Gap, kerf: l.job.Yard.Kerf, near: near, thick: l.frame.Sections.Joist.Width,
		bays: leastBays, mates: wish.Edge == "tongue_and_groove", edgeRest: rest, mark: l.mark(),
		hold: trade.EdgeBearing.In(l.job.Units), narrow: trade.PanelLeast.In(l.job.Units),
	}
}

// write turns a floor cut up into rows and panels, sheets numbered in the order
// in which the work needs them.
func (l *layout) write(p *floor, c cutUp) {
	s := &l.frame.Surface
	s.Sheets = c.sheets
	number := make(map[int]int, c.sheets)
	s.Panels = make([]Panel, 0, len(c.parts))
	for _, part := range c.parts {
		if part.number == 0 {
			s.Rows = append(s.Rows, l.rowOf(p, part))
		}
		row := &s.Rows[part.row]
		row.Panels++
		sheet, used := number[part.sheet]
		if !used {
			sheet = len(number) + 1
			number[part.sheet] = sheet
		}
		long := part.cut.to - part.cut.from
		s.Panels = append(s.Panels, Panel{
			Name: fmt.Sprintf("P%d.%d", row.Number, row.Panels), Row: row.Number, Number: row.Panels,
			X: part.cut.from, Y: row.Y, Length: long, Width: row.Width,
			Sheet: sheet, FromOffcut: used, CutLength: long < p.face, Ripped: part.ripped,
		})
	}
}

// mark returns the finest mark of the job's tape.
func (l *layout) mark() measure.Length {
	if l.job.Units == measure.Metric {
		return measure.Millimetre
	}
	return l.job.Fraction
}

func (l *layout) rowOf(p *floor, first part) Row {
	row := Row{Number: first.row + 1, Width: first.width, Ripped: first.ripped}
	if n := len(l.frame.Surface.Rows); n > 0 {
		before := l.frame.Surface.Rows[n-1]
		row.Y = before.Y + before.Width + p.gap
	}
	switch {
	case row.Ripped && first.row == 0 && p.width > p.faceWidth:
		row.Comment = fmt.Sprintf("rip to %s, off the edge along side %s", l.say(row.Width), l.frame.Lines[0].Name)
	case row.Ripped:
		row.Comment = fmt.Sprintf("rip to %s", l.say(row.Width))
	}
	return row
}

// adviseRows says what the floor as cut up leaves to be wished.
func (l *layout) adviseRows(p *floor, c cutUp) {
	if c.step < leastBays {
		l.unsettled("platform.surface", "The end joints of neighbouring rows of panels cannot be kept two joists apart on this floor; they are %d apart.", c.step)
	}
	if p.length > p.face+p.gap && c.cuts == len(c.parts) && !l.modular(p) {
		spacing := l.job.Frame.Joists.Spacing
		bays := int((p.face + p.gap + spacing - 1) / spacing)
		at, better := l.say(spacing), l.sayDown((p.face+p.gap).Part(1, bays))
		if at != better { // else the frame ends just beyond a whole panel, and a shorter one is advised
			l.advise("frame.joists.spacing", "No panel can be laid whole: at %s its end misses the joist. A spacing of %s brings the ends of whole panels onto joists.", at, better)
		}
	}
}

// modular says whether a whole panel laid from the frame end ends on a joist.
func (l *layout) modular(p *floor) bool {
	for i := 1; i < len(p.near)-1; i++ {
		if to, _ := p.end(0, i); to == p.face {
			return true
		}
	}
	return false
}
