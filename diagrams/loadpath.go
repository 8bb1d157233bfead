package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// LoadPath is the way of the load down to the soil at one pier, part by part.
type LoadPath struct {
	Pier  string
	Parts []PathPart // from the surface down
}

// PathPart is a part that the load goes through.
type PathPart struct {
	Name  string        // "joist"
	Adds  measure.Force // what comes on here
	Sum   measure.Force // what goes on down
	Check string        // the check that governs, in words: "bending 0.62"; "" when none
}

// About returns the record of the drawing.
func (p LoadPath) About() About {
	about := About{Name: kit.ID("load-path-" + p.Pier), Title: "Load path at pier " + p.Pier}
	var names []string
	for _, part := range p.Parts {
		names = append(names, part.Name)
	}
	about.Shows = "The load on its way down at pier " + p.Pier + " through " + listed(names) + ": what each adds, the running sum and the check that governs."
	return about
}

func (p LoadPath) sheet(style measure.Style) *kit.Sheet {
	if len(p.Parts) == 0 {
		return blankSheet(p, "No load path to draw yet")
	}
	const (
		top    = 10.0
		middle = 36.0
		adds   = 88.0 // right end of the column
		sum    = 120.0
		check  = 127.0
	)
	high, gap := 8.5, 6.0
	if len(p.Parts) > usualPath { // closer, so that the whole way stays on one side of paper
		high, gap = 7.5, 3.4
	}
	s := newSheet(p, top+float64(len(p.Parts))*(high+gap)+3)
	for i, head := range []string{"adds", "goes on down"} {
		s.Write(kit.Text{Words: head, At: kit.Point{X: []float64{adds, sum}[i], Y: 4}, Align: kit.End, Bold: true})
	}
	s.Write(kit.Text{Words: "governed by", At: kit.Point{X: check, Y: 4}, Align: kit.Start, Bold: true})
	for i, part := range p.Parts {
		y := top + float64(i)*(high+gap)
		half := pathHalf(i, len(p.Parts))
		b := kit.Box{Left: middle - half, Top: y, Right: middle + half, Bottom: y + high}
		s.Rectangle(kit.Outline, kit.White, b)
		words := kit.Shorten(part.Name, kit.Medium, 2*half-2, true)
		s.Write(kit.Text{Words: words, At: b.Centre(), Size: kit.Medium, Bold: true})
		s.Pull(kit.Cut, kit.Point{X: middle, Y: b.Bottom}, kit.Point{X: middle, Y: b.Bottom + gap - 0.4})
		at := b.Centre().Y
		if part.Adds != 0 {
			s.Write(kit.Text{Words: part.Adds.Print(style), At: kit.Point{X: adds, Y: at}, Align: kit.End})
		}
		s.Write(kit.Text{Words: part.Sum.Print(style), At: kit.Point{X: sum, Y: at}, Align: kit.End, Bold: true})
		s.WriteLines(kit.Text{At: kit.Point{X: check, Y: at}, Align: kit.Start}, kit.WrapTo(part.Check, kit.Small, pageWidth-check-1, 2))
		s.Across(kit.Dotted, b.Right+2, pageWidth-1, b.Bottom+gap/2)
	}
	return s
}

// usualPath is how many parts a load runs through where no others come on.
const usualPath = 8

// pathHalf returns half the width of a part's box: wide at the surface, narrow
// at the post, wide in the soil, as the load gathers and spreads.
func pathHalf(i, n int) float64 {
	if n < 2 {
		return 20
	}
	away := 2*float64(i)/float64(n-1) - 1
	return 14 + 14*away*away
}
