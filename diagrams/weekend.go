package diagrams

import (
	"math"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Weekend is the work over the days: each step from when to when, as a range,
// with its hold points and what may be left overnight.
type Weekend struct {
	Days  []WorkDay
	Steps []WorkStep
}

// WorkDay is a day of work.
type WorkDay struct {
	Name  string // "Saturday 15 May"
	Hours measure.Hours
}

// WorkStep is one step.
type WorkStep struct {
	Name        string
	Day         int           // index into the days, of its beginning
	From        measure.Hours // after the day began
	Least, Most measure.Hours // how long it takes
	Hold        bool          // a hold point stands at its end
	Leave       bool          // may be left overnight at its end
}

// About returns the record of the drawing.
func (w Weekend) About() About {
	holds := 0
	for _, s := range w.Steps {
		if s.Hold {
			holds++
		}
	}
	return About{
		Name:  "weekend",
		Title: "The work over the days",
		Shows: counted(len(w.Steps), "step", "steps") + " over " + counted(len(w.Days), "day", "days") + " as bars, black for the least time and hatched for the most; " +
			counted(holds, "hold point", "hold points") + " as diamonds; a ring says that the work may be left overnight there.",
	}
}

const (
	weekLeft  = 58.0
	weekRight = 160.0
	weekTop   = 21.0
	weekRow   = 5.2
)

func (w Weekend) sheet(measure.Style) *kit.Sheet {
	total := measure.Hours(0)
	for _, d := range w.Days {
		total += d.Hours
	}
	if total <= 0 || len(w.Steps) == 0 {
		return blankSheet(w, "No days planned yet")
	}
	s := newSheet(w, weekTop+weekRow*float64(len(w.Steps))+9)
	hour := (weekRight - weekLeft) / float64(total)
	w.drawDays(s, hour)
	for i, step := range w.Steps {
		w.drawStep(s, i, step, hour)
	}
	w.drawKey(s)
	return s
}

// start returns where a day begins.
func (w Weekend) start(day int, hour float64) float64 {
	x := weekLeft
	for _, d := range w.Days[:min(day, len(w.Days))] {
		x += float64(d.Hours) * hour
	}
	return x
}

func (w Weekend) drawDays(s *kit.Sheet, hour float64) {
	bottom := weekTop + weekRow*float64(len(w.Steps))
	for i, d := range w.Days {
		left, right := w.start(i, hour), w.start(i+1, hour)
		s.Upright(kit.Cut, left, 1, bottom)
		lines := kit.WrapTo(d.Name, kit.Small, right-left-2, 2)
		top := 5.6 - kit.Pitch(kit.Small)*float64(len(lines)-1)/2
		s.WriteLines(kit.Text{At: kit.Point{X: (left + right) / 2, Y: top}}, lines)
		every := w.hoursApart(hour)
		for h := every; h < float64(d.Hours)-every/2; h += every {
			x := left + h*hour
			s.Upright(kit.Dotted, x, weekTop-3, bottom)
			s.Write(kit.Text{Words: number(int(h)), At: kit.Point{X: x, Y: 14.2}})
		}
	}
	s.Upright(kit.Cut, weekRight, 1, bottom)
	s.Across(kit.Cut, 1, weekRight, weekTop-3)
	s.Write(kit.Text{Words: "hours from the start", At: kit.Point{X: 1.5, Y: 14.2}, Align: kit.Start})
}

// hoursApart returns how many hours stand between two marks so that figures keep apart.
func (w Weekend) hoursApart(hour float64) float64 {
	for _, every := range []float64{1, 2, 4, 8} {
		if every*hour > 6 {
			return every
		}
	}
	return 24
}

func (w Weekend) drawStep(s *kit.Sheet, i int, step WorkStep, hour float64) {
	y := weekTop + weekRow*(float64(i)+0.5)
	s.Write(kit.Text{Words: kit.Shorten(step.Name, kit.Small, weekLeft-4, false), At: kit.Point{X: 1.5, Y: y}, Align: kit.Start})
	from := math.Min(w.start(step.Day, hour)+float64(step.From)*hour, weekRight)
	least := math.Min(from+float64(step.Least)*hour, weekRight)
	most := math.Min(from+float64(step.Most)*hour, weekRight)
	s.Rectangle(kit.Thin, kit.Black, kit.Box{Left: from, Top: y - 1.5, Right: least, Bottom: y + 1.5})
	if most > least {
		late := kit.Box{Left: least, Top: y - 1.5, Right: most, Bottom: y + 1.5}
		s.Rectangle(kit.Thin, kit.White, late)
		s.HatchBox(kit.Rising, 1, late)
	}
	end := most
	if step.Hold {
		diamond(s, kit.Point{X: end + 3, Y: y})
		end += 4.8
	}
	if step.Leave {
		s.Circle(kit.Cut, kit.White, kit.Point{X: end + 2.8, Y: y}, 1.4)
	}
}

func diamond(s *kit.Sheet, at kit.Point) {
	s.Polygon(kit.Cut, kit.White, at.Plus(0, -2.3), at.Plus(2.3, 0), at.Plus(0, 2.3), at.Plus(-2.3, 0))
}

// drawKey explains the signs at the foot.
func (w Weekend) drawKey(s *kit.Sheet) {
	y := s.Size().Bottom - 3.4
	s.Rectangle(kit.Thin, kit.Black, kit.Box{Left: 2, Top: y - 1.5, Right: 9, Bottom: y + 1.5})
	s.Write(kit.Text{Words: "least time", At: kit.Point{X: 11, Y: y}, Align: kit.Start})
	late := kit.Box{Left: 34, Top: y - 1.5, Right: 41, Bottom: y + 1.5}
	s.Rectangle(kit.Thin, kit.White, late)
	s.HatchBox(kit.Rising, 1, late)
	s.Write(kit.Text{Words: "most time", At: kit.Point{X: 43, Y: y}, Align: kit.Start})
	diamond(s, kit.Point{X: 69, Y: y})
	s.Write(kit.Text{Words: "hold point: stop and check", At: kit.Point{X: 73, Y: y}, Align: kit.Start})
	s.Circle(kit.Cut, kit.White, kit.Point{X: 123, Y: y}, 1.4)
	s.Write(kit.Text{Words: "may be left overnight", At: kit.Point{X: 126.5, Y: y}, Align: kit.Start})
}
