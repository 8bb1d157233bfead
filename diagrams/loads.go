package diagrams

import (
	"math"
	"strings"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Loads is the load on each pier over the plan, each with the floor it carries.
type Loads struct {
	Grid
	Loads []PierLoad    // by the order of the piers
	Rated measure.Force // of a block; 0 when it has none
}

// PierLoad is what one pier carries.
type PierLoad struct {
	Load  measure.Force
	Ratio measure.Ratio // of the worst check of this pier; above 1 it fails; not negative
}

// About returns the record of the drawing.
func (l Loads) About() About {
	about := About{Name: "loads", Title: "Load on each pier"}
	failing := 0
	for _, p := range l.Loads {
		if p.Ratio > 1 {
			failing++
		}
	}
	about.Shows = "The piers from above, each with a disc that grows with its load, the load and how much of its capacity is used. " +
		"Dashed lines part the floor that goes to each pier."
	if failing > 0 {
		about.Shows += " " + counted(failing, "pier carries", "piers carry") + " more than allowed; their discs are black."
	}
	return about
}

func (l Loads) sheet(style measure.Style) *kit.Sheet {
	if !l.drawn() || len(l.Loads) != len(l.Piers) {
		return blankSheet(l, "No loads to draw yet")
	}
	edge := 12.0
	v := l.lay(room{left: 14, right: bubbleAt - 4, near: edge, far: bubbleAt - 4}, l.tall())
	s := newSheet(l, v.height+6)
	l.drawShares(s, v)
	s.Rectangle(kit.Outline, kit.Open, v.frame)
	v.names(s, 10+bubbleRadius)
	most := l.heaviest()
	pitch := l.pitch(v)
	for i, pier := range l.Piers {
		l.drawPier(s, v.At(pier.X, pier.Y), l.Loads[i], most, pitch, style)
	}
	_, unit := cutUnit(most.Print(style))
	rated := ""
	if l.Rated > 0 {
		rated = ", rated " + l.Rated.Print(style) + " for each block"
	}
	scaleNote(s, v.Name()+"; loads in "+unit+rated+", % of the worst check, rounded up; black = over")
	return s
}

// drawShares draws the borders of the floor that each pier carries: halfway to its neighbours.
func (l Loads) drawShares(s *kit.Sheet, v gridView) {
	var lines []kit.Segment
	edges := []measure.Length{0}
	for i := 1; i < len(l.Lines); i++ {
		y := (l.Lines[i-1].Y + l.Lines[i].Y) / 2
		edges = append(edges, y)
		lines = append(lines, kit.Segment{From: v.At(0, y), To: v.At(l.Length, y)})
	}
	edges = append(edges, l.Width)
	for i := range l.Lines {
		piers := l.onLine(i)
		for k := 1; k < len(piers); k++ {
			x := (piers[k-1].X + piers[k].X) / 2
			lines = append(lines, kit.Segment{From: v.At(x, edges[i]), To: v.At(x, edges[i+1])})
		}
	}
	s.Lines(kit.Dotted, lines...)
}

// pitch returns the least distance between piers on the sheet.
func (l Loads) pitch(v gridView) float64 {
	least := math.Inf(1)
	for i := range l.Lines {
		piers := l.onLine(i)
		for k := 1; k < len(piers); k++ {
			least = min(least, v.Long(piers[k].X-piers[k-1].X))
		}
		if i > 0 {
			least = min(least, v.Long(l.Lines[i].Y-l.Lines[i-1].Y))
		}
	}
	return least
}

func (l Loads) heaviest() measure.Force {
	most := measure.Force(0)
	for _, p := range l.Loads {
		most = max(most, p.Load)
	}
	return most
}

// drawPier draws the disc, its area in proportion to the load, with the load
// above and the share of the capacity below.
func (l Loads) drawPier(s *kit.Sheet, at kit.Point, p PierLoad, most measure.Force, pitch float64, style measure.Style) {
	largest := min(5, (pitch-2*kit.Pitch(kit.Small)-1)/2)
	radius := 0.8
	if most > 0 && p.Load > 0 {
		radius = max(radius, largest*math.Sqrt(float64(p.Load)/float64(most)))
	}
	fill := kit.White
	if p.Ratio > 1 {
		fill = kit.Black
	}
	s.Circle(kit.Outline, fill, at, radius)
	if fill == kit.White {
		s.HatchBox(kit.Rising, 1.3, kit.Around(at, radius*1.3, radius*1.3))
	}
	words, _ := cutUnit(p.Load.Print(style))
	shift := radius + kit.Pitch(kit.Small)/2 + 0.2
	line := kit.Pitch(kit.Small) + 0.1
	load := kit.Text{Words: words, Bold: true}
	s.WriteFirst(moved(load, at.Plus(0, -shift)), moved(load, at.Plus(0, -shift-line)))
	share := kit.Text{Words: number(int(math.Ceil(float64(p.Ratio)*100-1e-9))) + "%"}
	s.WriteFirst(moved(share, at.Plus(0, shift)), moved(share, at.Plus(0, shift+line)))
}

// cutUnit parts a printed quantity from its unit.
func cutUnit(words string) (value, unit string) {
	if i := strings.LastIndexAny(words, "\u00a0 "); i >= 0 {
		_, size := cutRune(words[i:])
		return words[:i], words[i+size:]
	}
	return words, ""
}

func cutRune(words string) (rune, int) {
	for _, r := range words {
		return r, len(string(r))
	}
	return 0, 0
}
