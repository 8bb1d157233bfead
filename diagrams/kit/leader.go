package kit

import "sort"

// Note is a remark with a leader to what it is about.
type Note struct {
	Tip   Point
	Lines []string
	Bold  bool
	Dot   bool // the leader ends in a dot on a face instead of an arrow on an edge
}

// shoulder is the level part of a leader before its words.
const shoulder = 3.0

// Notes writes the notes below one another in a column whose words start at x
// (or end there when leftward), in the order of their tips, apart from each
// other, between top and bottom. Each leader slopes from its tip to a short
// level shoulder at half the height of the first line.
func (s *Sheet) Notes(x float64, leftward bool, top, bottom float64, notes ...Note) {
	notes = append([]Note(nil), notes...)
	sort.SliceStable(notes, func(i, j int) bool { return notes[i].Tip.Y < notes[j].Tip.Y })
	places := notePlaces(notes, top, bottom)
	way, align := 1.0, Start
	if leftward {
		way, align = -1, End
	}
	for i, n := range notes {
		y := places[i]
		elbow := Point{x - way*(shoulder+0.8), y}
		s.Polyline(Thin, n.Tip, elbow, elbow.Plus(way*shoulder, 0))
		if n.Dot {
			s.Circle(Pen{}, Black, n.Tip, 0.7)
		} else {
			s.Arrow(elbow, n.Tip)
		}
		s.WriteLines(Text{At: Point{x, y}, Align: align, Bold: n.Bold}, n.Lines)
	}
}

// notePlaces returns the height of the first line of each note. Notes of
// several lines are spread as so many single ones and the first line taken.
func notePlaces(notes []Note, top, bottom float64) []float64 {
	var lines []float64
	for _, n := range notes {
		for i := range n.Lines {
			lines = append(lines, n.Tip.Y+float64(i)*0.01)
		}
		if len(n.Lines) == 0 {
			lines = append(lines, n.Tip.Y)
		}
	}
	half := Pitch(Small) / 2
	lines = Spread(lines, Pitch(Small)+0.2, top+half, bottom-half)
	places := make([]float64, len(notes))
	k := 0
	for i, n := range notes {
		places[i] = lines[k]
		k += max(1, len(n.Lines))
	}
	return places
}

// LevelMark draws the triangle that stands on a level, its tip at the point.
func (s *Sheet) LevelMark(tip Point) {
	s.Polygon(Thin, White, tip, tip.Plus(-1.6, -2.6), tip.Plus(1.6, -2.6))
}
