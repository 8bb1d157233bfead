package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Racking shows how a rectangle that is out of square is put right. Of beams
// the line far from A slides along itself. Strings cannot be squared so, since a
// string that slides along itself crosses the others where it did: there both end
// strings move on the far boards, the same way. Before anything is measured both
// cases are drawn, each under its condition, so that no arrow stands alone.
type Racking struct {
	limit
	Of            string // "strings" or "beams"
	Corners       [4]string
	FarLine       string // the name of the last beam line
	LinesGoLeft   bool
	Length, Width measure.Length
	First, Second measure.Length // diagonals as measured: A1 to the far end of the last line, and the other
	Slide         measure.Length // how far the far corners go, without sign; towards the first corner of the last line when First is longer
	FarBoard      measure.Length // of strings: how far each end string goes on its far board
	Measured      bool           // otherwise both cases are shown, with blanks
}

// About returns the record of the drawing.
func (r Racking) About() About {
	about := About{Name: kit.ID("racking-" + r.Of), Title: "Out of square: what moves, and which way"}
	switch {
	case r.Measured:
		about.Shows = "The rectangle as it was measured, leaning, and dashed as it should be. "
	default:
		about.Shows = "Two cases, each under its condition: on the left the diagonal from " + r.Corners[0] + " is the longer, on the right the one from " + r.Corners[1] + ". The leaning rectangle is drawn in full, the square one dashed. "
	}
	if r.ofStrings() {
		about.Shows += "On the far boards both end strings move the same way, until both diagonals are equal; the other two strings stay."
	} else {
		about.Shows += "The far line slides along itself, back from the far end of the longer diagonal, until both diagonals are equal."
	}
	return about
}

func (r Racking) ofStrings() bool { return r.Of == "strings" }

// Sizes of the drawing, in millimetres.
const (
	rackingLean  = 8.0
	rackingOver  = 8.0  // from the far string to the far boards
	rackingHead  = 19.0 // beyond the far side: condition, arrow and corner names
	stringsHead  = 25.0 // likewise of strings, with the boards
	rackingBelow = 9.5  // under it: corner names and what stays
)

func (r Racking) sheet(style measure.Style) *kit.Sheet {
	if r.Length <= 0 || r.Width <= 0 {
		return blankSheet(r, "No rectangle to square yet")
	}
	across, least, head := pageWidth/2-2*rackingLean-24, 44.0, rackingHead
	if r.Measured {
		across, least = 92, 52 // two diagonals in feet and sixteenths stand side by side
	}
	if r.ofStrings() {
		head = stringsHead
	}
	around := head + rackingBelow + 4
	c := kit.Fit(r.Length, r.Width, across, r.room(46, around, 22))
	wide, high := max(c.Long(r.Length), least), max(c.Long(r.Width), 22)
	s := newSheet(r, around+high)
	middle := head + high/2
	if !r.LinesGoLeft { // the far side is below, with all that stands beyond it
		middle = rackingBelow + high/2
	}
	if r.Measured {
		r.drawCase(s, kit.Around(kit.Point{X: pageWidth / 2, Y: middle}, wide, high), r.First > r.Second, style)
	} else {
		r.drawCase(s, kit.Around(kit.Point{X: pageWidth * 0.25, Y: middle}, wide, high), true, style)
		r.drawCase(s, kit.Around(kit.Point{X: pageWidth * 0.75, Y: middle}, wide, high), false, style)
	}
	scaleNote(s, "the lean is drawn much larger than it is")
	return s
}

// drawCase draws the rectangle b with its first or its second diagonal the longer.
func (r Racking) drawCase(s *kit.Sheet, b kit.Box, firstLonger bool, style measure.Style) {
	target := Rectangles{LinesGoLeft: r.LinesGoLeft}.round(b)
	shift := rackingLean
	switch {
	case r.Measured && r.First == r.Second:
		shift = 0
	case !firstLonger:
		shift = -rackingLean
	}
	racked := target
	racked[2].X, racked[3].X = racked[2].X+shift, racked[3].X+shift
	s.Polygon(kit.Hidden, kit.Open, target[:]...)
	if r.ofStrings() {
		r.drawStrings(s, racked, target)
	} else {
		s.Polygon(kit.Thin, kit.Open, racked[:]...)
		s.Lines(kit.Bold, kit.Segment{From: racked[0], To: racked[1]}, kit.Segment{From: racked[3], To: racked[2]})
	}
	long, short := kit.Segment{From: racked[0], To: racked[2]}, kit.Segment{From: racked[1], To: racked[3]}
	if !firstLonger {
		long, short = short, long
	}
	s.Line(kit.Cut, long.From, long.To)
	s.Line(kit.Dotted, short.From, short.To)
	r.nameCorners(s, b, racked)
	if r.Measured {
		r.nameDiagonals(s, racked, style)
	}
	r.sayWhatMoves(s, b, firstLonger, shift != 0, style)
}

// drawStrings draws the strings past their crossings to the boards, and the far
// boards with the way that both end strings go on them.
func (r Racking) drawStrings(s *kit.Sheet, racked, target [4]kit.Point) {
	far := racked[3].Y - r.out()*rackingOver
	slope := (racked[3].X - racked[0].X) / (racked[3].Y - racked[0].Y)
	s.Lines(kit.Thin, kit.Segment{From: racked[0].Plus(-4, 0), To: racked[1].Plus(4, 0)}, kit.Segment{From: racked[3].Plus(-4, 0), To: racked[2].Plus(4, 0)})
	for i, foot := range []int{0, 1} {
		head := []int{3, 2}[i]
		tip := kit.Point{X: racked[head].X + slope*(far-racked[head].Y), Y: far}
		s.Line(kit.Thin, racked[foot].Plus(-slope*4*-r.out(), 4*r.out()), tip)
		s.Line(kit.Bold, kit.Point{X: tip.X - 7, Y: far}, kit.Point{X: tip.X + 7, Y: far})
		if way := target[head].X - racked[head].X; way != 0 {
			sign := 1.0
			if way < 0 {
				sign = -1
			}
			from := kit.Point{X: tip.X, Y: far - r.out()*3}
			s.Pull(kit.Outline, from, from.Plus(sign*11, 0))
		}
	}
}

// out is the way, down the sheet, from the far side to side A: 1 when A is below.
func (r Racking) out() float64 {
	if r.LinesGoLeft {
		return 1
	}
	return -1
}

func (r Racking) nameCorners(s *kit.Sheet, b kit.Box, racked [4]kit.Point) {
	for i, at := range racked {
		dx, dy := outwardOf(b, at)
		s.Circle(kit.Thin, kit.Black, at, 0.9)
		name := kit.Text{Words: r.Corners[i], At: at.Plus(dx*5.4, dy*3.6), Size: kit.Medium, Bold: true}
		if r.ofStrings() {
			name.At = at.Plus(dx*7.4, -dy*3)
		}
		s.Write(name)
	}
}

// nameDiagonals writes the measured diagonals, each on its own line.
func (r Racking) nameDiagonals(s *kit.Sheet, racked [4]kit.Point, style measure.Style) {
	s.Write(kit.Text{Words: r.First.Print(style), At: along(racked[0], racked[2], 0.27), Bold: r.First > r.Second})
	s.Write(kit.Text{Words: r.Second.Print(style), At: along(racked[1], racked[3], 0.27), Bold: r.Second > r.First})
}

// sayWhatMoves writes the condition and the move beyond the far side, and what
// stays beside side A.
func (r Racking) sayWhatMoves(s *kit.Sheet, b kit.Box, firstLonger, moves bool, style measure.Style) {
	long, towards := r.Corners[0]+"–"+r.Corners[2], r.Corners[3]
	if !firstLonger {
		long, towards = r.Corners[1]+"–"+r.Corners[3], r.Corners[2]
	}
	far, near := b.Top, b.Bottom
	if !r.LinesGoLeft {
		far, near = near, far
	}
	beyond := far - r.out()*8.5
	if r.ofStrings() {
		beyond = far - r.out()*(rackingOver+7.5)
	}
	second := beyond - r.out()*kit.Pitch(kit.Medium)
	if !r.LinesGoLeft { // read downwards: the condition first
		beyond, second = second, beyond
	}
	move := "line " + r.FarLine
	if r.ofStrings() {
		move = "both end strings"
	}
	if r.Measured {
		size := r.Slide
		if r.ofStrings() {
			size = r.FarBoard
		}
		move += " " + size.Print(style)
	}
	move += " towards " + towards
	condition := long + " longer:"
	if !moves {
		condition, move = "square:", "both diagonals are equal"
	}
	centre := b.Centre().X
	s.Write(kit.Text{Words: condition, At: kit.Point{X: centre, Y: second}, Size: kit.Medium, Bold: true})
	s.Write(kit.Text{Words: move, At: kit.Point{X: centre, Y: beyond}, Size: kit.Medium, Bold: true})
	if !r.ofStrings() && moves {
		way := 1.0
		if firstLonger {
			way = -1
		}
		y := far - r.out()*3.6
		s.Pull(kit.Outline, kit.Point{X: centre - way*7, Y: y}, kit.Point{X: centre + way*7, Y: y})
	}
	s.Write(kit.Text{Words: r.Corners[0] + "–" + r.Corners[1] + " stays", At: kit.Point{X: centre, Y: near + r.out()*4.4}})
}
