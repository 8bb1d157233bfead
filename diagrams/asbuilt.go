package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// AsBuilt is the finished floor: how far it is over or under the level at each
// place that was read, or blanks to write on.
type AsBuilt struct {
	Grid
	Spots  []FinishedSpot
	Accept measure.Length // how far off is still accepted
}

// FinishedSpot is a place on the floor.
type FinishedSpot struct {
	X, Y measure.Length
	Read bool
	Off  measure.Length // over the level when positive
}

// About returns the record of the drawing.
func (a AsBuilt) About() About {
	read, worst := 0, measure.Length(0)
	for _, spot := range a.Spots {
		if spot.Read {
			read++
			worst = max(worst, spot.Off.Abs())
		}
	}
	about := About{Name: "as-built", Title: "How level the floor came out"}
	about.Shows = "The floor from above with " + counted(read, "place that was read", "places that were read") +
		": how far each is over or under the level; triangles point up where it is high and down where it is low."
	if read == 0 {
		about.Shows = "The floor from above with a blank at each place to be read."
	}
	return about
}

func (a AsBuilt) sheet(style measure.Style) *kit.Sheet {
	if !a.drawn() {
		return blankSheet(a, "No floor to draw yet")
	}
	v := a.lay(room{left: 12, right: bubbleAt - 8, near: 12, far: bubbleAt - 8}, a.tall())
	s := newSheet(a, v.height+6)
	s.Rectangle(kit.Outline, kit.Open, v.frame)
	for _, line := range a.Lines {
		s.Across(kit.Dotted, v.frame.Left, v.frame.Right, v.Y(line.Y))
	}
	v.names(s, 8+bubbleRadius)
	for _, spot := range a.Spots {
		a.drawSpot(s, v.At(spot.X, spot.Y), spot, style)
	}
	scaleNote(s, v.Name()+"; black = more than "+a.Accept.Print(style)+" over or under")
	return s
}

// drawSpot draws the triangle and the deviation below it.
func (a AsBuilt) drawSpot(s *kit.Sheet, at kit.Point, spot FinishedSpot, style measure.Style) {
	if !spot.Read {
		s.Circle(kit.Thin, kit.White, at, 1)
		s.Across(kit.Thin, at.X-5.5, at.X+5.5, at.Y+6.5)
		return
	}
	fill := kit.White
	if spot.Off.Abs() > a.Accept {
		fill = kit.Black
	}
	words := spot.Off.Print(style)
	switch {
	case spot.Off > 0:
		words = "+" + words
		s.Polygon(kit.Cut, fill, at.Plus(-2, 1.2), at.Plus(0, -2.2), at.Plus(2, 1.2))
	case spot.Off < 0:
		s.Polygon(kit.Cut, fill, at.Plus(-2, -2), at.Plus(0, 1.4), at.Plus(2, -2))
	default:
		s.Circle(kit.Cut, kit.White, at, 1.4)
	}
	t := kit.Text{Words: words, Bold: fill == kit.Black}
	s.WriteFirst(moved(t, at.Plus(0, 4.4)), moved(t, at.Plus(0, -5)), moved(t, at.Plus(0, 8.6)), moved(t, at.Plus(0, -9.2)))
}
