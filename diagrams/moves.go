package diagrams

import (
	"math"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Moves shows which corner goes where, so that the measured quadrilateral
// becomes the rectangle.
type Moves struct {
	Of            string // "strings", "frame"
	LinesGoLeft   bool
	Length, Width measure.Length
	Corners       [4]CornerMove // A1, the end of A, the end of the last line, its first
}

// CornerMove is how one corner moves, in the frame's own directions.
type CornerMove struct {
	Name    string
	Along   measure.Length // along the beams; positive is away from the hook end
	Forward measure.Length // across them; positive is away from side A
	Held    bool
	Stays   bool // the move is below the tolerance and is not made
}

// About returns the record of the drawing.
func (m Moves) About() About {
	var moving []string
	for _, c := range m.Corners {
		if !c.Held && !c.Stays {
			moving = append(moving, c.Name)
		}
	}
	about := About{Name: kit.ID("moves-" + m.Of), Title: "Corner moves of the " + m.Of}
	about.Shows = "The rectangle with an arrow at each corner that moves"
	if len(moving) > 0 {
		about.Shows += ": " + listed(moving)
	}
	about.Shows += ". Each move is given as two distances along the sides, and towards which corner."
	return about
}

func (m Moves) sheet(style measure.Style) *kit.Sheet {
	if m.Length <= 0 || m.Width <= 0 {
		return blankSheet(m, "No rectangle to move yet")
	}
	c := kit.Fit(m.Length, m.Width, 70, 52)
	wide, high := max(c.Long(m.Length), 55), max(c.Long(m.Width), 30)
	const top = 21.0
	b := kit.Around(kit.Point{X: pageWidth / 2, Y: top + high/2}, wide, high)
	s := newSheet(m, top+high+27)
	s.Rectangle(kit.Thin, kit.Open, b)
	corners := Rectangles{LinesGoLeft: m.LinesGoLeft}.round(b)
	for i, at := range corners {
		m.drawCorner(s, b, i, at, style)
	}
	scaleNote(s, "arrows show the way, not the size")
	return s
}

// drawCorner draws the arrow from where the corner is to where it should be, and
// writes the move beside it.
func (m Moves) drawCorner(s *kit.Sheet, b kit.Box, i int, at kit.Point, style measure.Style) {
	move := m.Corners[i]
	tail := m.tail(i, at)
	dx, dy := outwardOf(b, at)
	x, align := at.X+5+max(0, tail.X-at.X), kit.Start
	if dx < 0 {
		x, align = at.X-5-max(0, at.X-tail.X), kit.End
	}
	y := at.Y + dy*5
	lines := m.words(i, style)
	if dy < 0 {
		y -= float64(len(lines)) * kit.Pitch(kit.Small)
	}
	s.Write(kit.Text{Words: move.Name, At: kit.Point{X: x, Y: y}, Size: kit.Medium, Bold: true, Align: align})
	s.WriteLines(kit.Text{At: kit.Point{X: x, Y: y + kit.Pitch(kit.Medium)}, Align: align}, lines)
	if tail == at {
		s.Rectangle(kit.Outline, kit.Black, kit.Around(at, 2.6, 2.6))
		return
	}
	s.Pull(kit.Outline, tail, at)
	s.Circle(kit.Thin, kit.White, tail, 1.1)
}

// tail returns where the arrow of a corner begins: the place itself when it stays.
func (m Moves) tail(i int, at kit.Point) kit.Point {
	move, up := m.Corners[i], 1.0
	if m.LinesGoLeft {
		up = -1
	}
	along, forward := float64(move.Along), up*float64(move.Forward)
	long := math.Hypot(along, forward)
	if move.Held || move.Stays || long == 0 {
		return at
	}
	return at.Plus(-along/long*12, -forward/long*12)
}

// words says the move of a corner in the frame's own directions.
func (m Moves) words(i int, style measure.Style) []string {
	move := m.Corners[i]
	switch {
	case move.Held:
		return []string{"held"}
	case move.Stays:
		return []string{"stays"}
	}
	var list []string
	beside, across := [4]int{1, 0, 3, 2}[i], [4]int{3, 2, 1, 0}[i]
	hookEnd, nearSide := i == 0 || i == 3, i < 2
	if move.Along != 0 {
		list = append(list, towards(move.Along, hookEnd, m.Corners[beside].Name, style))
	}
	if move.Forward != 0 {
		list = append(list, towards(move.Forward, nearSide, m.Corners[across].Name, style))
	}
	return list
}

// towards says a distance towards or away from the other corner of a side.
func towards(move measure.Length, atStart bool, other string, style measure.Style) string {
	way := " towards "
	if (move > 0) != atStart {
		way = " away from "
	}
	return move.Abs().Print(style) + way + other
}
