package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// SheetCuts are sheets with the parts that are cut from them. A long list goes on
// several drawings: see [SheetCuts.Split].
type SheetCuts struct {
	Name          string         // of the sheet: "plywood"; stands in the name of the drawing
	Part          int            // counts the drawings of one kind of sheet, from 1
	Length, Width measure.Length // of a sheet
	Sheets        []CutSheet
}

// CutSheet is one sheet, or several that are cut alike.
type CutSheet struct {
	Name  string // "plywood no. 1 to 3"
	Parts []CutPart
}

// CutPart is a part as it lies on the sheet: its near corner from the sheet's, and
// its sides along the sheet and across.
type CutPart struct {
	Label         string
	X, Y          measure.Length
	Length, Width measure.Length
}

const (
	sheetColumns = 2
	sheetWide    = (pageWidth - 6) / sheetColumns // room of one sheet, with its margin
	sheetHead    = 6.0                            // the line with its name
	sheetsMost   = 200.0                          // height of one drawing
)

// scale is the largest at which two sheets stand side by side.
func (c SheetCuts) scale() kit.Scale { return kit.Fit(c.Length, c.Width, sheetWide-4, 90) }

func (c SheetCuts) rowHeight() float64 { return sheetHead + c.scale().Long(c.Width) + 5 }

// Split returns the sheets on as many drawings as they need.
func (c SheetCuts) Split() []SheetCuts {
	most := sheetColumns * max(1, int((sheetsMost-8)/c.rowHeight()))
	var parts []SheetCuts
	for rest := c.Sheets; len(rest) > 0; {
		n := min(most, len(rest))
		part := c
		part.Part, part.Sheets = len(parts)+1, rest[:n]
		parts = append(parts, part)
		rest = rest[n:]
	}
	return parts
}

// About returns the record of the drawing.
func (c SheetCuts) About() About {
	about := About{Name: kit.ID("sheet-cuts-" + c.Name), Title: "Cuts in sheets of " + c.Name}
	if c.Part > 1 {
		about.Name += "-" + number(c.Part)
		about.Title += ", part " + number(c.Part)
	}
	about.Shows = counted(len(c.Sheets), "sheet", "sheets") + " of " + c.Name + ", each with its parts by name and size; what is left over is hatched."
	return about
}

func (c SheetCuts) sheet(style measure.Style) *kit.Sheet {
	if len(c.Sheets) == 0 || c.Length <= 0 || c.Width <= 0 {
		return blankSheet(c, "No parts to cut from sheets")
	}
	rows := (len(c.Sheets) + sheetColumns - 1) / sheetColumns
	s := newSheet(c, float64(rows)*c.rowHeight()+6)
	for i, one := range c.Sheets {
		scale := c.scale()
		scale.Origin = kit.Point{X: 2 + float64(i%sheetColumns)*(sheetWide+2), Y: float64(i/sheetColumns)*c.rowHeight() + sheetHead}
		c.drawSheet(s, one, scale, style)
	}
	scaleNote(s, c.scale().Name())
	return s
}

func (c SheetCuts) drawSheet(s *kit.Sheet, one CutSheet, scale kit.Scale, style measure.Style) {
	box := func(x, y, length, width measure.Length) kit.Box {
		return kit.Box{Left: scale.X(x), Top: scale.Y(y), Right: scale.X(x + length), Bottom: scale.Y(y + width)}
	}
	whole := box(0, 0, c.Length, c.Width)
	s.Write(kit.Text{Words: kit.Shorten(one.Name, kit.Medium, sheetWide-4, true), At: kit.Point{X: whole.Left, Y: whole.Top - 2.6}, Size: kit.Medium, Bold: true, Align: kit.Start})
	s.HatchBox(kit.Falling, 3, whole)
	for _, p := range one.Parts {
		s.Rectangle(kit.Cut, kit.White, box(p.X, p.Y, p.Length, p.Width))
	}
	s.Rectangle(kit.Outline, kit.Open, whole)
	for _, p := range one.Parts {
		writePart(s, p, box(p.X, p.Y, p.Length, p.Width), style)
	}
}

// writePart writes name and size into a part, level or else upwards, in one line
// or in two; the name alone where no more fits, and nothing into a part too small
// for it: the table names it.
func writePart(s *kit.Sheet, p CutPart, b kit.Box, style measure.Style) {
	wide, high, line := b.Right-b.Left-1.2, b.Bottom-b.Top-0.6, kit.Pitch(kit.Small)
	size := p.Length.Print(style) + " × " + p.Width.Print(style)
	long := func(words string) float64 { return kit.Width(words, kit.Small, false) }
	oneLine := p.Label + ": " + size
	text := kit.Text{At: b.Centre(), Size: kit.Small}
	for range 2 {
		switch {
		case long(oneLine) <= wide && line <= high:
			text.Words = oneLine
			s.Write(text)
			return
		case max(long(p.Label), long(size)) <= wide && 2*line <= high:
			step := kit.Point{Y: line / 2}
			if text.Turned {
				step = kit.Point{X: line / 2}
			}
			for i, words := range []string{p.Label, size} {
				half := text
				half.Words = words
				half.At = text.At.Plus(step.X*float64(2*i-1), step.Y*float64(2*i-1))
				s.Write(half)
			}
			return
		}
		wide, high, text.Turned = high, wide, true
	}
	wide, high, text.Turned = high, wide, false
	if line <= high && long("…") < wide {
		text.Words = kit.Shorten(p.Label, kit.Small, wide, false)
		s.Write(text)
	}
}
