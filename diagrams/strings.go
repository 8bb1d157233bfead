package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Strings are the string lines along the outside faces of the frame and the
// batter boards they hang on, clear of the digging.
type Strings struct {
	Grid
	SetBack measure.Length // of the batter boards from the frame
	Board   measure.Length // length of a batter board
	Hole    measure.Length // width of a hole at a corner pier
}

// About returns the record of the drawing.
func (t Strings) About() About {
	return About{
		Name:  "strings",
		Title: "String lines and batter boards",
		Shows: "The frame from above, a string along each outside face, and at each corner two batter boards set back from it so that the holes can be dug. The strings cross at the corners of the frame.",
	}
}

func (t Strings) sheet(style measure.Style) *kit.Sheet {
	if !t.drawn() || t.SetBack <= 0 {
		return blankSheet(t, "No frame to set out yet")
	}
	const margin = 14.0
	all := 2 * t.SetBack
	c := kit.Fit(t.Length+all, t.Width+all, pageWidth-2*margin-6, t.room(110, 2*margin+7, 52))
	back := c.Long(t.SetBack)
	side := (pageWidth - c.Long(t.Length)) / 2
	v := t.lay(room{left: side, right: side, near: back + margin, far: back + margin}, 0)
	v.Ratio = c.Ratio
	v = t.refit(v, c, side, back+margin)
	s := newSheet(t, v.height+7)
	t.drawStrings(s, v, back)
	for i, pier := range t.corners() {
		t.drawCorner(s, v, i, pier, back)
	}
	t.drawSizes(s, v, back, style)
	scaleNote(s, c.Name()+"; thick bars = batter boards, long-short lines = strings, dashed = holes")
	return s
}

// refit lays the grid at a scale that leaves room for the batter boards too.
func (t Strings) refit(v gridView, c kit.Scale, side, near float64) gridView {
	c.Origin = kit.Point{X: side, Y: near}
	if t.LinesGoLeft {
		c.Origin.Y, c.Upward = near+c.Long(t.Width), true
	}
	v.Scale = c
	v.height = 2*near + c.Long(t.Width)
	v.frame = v.box(0, 0, t.Length, t.Width)
	return v
}

// drawStrings draws the four strings from board to board.
func (t Strings) drawStrings(s *kit.Sheet, v gridView, back float64) {
	f := v.frame
	over := back + 3
	s.Rectangle(kit.Outline, kit.Open, f)
	s.Lines(kit.Centre,
		kit.Segment{From: kit.Point{X: f.Left - over, Y: f.Top}, To: kit.Point{X: f.Right + over, Y: f.Top}},
		kit.Segment{From: kit.Point{X: f.Left - over, Y: f.Bottom}, To: kit.Point{X: f.Right + over, Y: f.Bottom}},
		kit.Segment{From: kit.Point{X: f.Left, Y: f.Top - over}, To: kit.Point{X: f.Left, Y: f.Bottom + over}},
		kit.Segment{From: kit.Point{X: f.Right, Y: f.Top - over}, To: kit.Point{X: f.Right, Y: f.Bottom + over}})
	s.Lines(kit.Thin, kit.Segment{From: kit.Point{X: f.Left, Y: f.Top}, To: kit.Point{X: f.Right, Y: f.Bottom}},
		kit.Segment{From: kit.Point{X: f.Left, Y: f.Bottom}, To: kit.Point{X: f.Right, Y: f.Top}})
}

// drawCorner draws the hole, the two batter boards with their stakes and the name.
func (t Strings) drawCorner(s *kit.Sheet, v gridView, i int, pier GridPier, back float64) {
	x, y := v.frame.Left, v.nearY()
	if i == 1 || i == 2 {
		x = v.frame.Right
	}
	if i > 1 {
		y = v.farY()
	}
	at := kit.Point{X: x, Y: y}
	dx, dy := outwardOf(v.frame, at)
	hole := v.Long(t.Hole)
	s.Rectangle(kit.Hidden, kit.Open, kit.Around(v.At(pier.X, pier.Y), hole, hole))
	half := max(v.Long(t.Board)/2, 3)
	board := func(from, to kit.Point) {
		s.Line(kit.Bold, from, to)
		s.Rectangle(kit.Pen{}, kit.Black, kit.Around(from, 2, 2))
		s.Rectangle(kit.Pen{}, kit.Black, kit.Around(to, 2, 2))
		s.Reserve(kit.Box{Left: from.X - 1, Top: from.Y - 1, Right: to.X + 1, Bottom: to.Y + 1})
	}
	board(at.Plus(dx*back, -half), at.Plus(dx*back, half))
	board(at.Plus(-half, dy*back), at.Plus(half, dy*back))
	name := kit.Text{Words: pier.Name, Size: kit.Medium, Bold: true}
	s.WriteFirst(moved(name, at.Plus(dx*back/2, dy*back/2)), moved(name, at.Plus(dx*(back+4), dy*(back+3))), moved(name, at.Plus(dx*(back+8), dy*(back+3))))
}

func (t Strings) drawSizes(s *kit.Sheet, v gridView, back float64, style measure.Style) {
	f := v.frame
	beside := kit.Text{At: kit.Point{X: f.Centre().X, Y: v.farY() - v.out*4}, Words: t.Length.Print(style)}
	full := beside
	full.Words = "string at the outside face, " + beside.Words
	s.WriteFirst(full, beside)
	width := kit.Text{Words: t.Width.Print(style), Turned: true}
	s.WriteFirst(moved(width, kit.Point{X: f.Right + 3.6, Y: f.Centre().Y}), moved(width, kit.Point{X: f.Right - 3.6, Y: f.Centre().Y}),
		moved(width, kit.Point{X: f.Right + back + 4, Y: f.Centre().Y}))
	diagonal := measure.Hypot(t.Length, t.Width).Print(style)
	lines := []string{"both diagonals " + diagonal}
	if kit.Width(lines[0], kit.Small, true) > f.Right-f.Left-10 {
		lines = []string{"both", "diagonals", diagonal}
	}
	s.WriteLines(kit.Text{At: f.Centre().Plus(0, -kit.Pitch(kit.Small)*float64(len(lines)-1)/2), Bold: true}, lines)
	y := v.nearY() + v.out*(back+6)
	s.DimensionAcross(f.Left-back, f.Left, y, v.nearY()+v.out*4, v.nearY()+v.out*(back+1), t.SetBack.Print(style))
}
