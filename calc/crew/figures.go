package crew

import (
	"fmt"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Print returns the range as the binder shows it: "3 to 8 h" in half hours.
func (r Range) Print() string {
	least, most := half(r.Least), half(r.Most)
	if least == most {
		return fmt.Sprintf("%g\u00a0h", most)
	}
	return fmt.Sprintf("%g to %g\u00a0h", least, most)
}

// half rounds up to half hours.
func half(h measure.Hours) float64 {
	steps := int(h * 2)
	if float64(steps) < float64(h*2)-1e-9 {
		steps++
	}
	return float64(steps) / 2
}

// Figures returns the hours of each step and of the whole.
func (w Weekend) Figures(j *job.Job) []figure.Figure {
	var figures []figure.Figure
	var keys, taken []string
	for _, e := range w.Steps {
		hours := e.hoursFigure(j)
		actual := figure.Figure{Key: "crew." + e.Name + ".actual", Means: "hours of one person taken: " + e.Title, Origin: figure.Measured}
		if e.Actual > 0 {
			actual.Value, actual.At = e.Actual, j.At("measured.hours."+e.Name)
			taken = append(taken, actual.Key)
		}
		keys = append(keys, hours.Key)
		figures = append(figures, hours, actual)
	}
	pace := figure.Figure{Key: "crew.pace", Means: "hours taken over the middle of the estimates, steps done so far", Origin: figure.Computed,
		Formula: "Σ hours taken / Σ middle of their estimates", From: taken}
	if p, known := w.Pace(); known {
		pace.Value, pace.Working = p, w.paceWorking()
	}
	days := figure.Figure{Key: "crew.days", Means: "days of eight hours for the crew", Value: measure.Count(len(w.Days)), Origin: figure.Computed, From: append(keys, "crew.people"),
		Formula: "the middle of each range over the people at it, laid over days of 8 h; what may not be left overnight is not begun late"}
	people := figure.Figure{Key: "crew.people", Means: "people in the crew", Value: measure.Count(w.Crew), Origin: figure.Given, At: j.At("crew.people")}
	if entry, known := j.Entry("crew.people"); known {
		people.Origin, people.At, people.Source, people.Memory = entry.Origin, entry.At, entry.Source, entry.Memory
	}
	return append(figures,
		figure.Figure{Key: "crew.total.hours", Means: "hours of one person, all steps", Value: measure.Word(w.Total.Print()), Origin: figure.Computed, Formula: "Σ steps, each end of the range by itself", From: keys},
		days, people, pace)
}

func (e Estimate) hoursFigure(j *job.Job) figure.Figure {
	f := figure.Figure{Key: "crew." + e.Name + ".hours", Means: "hours of one person: " + e.Title, Value: measure.Word(e.Hours.Print()), Origin: figure.Computed}
	if e.Own {
		f.Origin, f.At, f.Source = figure.Shop, j.At("crew.rates."+e.Name), "the shop's own hours for the step"
		return f
	}
	var workings, sources []string
	for _, t := range e.Terms {
		workings = append(workings, t.Working(j.Style()))
		sources = append(sources, t.What+": "+t.Source)
		f.Memory = f.Memory || t.Memory
		if t.Key != "" {
			f.From = append(f.From, t.Key)
		}
	}
	f.Formula, f.Working, f.Source = "Σ amount × rate, from a practised hand's to a first-timer's", strings.Join(workings, "; "), strings.Join(sources, "; ")
	return f
}
