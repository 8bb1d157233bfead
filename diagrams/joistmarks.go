package diagrams

import (
	"math"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// JoistMarks are the marks that a builder puts on the rim or the beam: a line
// at the near face of each joist, counted from the hook end, and an X on the
// side of the line where the joist stands.
type JoistMarks struct {
	limit
	On     string         // what is marked: "each rim"
	Length measure.Length // of what is marked
	Joists []JoistMark
}

// JoistMark is the mark of one joist.
type JoistMark struct {
	Number int
	Near   measure.Length // from the hook end
	Before bool           // the joist stands on the hook's side of its mark
}

// About returns the record of the drawing.
func (m JoistMarks) About() About {
	return About{
		Name:  "joist-marks",
		Title: "Joist marks on " + m.On,
		Shows: "A strip with " + counted(len(m.Joists), "mark", "marks") + " counted from the hook end, each with the number of its joist, and an X on the side of the mark where the joist stands.",
	}
}

// The strip: its place and size on the sheet.
const (
	stripLeft  = 8.0
	stripRight = 163.0
	stripHigh  = 9.0
	stripPitch = 7.4 // least distance of joists on paper, so that X and number stay apart
)

func (m JoistMarks) sheet(style measure.Style) *kit.Sheet {
	if len(m.Joists) == 0 || m.Length <= 0 {
		return blankSheet(m, "No joists to mark yet")
	}
	rows := m.rows()
	figures := 0.0
	for i := range rows {
		rows[i].place(style)
		figures = max(figures, kit.RunningRoom(rows[i].marks, 0, pageWidth))
	}
	pitch := 6 + stripHigh + 8 + figures + 3
	note := "marks are counted from the hook end; X = the joist stands here"
	if fit := max(1, int((m.most-5)/pitch)); m.most > 0 && fit < len(rows) {
		rows, note = rows[:fit], "X = the joist stands here; the table of joists goes on"
	}
	s := newSheet(m, pitch*float64(len(rows))+5)
	for i, row := range rows {
		row.draw(s, 6+pitch*float64(i))
	}
	scaleNote(s, note)
	return s
}

// strip is a part of what is marked, between two places of it.
type strip struct {
	joists      []JoistMark
	from, to    measure.Length
	shown       measure.Length // the longest of all strips: they have one scale
	first, last bool
	marks       []kit.Mark
}

// rows deals the joists into strips below one another, broken midway between
// two marks.
func (m JoistMarks) rows() []strip {
	each := m.perRow()
	var list []strip
	from := measure.Length(0)
	for i := 0; i < len(m.Joists); i += each {
		end := min(i+each, len(m.Joists))
		row := strip{joists: m.Joists[i:end], from: from, to: m.Length, first: i == 0, last: end == len(m.Joists)}
		if !row.last {
			row.to = m.Joists[end-1].Near + (m.Joists[end].Near-m.Joists[end-1].Near)*3/4
		}
		from = row.to
		list = append(list, row)
	}
	longest := measure.Length(0)
	for _, row := range list {
		longest = max(longest, row.to-row.from)
	}
	for i := range list {
		list[i].shown = longest
	}
	return list
}

// perRow returns how many joists stand on one strip.
func (m JoistMarks) perRow() int {
	most := int(math.Floor((stripRight - stripLeft) / stripPitch))
	count := (len(m.Joists) + most - 1) / most
	return (len(m.Joists) + count - 1) / count
}

func (r strip) x(at measure.Length) float64 {
	return stripLeft + (stripRight-stripLeft)*float64(at-r.from)/float64(r.shown)
}

func (r *strip) place(style measure.Style) {
	for _, j := range r.joists {
		r.marks = append(r.marks, kit.Mark{At: r.x(j.Near), Words: j.Near.Print(style)})
	}
}

func (r strip) draw(s *kit.Sheet, top float64) {
	b := kit.Box{Left: stripLeft, Top: top, Right: r.x(r.to), Bottom: top + stripHigh}
	s.Lines(kit.Outline, kit.Segment{From: kit.Point{X: b.Left, Y: b.Top}, To: kit.Point{X: b.Right, Y: b.Top}},
		kit.Segment{From: kit.Point{X: b.Left, Y: b.Bottom}, To: kit.Point{X: b.Right, Y: b.Bottom}})
	stripEnd(s, b.Left, b, r.first)
	stripEnd(s, b.Right, b, r.last)
	r.drawJoists(s, b)
	for i := range r.marks {
		r.marks[i].Edge = b.Bottom
	}
	if r.first {
		s.RunningAcross(b.Left, r.marks, b.Bottom+6, true)
	} else {
		s.RunningOn(b.Left, r.marks, b.Bottom+6, true)
	}
}

// drawJoists draws the marks with their crosses, squeezed at the end of the
// strip, and the numbers above.
func (r strip) drawJoists(s *kit.Sheet, b kit.Box) {
	var crosses []float64
	for i, j := range r.joists {
		x := r.marks[i].At
		s.Upright(kit.Cut, x, b.Top, b.Bottom)
		room, way := min(4.4, b.Right-x), 1.0
		if j.Before {
			room, way = min(4.4, x-b.Left), -1
		}
		centre := kit.Point{X: x + way*room/2, Y: b.Centre().Y}
		s.Cross(kit.Cut, centre, max(room-2, 0.8), 3.4)
		crosses = append(crosses, centre.X)
	}
	widest := kit.Width(number(r.joists[len(r.joists)-1].Number), kit.Small, true)
	for i, x := range kit.Spread(crosses, widest+0.4, widest/2, pageWidth-widest/2) {
		s.Write(kit.Text{Words: number(r.joists[i].Number), At: kit.Point{X: x, Y: b.Top - 3.2}, Bold: true})
	}
}

// stripEnd draws the end of a strip: square cut, or broken when it goes on.
func stripEnd(s *kit.Sheet, x float64, b kit.Box, square bool) {
	if square {
		s.Upright(kit.Outline, x, b.Top, b.Bottom)
		return
	}
	middle := b.Centre().Y
	s.Polyline(kit.Thin, kit.Point{X: x, Y: b.Top - 1.5}, kit.Point{X: x, Y: middle - 1.6}, kit.Point{X: x - 1.6, Y: middle - 0.6},
		kit.Point{X: x + 1.6, Y: middle + 0.6}, kit.Point{X: x, Y: middle + 1.6}, kit.Point{X: x, Y: b.Bottom + 1.5})
}
