package diagrams

import (
	"fmt"
	"math"
	"strings"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Curves are the bending moment and the deflection along a beam or a joist.
type Curves struct {
	limit
	Member     string // "beam line B", "joist"
	Length     measure.Length
	Supports   []Support
	Moment     []MomentAt     // by rising x; sagging is positive
	Deflection []DeflectionAt // by rising x; down is positive
	Case       string         // which loading: "live load on bays 1 and 3"
}

// Support is a place where the member is held.
type Support struct {
	Name string
	X    measure.Length
}

// MomentAt is the bending moment at a place.
type MomentAt struct {
	X     measure.Length
	Value measure.Moment
}

// DeflectionAt is the deflection at a place.
type DeflectionAt struct{ X, Value measure.Length }

// About returns the record of the drawing.
func (c Curves) About() About {
	return About{
		Name:  kit.ID("curves-" + c.Member),
		Title: "Moment and deflection of the " + c.Member,
		Shows: "The " + c.Member + " on " + counted(len(c.Supports), "support", "supports") +
			"; below it the bending moment, sagging downwards, and the deflection, each with its largest values.",
	}
}

// curve is one of the graphs, ready to draw: values are drawn downwards.
type curve struct {
	name   string
	points []kit.Point // x on the sheet, value in its own unit
	print  func(float64) string
	hatch  bool
}

const (
	curveLeft  = 30.0
	curveRight = 160.0
	curveHigh  = 32.0 // of one graph, as it is read best
)

func (c Curves) sheet(style measure.Style) *kit.Sheet {
	if c.Length <= 0 || len(c.Supports) < 2 || len(c.Moment) < 2 {
		return blankSheet(c, "No moments to draw yet")
	}
	x := func(at measure.Length) float64 {
		return curveLeft + (curveRight-curveLeft)*float64(at)/float64(c.Length)
	}
	moment := curve{name: "moment", hatch: true, print: func(v float64) string { return measure.Moment(v).Print(style) }}
	for _, p := range c.Moment {
		moment.points = append(moment.points, kit.Point{X: x(p.X), Y: float64(p.Value)})
	}
	graphs := []curve{moment}
	if len(c.Deflection) > 1 {
		bend := curve{name: "deflection", print: func(v float64) string { return sagged(measure.Length(v), style) }}
		for _, p := range c.Deflection {
			bend.points = append(bend.points, kit.Point{X: x(p.X), Y: float64(p.Value)})
		}
		graphs = append(graphs, bend)
	}
	count := float64(len(graphs))
	high := c.room(count*curveHigh, 30+count*9, count*21) / count // of one graph
	s := newSheet(c, 24+count*(high+9)+6)
	c.drawMember(s, x)
	for i, g := range graphs {
		g.draw(s, 26+float64(i)*(high+9), high, c.verticals(x))
	}
	scaleNote(s, kit.Shorten(c.Member+": "+c.Case, kit.Small, pageWidth-4, false))
	return s
}

// sagged prints a deflection in thousandths of an inch or hundredths of a
// millimetre: it is calculated, not measured with a tape.
func sagged(l measure.Length, style measure.Style) string {
	text := fmt.Sprintf("%.3f in", l.Inches())
	if style.System == measure.Metric {
		text = fmt.Sprintf("%.2f mm", l.Metres()*1000)
	}
	return strings.Replace(text, "-", "−", 1)
}

func (c Curves) verticals(x func(measure.Length) float64) []float64 {
	var list []float64
	for _, p := range c.Supports {
		list = append(list, x(p.X))
	}
	return list
}

// drawMember draws the member on its supports under its load.
func (c Curves) drawMember(s *kit.Sheet, x func(measure.Length) float64) {
	const y = 9.0
	bar := kit.Box{Left: curveLeft, Top: y, Right: curveRight, Bottom: y + 3}
	s.Rectangle(kit.Outline, kit.White, bar)
	s.Across(kit.Thin, bar.Left, bar.Right, 2)
	for at := bar.Left; at <= bar.Right+0.01; at += (bar.Right - bar.Left) / 26 {
		s.Pull(kit.Hatching, kit.Point{X: at, Y: 2}, kit.Point{X: at, Y: y - 0.6})
	}
	gap := math.Inf(1)
	for i, p := range c.Supports {
		if i > 0 {
			gap = min(gap, x(p.X)-x(c.Supports[i-1].X))
		}
	}
	for _, p := range c.Supports {
		tip := kit.Point{X: x(p.X), Y: bar.Bottom + 0.4}
		s.Polygon(kit.Cut, kit.White, tip, tip.Plus(-1.8, 3), tip.Plus(1.8, 3))
		if kit.Width(p.Name, kit.Small, true)+1 < gap {
			s.Write(kit.Text{Words: p.Name, At: tip.Plus(0, 5.6), Bold: true})
		}
	}
}

// draw draws one graph below top, its largest values named.
func (g curve) draw(s *kit.Sheet, top, tall float64, verticals []float64) {
	low, high := 0.0, 0.0
	for _, p := range g.points {
		low, high = math.Min(low, p.Y), math.Max(high, p.Y)
	}
	unit := tall - 10
	if high > low {
		unit /= high - low
	}
	zero := top + 5 - low*unit
	line := []kit.Point{{X: g.points[0].X, Y: zero}}
	for _, p := range g.points {
		line = append(line, kit.Point{X: p.X, Y: zero + p.Y*unit})
	}
	line = append(line, kit.Point{X: line[len(line)-1].X, Y: zero})
	if g.hatch {
		s.Hatch(kit.Rising, 2.2, line...)
	}
	for _, x := range verticals {
		s.Upright(kit.Dotted, x, top, top+tall)
	}
	s.Across(kit.Thin, curveLeft-2, curveRight+2, zero)
	s.Polyline(kit.Outline, line...)
	s.Write(kit.Text{Words: g.name, At: kit.Point{X: 1.5, Y: zero}, Align: kit.Start, Bold: true})
	g.namePeaks(s, line, zero)
}

// namePeaks writes the values of the peaks, the largest first, where there is room.
func (g curve) namePeaks(s *kit.Sheet, line []kit.Point, zero float64) {
	for _, i := range g.peaks() {
		at := line[i+1]
		way := math.Copysign(3.2, at.Y-zero)
		t := kit.Text{Words: g.print(g.points[i].Y)}
		wide := kit.Width(t.Words, kit.Small, false)/2 + 1
		s.WriteFirst(moved(t, at.Plus(0, way)), moved(t, at.Plus(wide+1, way)), moved(t, at.Plus(-wide-1, way)))
	}
}

// peaks returns the places of the turning values, the largest first, without
// those under a tenth of the largest.
func (g curve) peaks() []int {
	var list []int
	size := func(i int) float64 { return math.Abs(g.points[i].Y) }
	most := 0.0
	for i := range g.points {
		most = math.Max(most, size(i))
	}
	for i := range g.points {
		before := i == 0 || size(i) > size(i-1) || g.points[i].Y*g.points[i-1].Y < 0
		after := i == len(g.points)-1 || size(i) >= size(i+1) || g.points[i].Y*g.points[i+1].Y < 0
		if before && after && size(i) > most/10 {
			list = append(list, i)
		}
	}
	for a := range list {
		for b := a + 1; b < len(list); b++ {
			if size(list[b]) > size(list[a]) {
				list[a], list[b] = list[b], list[a]
			}
		}
	}
	return list
}
