package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Boards is the floor in boards, as laid across the joists with gaps.
type Boards struct {
	limit
	Length, Width measure.Length
	LinesGoLeft   bool
	Joists        []measure.Length
	Boards        []BoardRun
	Gap           measure.Length
	Openings      []Void // in the floor
}

// BoardRun is one board, or several end to end.
type BoardRun struct {
	Y, Width measure.Length
	Ripped   bool
	Ends     []measure.Length // x of the ends of its pieces, the last end included
}

// About returns the record of the drawing.
func (b Boards) About() About {
	return About{
		Name:  "boards",
		Title: "Boards as laid",
		Shows: "The floor from above with " + counted(len(b.Boards), "run of boards", "runs of boards") +
			", numbered from side A, with where each begins; joints stand on joists, drawn as dotted lines, and a ripped board is hatched." + withVoids(b.Openings),
	}
}

func (b Boards) sheet(style measure.Style) *kit.Sheet {
	if len(b.Boards) == 0 || b.Length <= 0 {
		return blankSheet(b, "No boards to draw yet")
	}
	free := room{left: kit.UprightRoom(printed(b.begins(), style)...), right: numberRoom + voidRoom(b.Openings, style), near: 20, far: 14}
	v := Grid{limit: b.limit, Length: b.Length, Width: b.Width, LinesGoLeft: b.LinesGoLeft}.lay(free, 175)
	s := newSheet(b, v.height)
	for _, run := range b.Boards {
		b.drawRun(s, v, run)
	}
	var lines []kit.Segment
	for _, x := range b.Joists {
		lines = append(lines, kit.Segment{From: v.At(x, 0), To: v.At(x, b.Width)})
	}
	s.Lines(kit.Dotted, lines...)
	s.Rectangle(kit.Outline, kit.Open, v.frame)
	v.drawVoids(s, b.Openings)
	b.drawNumbers(s, v, style)
	s.DimensionAcross(v.frame.Left, v.frame.Right, v.nearY()+v.out*kit.FirstDimension, v.nearY(), v.nearY(), b.Length.Print(style))
	v.nameVoids(s, b.Openings, numberRoom, style)
	last := b.Boards[len(b.Boards)-1]
	foot := v.Name() + ", gap " + measure.Exact(b.Gap).Print(style) + ", last board " + last.Width.Print(style)
	scaleNote(s, foot)
	return s
}

// numberRoom is what the numbers of the boards take beside the floor.
const numberRoom = 10

// begins returns where the boards begin.
func (b Boards) begins() []measure.Length {
	var list []measure.Length
	for _, run := range b.Boards {
		list = append(list, run.Y)
	}
	return list
}

func (b Boards) drawRun(s *kit.Sheet, v gridView, run BoardRun) {
	from := measure.Length(0)
	for _, end := range run.Ends {
		box := v.box(from, run.Y, end, run.Y+run.Width)
		if run.Ripped {
			s.HatchBox(kit.Falling, 2, box)
		}
		s.Rectangle(kit.Thin, kit.Open, box)
		from = end
	}
}

// drawNumbers numbers the boards on the right and gives, on the left, where they
// begin: all of them, or every second, third … when they are too close.
func (b Boards) drawNumbers(s *kit.Sheet, v gridView, style measure.Style) {
	step, last := b.step(v), len(b.Boards)-1
	var marks []kit.Mark
	half := kit.Pitch(kit.Small) / 2
	for i, run := range b.Boards {
		if i != last && (i%step != 0 || last-i < step) {
			continue
		}
		marks = append(marks, kit.Mark{At: v.Y(run.Y), Edge: v.frame.Left, Words: run.Y.Print(style)})
		at := kit.Point{X: v.frame.Right + 2, Y: v.Y(run.Y + run.Width/2)}
		s.WriteFirst(kit.Text{Words: number(i + 1), At: at, Align: kit.Start},
			kit.Text{Words: number(i + 1), At: kit.Point{X: at.X, Y: at.Y - v.out*half}, Align: kit.Start})
	}
	s.RunningUpright(v.Y(0), marks, v.frame.Left-kit.FirstDimension, false)
}

// step returns which boards are numbered: every first, second, fifth, tenth …
func (b Boards) step(v gridView) int {
	if len(b.Boards) < 2 {
		return 1
	}
	pitch := v.Long(b.Boards[1].Y - b.Boards[0].Y)
	for _, step := range []int{1, 2, 5, 10, 20, 50} {
		if pitch*float64(step) > kit.Pitch(kit.Small)+0.4 {
			return step
		}
	}
	return 100
}
