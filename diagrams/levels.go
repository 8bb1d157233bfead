package diagrams

import (
	"cmp"
	"math"
	"slices"

	"pierbook/diagrams/kit"
)

// level is a height to be named at the side of a section.
type level struct {
	at    float64 // on the sheet
	words string
	bold  bool
}

// sortLevels puts the highest first.
func sortLevels(levels []level) {
	slices.SortStableFunc(levels, func(a, b level) int { return cmp.Compare(a.at, b.at) })
}

// writeLevels names heights in a column whose words end at x, each with a level
// line up to reach, moved apart where they are close; highest first.
func writeLevels(s *kit.Sheet, x, reach, top, bottom float64, levels ...level) {
	places := make([]float64, len(levels))
	for i, l := range levels {
		places[i] = l.at
	}
	half := kit.Pitch(kit.Small) / 2
	places = kit.Spread(places, kit.Pitch(kit.Small)+0.3, top+half, bottom-half)
	for i, l := range levels {
		s.Write(kit.Text{Words: l.words, At: kit.Point{X: x, Y: places[i]}, Align: kit.End, Bold: l.bold})
		s.Polyline(kit.Thin, kit.Point{X: x + 0.8, Y: places[i]}, kit.Point{X: x + 3.5, Y: l.at}, kit.Point{X: reach, Y: l.at})
		s.LevelMark(kit.Point{X: x + 5.6, Y: l.at})
	}
}

// valueRows draws a band of values below a section, as on the long section of a
// road: a row for each kind of value, a column at each place.
type valueRows struct {
	left  float64 // where the values begin; the names of the rows stand before it
	right float64
	top   float64
	at    []float64
	rows  []valueRow
	tight bool // lower rows, where the sheet is short of room
}

type valueRow struct {
	name   string
	values []string // "" for a blank to write on
	bold   bool
}

// pitch returns the least distance of columns.
func (v valueRows) pitch() float64 {
	pitch := v.right - v.left
	for i := 1; i < len(v.at); i++ {
		pitch = min(pitch, v.at[i]-v.at[i-1])
	}
	return pitch
}

// step returns which columns are filled: every second, third … when even figures
// that read upwards would touch.
func (v valueRows) step() int {
	return max(1, int(math.Ceil((kit.Pitch(kit.Medium)+0.1)/max(v.pitch(), 0.1))))
}

// turned says whether some value is too wide for its column and all read upwards.
func (v valueRows) turned() bool {
	return v.widest()+1.2 > v.pitch()
}

func (v valueRows) widest() float64 {
	wide := 0.0
	for _, r := range v.rows {
		wide = max(wide, r.widest())
	}
	return wide
}

func (r valueRow) widest() float64 {
	wide := 0.0
	for _, value := range r.values {
		wide = max(wide, kit.Width(value, kit.Small, r.bold))
	}
	return wide
}

// The height of a row whose values stand level.
const (
	levelRow = 6.6
	tightRow = 5.2
)

func (v valueRows) heightOf(r valueRow) float64 {
	level := levelRow
	if v.tight && !slices.Contains(r.values, "") {
		level = tightRow
	}
	if v.turned() {
		return max(level, r.widest()+2.4)
	}
	return level
}

func (v valueRows) height() float64 {
	sum := 0.0
	for _, r := range v.rows {
		sum += v.heightOf(r)
	}
	return sum
}

func (v valueRows) draw(s *kit.Sheet) {
	top, turned, step := v.top, v.turned(), v.step()
	for _, r := range v.rows {
		high := v.heightOf(r)
		s.Across(kit.Thin, 1, v.right, top)
		s.Write(kit.Text{Words: r.name, At: kit.Point{X: 1.5, Y: top + high/2}, Align: kit.Start, Bold: r.bold})
		for k := 0; k < len(v.at); k += step {
			x := v.at[k]
			if k >= len(r.values) || r.values[k] == "" {
				blank := min(4, v.pitch()*float64(step)/2-0.5)
				s.Across(kit.Thin, x-blank, x+blank, top+high-1.4)
				continue
			}
			if !turned {
				x = min(x, v.right-kit.Width(r.values[k], kit.Small, r.bold)/2)
			}
			s.Write(kit.Text{Words: r.values[k], At: kit.Point{X: x, Y: top + high/2}, Bold: r.bold, Turned: turned})
		}
		top += high
	}
	s.Across(kit.Thin, 1, v.right, top)
}
