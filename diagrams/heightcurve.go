package diagrams

import (
	"math"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// HeightCurve is the price of an inch: what digging, stone and posts come to at
// each height of the floor.
type HeightCurve struct {
	limit
	Lowest, Chosen measure.Length   // heights of the floor
	Breaks         []measure.Length // floor heights at which a limit begins to bind
	Series         []HeightSeries
}

// HeightSeries is one quantity against the height of the floor.
type HeightSeries struct {
	Name   string // "dig"
	Points []HeightPoint
}

// HeightPoint is the quantity at one height of the floor.
type HeightPoint struct {
	Floor measure.Length
	Value measure.Quantity
}

// About returns the record of the drawing.
func (h HeightCurve) About() About {
	var names []string
	for _, s := range h.Series {
		names = append(names, s.Name)
	}
	return About{
		Name:  "height-curve",
		Title: "What another inch of floor height costs",
		Shows: "Against the height of the floor, from the lowest that is possible: " + listed(names) +
			". The height chosen is marked, and each height where a limit begins to bind.",
	}
}

// graph returns the height of one graph.
func (h HeightCurve) graph() float64 {
	count := float64(len(h.Series))
	return h.room(count*27, 10+count*4+30, count*13) / count
}

func (h HeightCurve) sheet(style measure.Style) *kit.Sheet {
	from, to, ok := h.span()
	if !ok {
		return blankSheet(h, "The floor height is not known yet")
	}
	const left, right, top = 34.0, 164.0, 10.0
	x := func(floor measure.Length) float64 {
		return left + (right-left)*float64(floor-from)/float64(to-from)
	}
	graph := h.graph()
	foot := top + float64(len(h.Series))*(graph+4)
	marks := h.marks(x, foot, style)
	s := newSheet(h, foot+6+kit.RunningRoom(marks, 0, pageWidth)+6)
	for i, series := range h.Series {
		series.draw(s, x, kit.Box{Left: left, Top: top + float64(i)*(graph+4), Right: right, Bottom: top + float64(i)*(graph+4) + graph}, style)
	}
	for _, b := range h.Breaks {
		s.Upright(kit.Dotted, x(b), top-2, foot)
	}
	s.Upright(kit.Hidden, x(h.Chosen), top-2, foot)
	h.nameHeights(s, x, top)
	s.AxisAcross(left, right, marks, foot)
	scaleNote(s, "top of the floor over the bench mark")
	return s
}

// span returns the range of floor heights and whether there is one.
func (h HeightCurve) span() (from, to measure.Length, ok bool) {
	for _, s := range h.Series {
		for _, p := range s.Points {
			if !ok {
				from, to, ok = p.Floor, p.Floor, true
			}
			from, to = min(from, p.Floor), max(to, p.Floor)
		}
	}
	return from, to, ok && to > from
}

// marks are the heights named at the foot: the ends, the breaks and the chosen one.
func (h HeightCurve) marks(x func(measure.Length) float64, edge float64, style measure.Style) []kit.Mark {
	from, to, _ := h.span()
	heights := append([]measure.Length{from, h.Lowest, h.Chosen, to}, h.Breaks...)
	var marks []kit.Mark
	for _, at := range sortedLengths(heights) {
		if at >= from && at <= to {
			marks = append(marks, kit.Mark{At: x(at), Edge: edge - 4, Words: at.Print(style)})
		}
	}
	return marks
}

func (h HeightCurve) nameHeights(s *kit.Sheet, x func(measure.Length) float64, top float64) {
	if h.Chosen == h.Lowest {
		s.WriteFirst(kit.Text{Words: "lowest, chosen", At: kit.Point{X: x(h.Chosen), Y: top - 5}, Bold: true},
			kit.Text{Words: "lowest, chosen", At: kit.Point{X: x(h.Chosen), Y: top - 5}, Bold: true, Align: kit.Start})
		return
	}
	s.Upright(kit.Dotted, x(h.Lowest), top-2, top+h.graph())
	s.Write(kit.Text{Words: "chosen", At: kit.Point{X: x(h.Chosen), Y: top - 5}, Bold: true})
	lowest := kit.Text{Words: "lowest", At: kit.Point{X: x(h.Lowest), Y: top - 5}}
	left := lowest
	left.Align, left.At.X = kit.End, min(left.At.X, x(h.Chosen)-9)
	s.WriteFirst(lowest, left)
}

// draw draws one graph with its name, its range and its points joined.
func (g HeightSeries) draw(s *kit.Sheet, x func(measure.Length) float64, b kit.Box, style measure.Style) {
	low, high := g.ends()
	if low < 0 {
		return
	}
	bottom, _ := g.Points[low].Value.Base()
	top, _ := g.Points[high].Value.Base()
	unit := 0.0
	if top > bottom {
		unit = (b.Bottom - b.Top - 5) / (top - bottom)
	}
	y := func(q measure.Quantity) float64 {
		value, _ := q.Base()
		return b.Bottom - 2.5 - (value-bottom)*unit
	}
	s.Polyline(kit.Thin, kit.Point{X: b.Left, Y: b.Top}, kit.Point{X: b.Left, Y: b.Bottom}, kit.Point{X: b.Right, Y: b.Bottom})
	var line []kit.Point
	for _, p := range g.Points {
		line = append(line, kit.Point{X: x(p.Floor), Y: y(p.Value)})
	}
	s.Polyline(kit.Outline, line...)
	s.Write(kit.Text{Words: g.Name, At: kit.Point{X: 1.5, Y: (b.Top + b.Bottom) / 2}, Align: kit.Start, Bold: true})
	for _, i := range []int{low, high} {
		at := y(g.Points[i].Value)
		s.Across(kit.Thin, b.Left-1.2, b.Left, at)
		s.WriteFirst(kit.Text{Words: g.Points[i].Value.Print(style), At: kit.Point{X: b.Left - 2, Y: at}, Align: kit.End})
	}
}

// ends returns the points of the least and the greatest value, -1 without points.
func (g HeightSeries) ends() (low, high int) {
	low, high = -1, -1
	least, most := math.Inf(1), math.Inf(-1)
	for i, p := range g.Points {
		value, _ := p.Value.Base()
		if value < least {
			low, least = i, value
		}
		if value > most {
			high, most = i, value
		}
	}
	return low, high
}
