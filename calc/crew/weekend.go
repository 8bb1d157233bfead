package crew

import (
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Range is an estimate from a practised crew's hours to a first-timer's.
type Range struct{ Least, Most measure.Hours }

// Middle returns the hours halfway.
func (r Range) Middle() measure.Hours { return (r.Least + r.Most) / 2 }

// Estimate is one step with its hours of work.
type Estimate struct {
	trade.Step
	Hours     Range         // of one person: the shop's own where it has them, else as estimated
	Estimated Range         // by the terms
	Actual    measure.Hours // of one person, as written down on site, 0 when not
	Own       bool          // Hours are the shop's own
	Terms     []Term
}

// Weekend is the plan over the days.
type Weekend struct {
	Steps []Estimate
	Total Range // of one person
	Days  []Day
	Crew  int
}

// Day is one day's stretch of work, in hours from its start for the whole crew,
// at the middle of each range.
type Day struct {
	Number int
	Parts  []Part
}

// Left returns what the last step of the day says of a night, and whether the step
// ends with the day.
func (d Day) Left(steps []Estimate) (overnight string, ended bool) {
	if len(d.Parts) == 0 {
		return "", true
	}
	last := d.Parts[len(d.Parts)-1]
	for _, s := range steps {
		if s.Name == last.Step {
			overnight = s.Overnight
		}
	}
	return overnight, last.Ends
}

// Part is a step, or what falls of it, on one day.
type Part struct {
	Step       string
	Title      string
	Start, End measure.Hours // of that day's work
	Ends       bool          // the step ends here, with its hold point
	Hold       string
}

// dayLong is a working day: 8 hours (common practice, no source).
const dayLong measure.Hours = 8

// stretch is how much longer a day may run to end a step: half an hour (common
// practice, no source).
const stretch measure.Hours = 0.5

// Plan estimates every step and lays the steps over the days for so many
// people. Own holds the shop's hours by step, taken as both ends of the range;
// actual holds the hours written down on site.
func Plan(w Work, people int, own, actual map[string]measure.Hours) Weekend {
	plan := Weekend{Crew: max(people, 1)}
	for _, step := range trade.Steps() {
		e := estimate(step, w, own[step.Name], actual[step.Name])
		plan.Steps = append(plan.Steps, e)
		plan.Total.Least += e.Hours.Least
		plan.Total.Most += e.Hours.Most
	}
	plan.Days = days(plan.Steps, plan.Crew)
	return plan
}

func estimate(step trade.Step, w Work, own, actual measure.Hours) Estimate {
	e := Estimate{Step: step, Actual: actual}
	for _, r := range rates {
		if r.step != step.Name {
			continue
		}
		t := r.term(w)
		if t.Hours.Most == 0 {
			continue
		}
		e.Terms = append(e.Terms, t)
		e.Hours.Least += t.Hours.Least
		e.Hours.Most += t.Hours.Most
	}
	e.Estimated = e.Hours
	if own > 0 {
		e.Hours, e.Own = Range{own, own}, true
	}
	return e
}

// days lays the middle of each range over days of eight hours. A step that may
// not be left overnight is not begun when it cannot end the same day, unless it
// needs more than a whole day.
func days(steps []Estimate, crew int) []Day {
	var plan []Day
	day := Day{Number: 1}
	var clock measure.Hours
	next := func() {
		plan = append(plan, day)
		day, clock = Day{Number: day.Number + 1}, 0
	}
	for _, s := range steps {
		left := s.Hours.Middle() / measure.Hours(max(1, min(crew, s.People)))
		if clock > 0 && !s.MayWait() && left <= dayLong && clock+left > dayLong+stretch {
			next()
		}
		for left > 0 {
			if dayLong-clock < 0.25 {
				next()
			}
			take := min(left, dayLong-clock)
			if left <= dayLong-clock+stretch {
				take = left
			}
			left -= take
			day.Parts = append(day.Parts, Part{Step: s.Name, Title: s.Title, Start: clock, End: clock + take, Ends: left == 0, Hold: s.Hold})
			clock += take
		}
	}
	if len(day.Parts) > 0 {
		plan = append(plan, day)
	}
	return plan
}
