package diagrams

import (
	"math"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Grid is the platform in plan, as far as most drawings need it: x runs along
// the beams from the corner that the tape hooks on, y across them from side A.
type Grid struct {
	limit
	Length, Width measure.Length // outside faces of the frame
	LinesGoLeft   bool           // facing along line A from A1, line B is on the left hand: y is drawn upwards
	Lines         []GridLine
	Piers         []GridPier
}

// GridLine is a beam line.
type GridLine struct {
	Name       string
	Y          measure.Length // centre
	Start, End measure.Length // x of the ends of the beam
}

// GridPier is a pier.
type GridPier struct {
	Name string
	Line int // index into the lines
	X, Y measure.Length
}

// room is what a plan keeps free round the frame, in millimetres.
type room struct{ left, right, near, far float64 }

// gridView is a grid laid on a sheet.
type gridView struct {
	Grid
	kit.Scale
	frame  kit.Box
	out    float64 // -1 when side A is above, 1 when it is below
	height float64 // of the sheet
}

// lay fits the grid into the width of the page and the height given, in the
// middle of what the room leaves.
func (g Grid) lay(r room, most float64) gridView {
	across := pageWidth - r.left - r.right
	c := kit.Fit(g.Length, g.Width, across, g.room(most-r.near-r.far, r.near+r.far, leastPlan))
	c.Origin = kit.Point{X: r.left + (across-c.Long(g.Length))/2, Y: r.near}
	v := gridView{Grid: g, out: -1}
	if g.LinesGoLeft {
		c.Origin.Y, c.Upward, v.out = r.far+c.Long(g.Width), true, 1
	}
	v.Scale = c
	v.height = r.near + r.far + c.Long(g.Width)
	v.frame = v.box(0, 0, g.Length, g.Width)
	return v
}

// leastPlan is the least height of a plan in which piers can still be told apart.
const leastPlan = 36.0

// tall returns how high a plan may be: more when the platform is wider than long.
func (g Grid) tall() float64 {
	if g.Width > g.Length {
		return 165
	}
	return 125
}

// box returns the rectangle between two places of the grid.
func (v gridView) box(x1, y1, x2, y2 measure.Length) kit.Box {
	a, b := v.At(x1, y1), v.At(x2, y2)
	return kit.Box{Left: min(a.X, b.X), Top: min(a.Y, b.Y), Right: max(a.X, b.X), Bottom: max(a.Y, b.Y)}
}

// nearY and farY are the heights on the sheet of side A and of the side opposite.
func (v gridView) nearY() float64 { return v.Y(0) }
func (v gridView) farY() float64  { return v.Y(v.Width) }

// onLine returns the piers of a line in order.
func (g Grid) onLine(line int) []GridPier {
	var list []GridPier
	for _, p := range g.Piers {
		if p.Line == line {
			list = append(list, p)
		}
	}
	return list
}

// corners returns the four outer piers round the grid: A1, the last of line A,
// the last and the first of the last line.
func (g Grid) corners() [4]GridPier {
	first, last := g.onLine(0), g.onLine(len(g.Lines)-1)
	return [4]GridPier{first[0], first[len(first)-1], last[len(last)-1], last[0]}
}

// drawn says whether there is enough of a grid to draw.
func (g Grid) drawn() bool {
	return g.Length > 0 && g.Width > 0 && len(g.Lines) > 1 && len(g.onLine(0)) > 1 && len(g.onLine(len(g.Lines)-1)) > 1
}

// bubble draws the ring with the name of a grid line.
func bubble(s *kit.Sheet, at kit.Point, name string) {
	s.Circle(kit.Thin, kit.White, at, bubbleRadius)
	s.Write(kit.Text{Words: name, At: at, Bold: true, Bare: true})
}

const bubbleRadius = 3.4

// The overall dimensions stand next to the frame, the bubbles beyond them.
const (
	overallAt   = 11.5
	bubbleAt    = overallAt + 10 + bubbleRadius
	overallRoom = bubbleAt + bubbleRadius + 1
)

// bubbles names the beam lines at the far end and the piers along the side away
// from A, their rings so far from the frame, with centre lines up to them.
func (v gridView) bubbles(s *kit.Sheet, away float64) {
	x := v.frame.Right + away
	for _, line := range v.Lines {
		y := v.Y(line.Y)
		s.Across(kit.Centre, v.X(line.Start)-3, x-bubbleRadius, y)
	}
	y := v.farY() - v.out*away
	for _, p := range v.onLine(len(v.Lines) - 1) {
		s.Upright(kit.Centre, v.X(p.X), v.farY()-v.out*1.5, y+v.out*bubbleRadius)
	}
	v.names(s, away)
}

// names draws the rings with the names of the lines and the numbers of the
// piers; where they would touch, every second, third … stays away.
func (v gridView) names(s *kit.Sheet, away float64) {
	last := v.onLine(len(v.Lines) - 1)
	step := ringStep(v.Long(v.Lines[1].Y - v.Lines[0].Y))
	for i := 0; i < len(v.Lines); i += step {
		bubble(s, kit.Point{X: v.frame.Right + away, Y: v.Y(v.Lines[i].Y)}, v.Lines[i].Name)
	}
	step = ringStep(v.Long(last[1].X - last[0].X))
	for i := 0; i < len(last); i += step {
		bubble(s, kit.Point{X: v.X(last[i].X), Y: v.farY() - v.out*away}, number(i+1))
	}
}

// ringStep returns which rings are drawn at a pitch: all, every second …
func ringStep(pitch float64) int {
	if pitch <= 0 {
		return 1
	}
	return int(math.Ceil((2*bubbleRadius + 0.4) / pitch))
}

// blankSheet says that there is nothing to draw yet.
func blankSheet(d Drawing, words string) *kit.Sheet {
	s := newSheet(d, 14)
	s.Rectangle(kit.Thin, kit.Open, s.Size().Grown(-0.5))
	s.Write(kit.Text{Words: kit.Shorten(words, kit.Small, pageWidth-6, false), At: s.Size().Centre()})
	return s
}
