package kit

import (
	"math"
	"slices"
)

// Mark is one place of a running dimension: where it stands along the line,
// where its extension line starts, and the figure.
type Mark struct {
	At, Edge float64
	Words    string
}

// turnedPitch is the least distance between figures that read upwards.
const turnedPitch = Small*lineRoom + 0.35

// RunningRoom returns how much room the figures of a level running dimension
// take beyond its line.
func RunningRoom(marks []Mark, left, right float64) float64 {
	if _, level := levelPlaces(marks, left, right); level {
		return 3.5 + Pitch(Small)
	}
	return 4.8 + widest(marks)
}

// RunningAcross draws running dimensions along a level line at y: every figure
// is counted from the origin, where the tape hooks on. Figures stand level
// where they all fit, otherwise they read upwards, moved apart where marks are
// close. Below puts the figures on the lower side of the line.
func (s *Sheet) RunningAcross(origin float64, marks []Mark, y float64, below bool) {
	if len(marks) == 0 {
		return
	}
	s.RunningOn(origin, marks, y, below)
	s.Circle(Thin, White, Point{origin, y}, 1)
}

// RunningOn draws running dimensions that began on a strip above: without an
// origin at their left end.
func (s *Sheet) RunningOn(left float64, marks []Mark, y float64, below bool) {
	if len(marks) == 0 {
		return
	}
	way := -1.0
	if below {
		way = 1
	}
	s.Across(Thin, left, marks[len(marks)-1].At, y)
	for _, m := range marks {
		s.extendUpright(m.At, m.Edge, y)
		if math.Abs(m.At-left) > arrowLength {
			s.Arrow(Point{left, y}, Point{m.At, y})
		}
	}
	s.figures(marks, y, way)
}

// AxisAcross draws the foot of a graph: a level line at y from left to right
// with a tick and a figure below it at each mark.
func (s *Sheet) AxisAcross(left, right float64, marks []Mark, y float64) {
	s.Across(Thin, left, right, y)
	for _, m := range marks {
		s.Upright(Thin, m.At, y, y+extensionPast)
	}
	s.figures(marks, y, 1)
}

// figures writes the figures of marks beside the line at y, level when all fit.
func (s *Sheet) figures(marks []Mark, y, way float64) {
	if places, level := levelPlaces(marks, s.size.Left, s.size.Right); level {
		for i, m := range marks {
			s.Write(Text{Words: m.Words, At: Point{places[i], y + way*(2.8+Pitch(Small)/2)}})
		}
		return
	}
	s.turnedFigures(marks, y, way)
}

// turnedFigures writes the figures so that they read upwards, at the ends of
// their extension lines or moved apart with a jog, never far before the first mark.
func (s *Sheet) turnedFigures(marks []Mark, y, way float64) {
	const half = turnedPitch / 2
	low := math.Max(s.size.Left+half, marks[0].At-half)
	marks = thinned(marks, int((s.size.Right-low-half)/turnedPitch)+1)
	for i, x := range Spread(ats(marks), turnedPitch, low, s.size.Right-half) {
		m := marks[i]
		s.Line(Thin, Point{m.At, y + way*extensionPast}, Point{x, y + way*(extensionPast+1.5)})
		long := Width(m.Words, Small, false)
		s.Write(Text{Words: m.Words, At: Point{x, y + way*(extensionPast+2+long/2)}, Turned: true})
	}
}

// thinned leaves out every second, third … mark when there is room for so many
// only, never the last.
func thinned(marks []Mark, most int) []Mark {
	step := (len(marks) + most - 1) / max(most, 1)
	if step <= 1 {
		return marks
	}
	var list []Mark
	for i := (len(marks) - 1) % step; i < len(marks); i += step {
		list = append(list, marks[i])
	}
	return list
}

func ats(marks []Mark) []float64 {
	places := make([]float64, len(marks))
	for i, m := range marks {
		places[i] = m.At
	}
	return places
}

// RunningUpright draws running dimensions along a vertical line at x, figures
// level beside it, moved apart where marks are close. Rightward puts the figures on the right.
func (s *Sheet) RunningUpright(origin float64, marks []Mark, x float64, rightward bool) {
	if len(marks) == 0 {
		return
	}
	way, align := -1.0, End
	if rightward {
		way, align = 1, Start
	}
	s.Upright(Thin, x, origin, marks[len(marks)-1].At)
	s.Circle(Thin, White, Point{x, origin}, 1)
	places := s.uprightPlaces(ats(marks))
	for i, m := range marks {
		s.extendLevel(m.At, m.Edge, x)
		if math.Abs(m.At-origin) > arrowLength {
			s.Arrow(Point{x, origin}, Point{x, m.At})
		}
		s.Line(Thin, Point{x + way*extensionPast, m.At}, Point{x + way*(extensionPast+1.5), places[i]})
		s.Write(Text{Words: m.Words, At: Point{x + way*(extensionPast+2.2), places[i]}, Align: align})
	}
}

// UprightRoom returns how much room a vertical running dimension takes beside
// the part, from its edge to the end of the widest figure.
func UprightRoom(words ...string) float64 {
	wide := 0.0
	for _, w := range words {
		wide = math.Max(wide, Width(w, Small, false))
	}
	return FirstDimension + extensionPast + 2.2 + wide + 0.5
}

// uprightPlaces moves the places of level figures apart, whichever way they run.
func (s *Sheet) uprightPlaces(places []float64) []float64 {
	half, gap := Pitch(Small)/2, Pitch(Small)+0.3
	if places[0] <= places[len(places)-1] {
		return Spread(places, gap, s.size.Top+half, s.size.Bottom-half)
	}
	slices.Reverse(places)
	places = Spread(places, gap, s.size.Top+half, s.size.Bottom-half)
	slices.Reverse(places)
	return places
}

// levelPlaces returns where the figures stand when all are level beside one
// another, pushed in from the edges, and whether they fit so.
func levelPlaces(marks []Mark, left, right float64) ([]float64, bool) {
	places := make([]float64, len(marks))
	last := left
	for i, m := range marks {
		half := Width(m.Words, Small, false) / 2
		places[i] = math.Min(math.Max(m.At, left+half), right-half-0.2)
		if places[i]-half < last {
			return nil, false
		}
		last = places[i] + half + 1.5
	}
	return places, true
}

func widest(marks []Mark) float64 {
	w := 0.0
	for _, m := range marks {
		w = math.Max(w, Width(m.Words, Small, false))
	}
	return w
}
