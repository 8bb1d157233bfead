// Package diagrams draws the figures of the binder: plans, sections, strips and
// curves, in black on white, to be read at arm's length.
//
// Every drawing is a value of a narrow type of its own, in a file of its own,
// that holds only what is drawn: lengths are exact, names and words are ready to
// print. [Draw] turns it into an svg element whose size is in millimetres and
// fits the safe box of 171 by 251 mm, so it prints to the scale it states.
// The drawings work out nothing that a builder could cut by; where a value is
// not known yet they show a blank.
package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Drawing is anything that can be drawn.
type Drawing interface {
	// About returns the drawing's record.
	About() About
	sheet(style measure.Style) *kit.Sheet
}

// About is the record of a drawing.
type About struct {
	Name  string // stands in ids, and once on a page: "section-A"
	Title string // for the caption
	Shows string // what it shows, in words, for those who cannot see it
}

// Draw returns the drawing as one svg element, lengths printed in the style. It
// reports a value that cannot be drawn, such as one that is not a number.
func Draw(d Drawing, style measure.Style) ([]byte, error) { return d.sheet(style).SVG() }

// pageWidth is the width of every drawing: that of the safe box of a sheet that
// prints whole on both usual papers.
const pageWidth = 171.0

// newSheet lays out the sheet of a drawing.
func newSheet(d Drawing, height float64) *kit.Sheet {
	about := d.About()
	return kit.New(about.Name, about.Title, about.Shows, pageWidth, height)
}

// scaleNote says the scale at the foot of the sheet.
func scaleNote(s *kit.Sheet, words string) {
	size := s.Size()
	s.Write(kit.Text{Words: words, At: kit.Point{X: size.Right - 1, Y: size.Bottom - 2.6}, Align: kit.End})
}
