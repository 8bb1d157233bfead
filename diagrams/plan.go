package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Plan is the platform from above: frame, beam lines, piers with their names,
// joists, and running dimensions from the corner that the tape hooks on.
type Plan struct {
	Grid
	Block  measure.Length // side of the block's base
	Post   measure.Length // side of the post
	Beam   measure.Length // width of a beam, all plies
	Joist  measure.Length // thickness of a joist
	Joists []measure.Length
	Door   *Door  // none when nil
	Corner string // where the hook corner is: "nearest the gate"
}

// Door is where one goes in.
type Door struct {
	Side        Side
	From, Width measure.Length // along its side, from the end nearer to the hook corner
}

// Side is a side of the frame.
type Side int

// The sides: along the beams next to line A and opposite, across them at the
// hook end and at the far end.
const (
	SideNear Side = iota + 1
	SideFar
	EndHook
	EndFar
)

// About returns the record of the drawing.
func (p Plan) About() About {
	return About{
		Name:  "plan",
		Title: "Plan of frame, beam lines and piers",
		Shows: "The platform from above. Beam lines " + listed(lineNames(p.Grid)) + ", " + counted(len(p.Piers), "pier", "piers") +
			", joists across the beams. Along side A and along the hook end, running dimensions from the corner where the tape hooks on to the centre of every pier.",
	}
}

func lineNames(g Grid) []string {
	var names []string
	for _, l := range g.Lines {
		names = append(names, l.Name)
	}
	return names
}

func (p Plan) sheet(style measure.Style) *kit.Sheet {
	if !p.drawn() {
		return blankSheet(p, "No frame to draw yet")
	}
	free := room{left: max(34, kit.UprightRoom(p.lineWords(style)...)), right: overallRoom, near: 38, far: overallRoom}
	rings, reach := bubbleAt, hookReach
	if p.most > 0 { // no overall sizes, the rings close to the frame
		rings, reach = 8, 11
		free = room{left: free.left, right: rings + bubbleRadius + 1, near: reach + 5.4 + kit.Pitch(kit.Small)*float64(len(p.hookWords())-1), far: rings + bubbleRadius + 1}
	}
	v := p.lay(free, 165)
	switch along := kit.RunningRoom(p.alongMarks(v, style), 0, pageWidth); {
	case p.most > 0:
		free.near = max(free.near, kit.FirstDimension+along)
		v = p.lay(free, 165)
	case along < 10:
		free.near = 30
		v = p.lay(free, 165)
	}
	s := newSheet(p, v.height)
	p.drawJoists(s, v)
	s.Rectangle(kit.Outline, kit.Open, v.frame)
	p.drawBeams(s, v)
	v.bubbles(s, rings)
	p.drawDoor(s, v)
	p.drawRunning(s, v, style)
	if p.most == 0 {
		p.drawOverall(s, v, style)
	}
	p.drawPiers(s, v)
	p.drawHook(s, v, reach)
	p.nameScale(s, v)
	return s
}

// drawJoists draws every joist lightly, by its two faces.
func (p Plan) drawJoists(s *kit.Sheet, v gridView) {
	var faces []kit.Segment
	for _, centre := range p.Joists {
		for _, x := range []measure.Length{centre - p.Joist/2, centre + p.Joist/2} {
			if x > 0 && x < p.Length {
				faces = append(faces, kit.Segment{From: v.At(x, 0), To: v.At(x, p.Width)})
			}
		}
	}
	s.Lines(kit.Hatching, faces...)
}

func (p Plan) drawBeams(s *kit.Sheet, v gridView) {
	for _, line := range p.Lines {
		s.Rectangle(kit.Thin, kit.White, v.box(line.Start, line.Y-p.Beam/2, line.End, line.Y+p.Beam/2))
	}
}

func (p Plan) drawPiers(s *kit.Sheet, v gridView) {
	half := max(v.Long(p.Block)/2, 1.5)
	for _, pier := range p.Piers {
		at := v.At(pier.X, pier.Y)
		s.Rectangle(kit.Outline, kit.White, kit.Around(at, 2*half, 2*half))
		s.Rectangle(kit.Pen{}, kit.Black, kit.Around(at, max(v.Long(p.Post), 1.2), max(v.Long(p.Post), 1.2)))
	}
	for _, pier := range p.Piers {
		at := v.At(pier.X, pier.Y)
		wide := kit.Width(pier.Name, kit.Medium, true)/2 + half + 0.8
		high := kit.Pitch(kit.Medium)/2 + half + 0.4
		name := kit.Text{Words: pier.Name, Size: kit.Medium, Bold: true}
		inward := -v.out
		if pier.Line == len(p.Lines)-1 {
			inward = v.out
		}
		s.WriteFirst(
			moved(name, at.Plus(0, inward*high)), moved(name, at.Plus(0, -inward*high)),
			moved(name, at.Plus(wide, inward*2.6)), moved(name, at.Plus(-wide, inward*2.6)),
			moved(name, at.Plus(wide, 0)), moved(name, at.Plus(-wide, 0)))
	}
}

// moved returns the text at another place.
func moved(t kit.Text, to kit.Point) kit.Text {
	t.At = to
	return t
}

// drawRunning draws the running dimensions of the piers of line A and of the beam lines.
func (p Plan) drawRunning(s *kit.Sheet, v gridView, style measure.Style) {
	var across []kit.Mark
	words := p.lineWords(style)
	for i, line := range p.Lines {
		across = append(across, kit.Mark{At: v.Y(line.Y), Edge: v.frame.Left, Words: words[i]})
	}
	s.RunningAcross(v.X(0), p.alongMarks(v, style), v.nearY()+v.out*kit.FirstDimension, v.LinesGoLeft)
	s.RunningUpright(v.Y(0), across, v.frame.Left-kit.FirstDimension, false)
}

// lineWords are the running figures of the beam lines.
func (p Plan) lineWords(style measure.Style) []string {
	var words []string
	for _, line := range p.Lines {
		words = append(words, line.Y.Print(style))
	}
	return words
}

// alongMarks are the running marks of the piers of line A.
func (p Plan) alongMarks(v gridView, style measure.Style) []kit.Mark {
	var list []kit.Mark
	for _, pier := range p.onLine(0) {
		list = append(list, kit.Mark{At: v.X(pier.X), Edge: v.nearY(), Words: pier.X.Print(style)})
	}
	return list
}

func (p Plan) drawOverall(s *kit.Sheet, v gridView, style measure.Style) {
	y := v.farY() - v.out*overallAt
	s.DimensionAcross(v.frame.Left, v.frame.Right, y, v.farY(), v.farY(), p.Length.Print(style))
	x := v.frame.Right + overallAt
	s.DimensionUpright(v.frame.Top, v.frame.Bottom, x, v.frame.Right, v.frame.Right, p.Width.Print(style))
}

// hookReach is how far from the frame the words about the hook stand.
const hookReach = 12.0

// nameScale says the scale in the corner that is free.
func (p Plan) nameScale(s *kit.Sheet, v gridView) {
	size := s.Size()
	name := kit.Text{Words: v.Name(), Align: kit.End}
	foot, head := kit.Point{X: size.Right - 1, Y: size.Bottom - 2.6}, kit.Point{X: size.Right - 1, Y: 2.6}
	s.WriteFirst(moved(name, foot), moved(name, head))
}

// hookWords say where the tape hooks on.
func (p Plan) hookWords() []string {
	return append([]string{"0 hook here"}, kit.WrapTo(p.Corner, kit.Small, 31, 3)...)
}

// drawHook marks the corner where the tape hooks on.
func (p Plan) drawHook(s *kit.Sheet, v gridView, reach float64) {
	at := v.At(0, 0)
	s.Circle(kit.Outline, kit.Black, at, 1)
	foot := at.Plus(-15, v.out*reach)
	s.Pull(kit.Thin, foot, at.Plus(-1.2, v.out*1.3))
	lines := p.hookWords()
	start := kit.Point{X: 1.5, Y: foot.Y + 2.8}
	if v.out < 0 {
		start.Y = foot.Y - 2.8 - float64(len(lines)-1)*kit.Pitch(kit.Small)
	}
	var texts []kit.Text
	free := true
	for i, line := range lines {
		t := kit.Text{Words: line, At: start.Plus(0, float64(i)*kit.Pitch(kit.Small)), Align: kit.Start, Bold: i == 0}
		texts, free = append(texts, t), free && s.Free(t.Box())
	}
	if p.most > 0 && !free { // the sheet Set out and square tells the place too
		texts = texts[:1]
		texts[0].At.Y = foot.Y + v.out*2.8
	}
	for _, t := range texts {
		s.Write(t)
	}
}

// drawDoor draws the opening as a bar outside the frame and its blocks, and an
// arrow that goes in.
func (p Plan) drawDoor(s *kit.Sheet, v gridView) {
	if p.Door == nil {
		return
	}
	from, to := v.doorway(*p.Door)
	middle := kit.Point{X: (from.X + to.X) / 2, Y: (from.Y + to.Y) / 2}
	out := v.outward(p.Door.Side)
	clear := max(1.4, v.Long(p.Block/2-p.inset(p.Door.Side))+1.4)
	s.Line(kit.Bold, from.Plus(out.X*clear, out.Y*clear), to.Plus(out.X*clear, out.Y*clear))
	s.Pull(kit.Thin, middle.Plus(out.X*(clear+5.8), out.Y*(clear+5.8)), middle.Plus(out.X*(clear+0.8), out.Y*(clear+0.8)))
	word := kit.Text{Words: "door"}
	s.WriteFirst(
		moved(word, middle.Plus(6, out.Y*(clear+3.6)+out.X*5)), moved(word, middle.Plus(-6, out.Y*(clear+3.6)+out.X*5)),
		moved(word, middle.Plus(out.X*(clear+4), 5)), moved(word, middle.Plus(out.X*(clear+4), -5)))
}

// inset returns how far the nearest piers stand in from a side.
func (p Plan) inset(side Side) measure.Length {
	first := p.onLine(0)
	switch side {
	case SideFar:
		return p.Width - p.Lines[len(p.Lines)-1].Y
	case EndHook:
		return first[0].X
	case EndFar:
		return p.Length - first[len(first)-1].X
	default:
		return p.Lines[0].Y
	}
}

// doorway returns the ends of the door on its side of the frame.
func (v gridView) doorway(d Door) (from, to kit.Point) {
	a, b := d.From, d.From+d.Width
	switch d.Side {
	case SideFar:
		return v.At(a, v.Width), v.At(b, v.Width)
	case EndHook:
		return v.At(0, a), v.At(0, b)
	case EndFar:
		return v.At(v.Length, a), v.At(v.Length, b)
	default:
		return v.At(a, 0), v.At(b, 0)
	}
}

// outward returns the direction on the sheet that leaves the frame over a side.
func (v gridView) outward(side Side) kit.Point {
	switch side {
	case SideFar:
		return kit.Point{Y: -v.out}
	case EndHook:
		return kit.Point{X: -1}
	case EndFar:
		return kit.Point{X: 1}
	default:
		return kit.Point{Y: v.out}
	}
}
