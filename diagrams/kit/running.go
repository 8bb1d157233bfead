package kit

import "math"

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
	if levelFits(marks, left, right) {
		return 3.5 + Pitch(Small)
	}
	return 4.5 + widest(marks)
}

// RunningAcross draws running dimensions along a level line at y: every figure
// is counted from the origin, where the tape hooks on. Figures stand level
// where they all fit, otherwise they read upwards, moved apart where marks are
// close. Below puts the figures on the lower side of the line.
func (s *Sheet) RunningAcross(origin float64, marks []Mark, y float64, below bool) {
	if len(marks) == 0 {
		return
	}
	way := -1.0
	if below {
		way = 1
	}
	s.Across(Thin, origin, marks[len(marks)-1].At, y)
	s.Circle(Thin, White, Point{origin, y}, 1)
	level := levelFits(marks, s.size.Left, s.size.Right)
	places := make([]float64, len(marks))
	for i, m := range marks {
		places[i] = m.At
	}
	if !level {
		half := turnedPitch / 2
		places = Spread(places, turnedPitch, s.size.Left+half, s.size.Right-half)
	}
	for i, m := range marks {
		s.extendUpright(m.At, m.Edge, y)
		if math.Abs(m.At-origin) > arrowLength {
			s.Arrow(Point{origin, y}, Point{m.At, y})
		}
		if level {
			s.Write(Text{Words: m.Words, At: Point{m.At, y + way*(2.8+Pitch(Small)/2)}})
			continue
		}
		s.Line(Thin, Point{m.At, y + way*extensionPast}, Point{places[i], y + way*(extensionPast+1.5)})
		long := Width(m.Words, Small, false)
		s.Write(Text{Words: m.Words, At: Point{places[i], y + way*(extensionPast+2+long/2)}, Turned: true})
	}
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
	places := make([]float64, len(marks))
	for i, m := range marks {
		places[i] = m.At
	}
	half := Pitch(Small) / 2
	if rising(places) {
		places = Spread(places, Pitch(Small)+0.3, s.size.Top+half, s.size.Bottom-half)
	}
	for i, m := range marks {
		s.extendLevel(m.At, m.Edge, x)
		if math.Abs(m.At-origin) > arrowLength {
			s.Arrow(Point{x, origin}, Point{x, m.At})
		}
		s.Line(Thin, Point{x + way*extensionPast, m.At}, Point{x + way*(extensionPast+1.5), places[i]})
		s.Write(Text{Words: m.Words, At: Point{x + way*(extensionPast+2.2), places[i]}, Align: align})
	}
}

func rising(places []float64) bool {
	for i := 1; i < len(places); i++ {
		if places[i] < places[i-1] {
			return false
		}
	}
	return true
}

// levelFits says whether all figures stand level beside one another.
func levelFits(marks []Mark, left, right float64) bool {
	last := left
	for _, m := range marks {
		half := Width(m.Words, Small, false) / 2
		if m.At-half < last || m.At+half > right {
			return false
		}
		last = m.At + half + 1.5
	}
	return true
}

func widest(marks []Mark) float64 {
	w := 0.0
	for _, m := range marks {
		w = math.Max(w, Width(m.Words, Small, false))
	}
	return w
}
