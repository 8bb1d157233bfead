package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Racking shows how a rectangle that is out of square is pushed right: the side
// far from line A slides along itself until the diagonals are equal.
type Racking struct {
	limit
	Of            string // "strings", "frame"
	Corners       [4]string
	LinesGoLeft   bool
	Length, Width measure.Length
	First, Second measure.Length // diagonals as measured: A1 to the far end of the last line, and the other
	Slide         measure.Length // how far, without sign; towards the first corner of the last line when First is longer
	Measured      bool           // otherwise the values are left blank and the rule is shown
}

// About returns the record of the drawing.
func (r Racking) About() About {
	about := About{Name: kit.ID("racking-" + r.Of), Title: "Out of square: which way to push the " + r.Of}
	about.Shows = "The rectangle as it is, leaning, and dashed as it should be. The side " + r.Corners[3] + " to " + r.Corners[2] +
		" is slid along itself, away from the longer diagonal, until both diagonals are equal."
	return about
}

// leaning says whether the first diagonal is the longer one; a blank one is shown so.
func (r Racking) leaning() bool { return !r.Measured || r.First > r.Second }

func (r Racking) sheet(style measure.Style) *kit.Sheet {
	if r.Length <= 0 || r.Width <= 0 {
		return blankSheet(r, "No rectangle to square yet")
	}
	const lean, top = 11.0, 17.0
	c := kit.Fit(r.Length, r.Width, 92, r.room(64, top+26, 30))
	wide, high := max(c.Long(r.Length), 55), max(c.Long(r.Width), 30)
	right := kit.Around(kit.Point{X: pageWidth / 2, Y: top + high/2}, wide, high)
	s := newSheet(r, top+high+26)
	target := Rectangles{LinesGoLeft: r.LinesGoLeft}.round(right)
	shift := lean
	if !r.leaning() {
		shift = -lean
	}
	if r.Measured && r.First == r.Second {
		shift = 0
	}
	racked := target
	racked[2].X, racked[3].X = racked[2].X+shift, racked[3].X+shift
	s.Polygon(kit.Hidden, kit.Open, target[:]...)
	s.Polygon(kit.Outline, kit.Open, racked[:]...)
	s.Lines(kit.Thin, kit.Segment{From: racked[0], To: racked[2]}, kit.Segment{From: racked[1], To: racked[3]})
	r.nameCorners(s, right, racked)
	r.nameDiagonals(s, racked, style)
	r.drawPush(s, right, racked, target, style)
	scaleNote(s, "the lean is drawn much larger than it is")
	return s
}

func (r Racking) nameCorners(s *kit.Sheet, b kit.Box, racked [4]kit.Point) {
	for i, at := range racked {
		dx, dy := outwardOf(b, at)
		if i > 1 {
			dx = 0
		}
		s.Circle(kit.Thin, kit.Black, at, 0.9)
		s.Write(kit.Text{Words: r.Corners[i], At: at.Plus(dx*5, dy*3.6), Size: kit.Medium, Bold: true})
	}
}

func (r Racking) nameDiagonals(s *kit.Sheet, racked [4]kit.Point, style measure.Style) {
	first, second := "________", "________"
	if r.Measured {
		first, second = r.First.Print(style), r.Second.Print(style)
	}
	s.Write(kit.Text{Words: first, At: along(racked[0], racked[2], 0.22), Bold: r.leaning()})
	s.Write(kit.Text{Words: second, At: along(racked[1], racked[3], 0.22), Bold: !r.leaning()})
}

// drawPush draws the arrows that push the far side, beyond it, and says how far.
func (r Racking) drawPush(s *kit.Sheet, b kit.Box, racked, target [4]kit.Point, style measure.Style) {
	out := -1.0
	if r.LinesGoLeft {
		out = 1
	}
	y := racked[3].Y - out*11
	words := "square: both diagonals are equal"
	if racked[3].X != target[3].X {
		words = "push this side "
		if r.Measured {
			words += r.Slide.Print(style) + " "
		}
		towards := r.Corners[3]
		if racked[3].X < target[3].X {
			towards = r.Corners[2]
		}
		words += "towards " + towards
		way := 1.0
		if target[3].X < racked[3].X {
			way = -1
		}
		half := kit.Width(words, kit.Medium, true)/2 + 2
		s.Pull(kit.Outline, kit.Point{X: b.Centre().X + way*half, Y: y}, kit.Point{X: b.Centre().X + way*(half+14), Y: y})
	}
	s.Write(kit.Text{Words: words, At: kit.Point{X: b.Centre().X, Y: y}, Size: kit.Medium, Bold: true})
	held := racked[0].Y + out*8
	s.Write(kit.Text{Words: "this side stays", At: kit.Point{X: b.Centre().X, Y: held}})
}
