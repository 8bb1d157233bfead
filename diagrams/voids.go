package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Void is an opening in the floor, by its corner nearest the origin.
type Void struct {
	Name          string
	X, Y          measure.Length
	Length, Width measure.Length // along the beams and across
}

// longestVoidName keeps a long name from running over half the floor,
// millimetres.
const longestVoidName = 30

// drawVoids draws openings as technical drawing shows a void: outlined, and
// crossed from corner to corner.
func (v gridView) drawVoids(s *kit.Sheet, voids []Void) {
	for _, o := range voids {
		b := v.voidBox(o)
		s.Rectangle(kit.Outline, kit.White, b)
		s.Lines(kit.Thin,
			kit.Segment{From: kit.Point{X: b.Left, Y: b.Top}, To: kit.Point{X: b.Right, Y: b.Bottom}},
			kit.Segment{From: kit.Point{X: b.Left, Y: b.Bottom}, To: kit.Point{X: b.Right, Y: b.Top}})
	}
}

func (v gridView) voidBox(o Void) kit.Box { return v.box(o.X, o.Y, o.X+o.Length, o.Y+o.Width) }

// nameVoids writes name and size of each opening in it or beside it, the name
// alone where both find no room, and nothing where that finds none: the table of
// openings has them all.
func (v gridView) nameVoids(s *kit.Sheet, voids []Void, style measure.Style) {
	for _, o := range voids {
		b := v.voidBox(o)
		name := kit.Shorten(o.Name, kit.Small, longestVoidName, true)
		for _, words := range []string{name + " " + o.Length.Print(style) + " × " + o.Width.Print(style), name} {
			if s.WriteFirst(besideOrIn(b, words)...) {
				break
			}
		}
	}
}

// besideOrIn returns where words about a box may stand: in it, then on its four
// sides.
func besideOrIn(b kit.Box, words string) []kit.Text {
	at, line := b.Centre(), kit.Pitch(kit.Small)/2+0.8
	long := kit.Width(words, kit.Small, true)
	var list []kit.Text
	add := func(x, y float64, align kit.Align) {
		list = append(list, kit.Text{Words: words, At: kit.Point{X: x, Y: y}, Align: align, Bold: true})
	}
	if long+1 <= b.Right-b.Left && 2*line <= b.Bottom-b.Top {
		add(at.X, at.Y, kit.Middle)
	}
	add(b.Right+1.2, at.Y, kit.Start)
	add(b.Left-1.2, at.Y, kit.End)
	add(at.X, b.Top-line, kit.Middle)
	add(at.X, b.Bottom+line, kit.Middle)
	return list
}

// besideVoids returns the largest part of a box on one side of the openings in
// it, for words about the box.
func (v gridView) besideVoids(b kit.Box, voids []Void) kit.Box {
	for _, o := range voids {
		void := v.voidBox(o)
		if !void.Meets(b) {
			continue
		}
		left, right, above, below := b, b, b, b
		left.Right, right.Left = min(b.Right, void.Left), max(b.Left, void.Right)
		above.Bottom, below.Top = min(b.Bottom, void.Top), max(b.Top, void.Bottom)
		best := left
		for _, part := range []kit.Box{right, above, below} {
			if sizeOf(part) > sizeOf(best) {
				best = part
			}
		}
		b = best
	}
	return b
}

func sizeOf(b kit.Box) float64 { return (b.Right - b.Left) * (b.Bottom - b.Top) }

// withVoids says in words how many openings a drawing shows.
func withVoids(voids []Void) string {
	if len(voids) == 0 {
		return ""
	}
	return " Outlined and crossed: " + counted(len(voids), "opening", "openings") + " in the floor, by name."
}
