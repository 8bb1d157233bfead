package crew

import (
	"fmt"

	"pierbook/calc/figure"
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
func (w Weekend) Figures() []figure.Figure {
	var figures []figure.Figure
	var keys []string
	for _, s := range w.Steps {
		key := "crew." + s.Name + ".hours"
		keys = append(keys, key)
		working, source, memory := "", "", false
		for i, t := range s.Terms {
			if i > 0 {
				working, source = working+" + ", source+"; "
			}
			working += fmt.Sprintf("%s: %.3g × %.3g to %.3g h", t.What, t.Amount, float64(t.Each.Least), float64(t.Each.Most))
			source += t.Source
			memory = memory || t.Memory
		}
		origin := figure.Computed
		if s.Own {
			origin, source, working, memory = figure.Shop, "the shop's own rate", "", false
		}
		figures = append(figures, figure.Figure{Key: key, Means: "hours of one person: " + s.Title, Value: measure.Word(s.Hours.Print()), Origin: origin, Source: source, Memory: memory,
			Formula: "Σ amount × rate", Working: working})
		actual := figure.Figure{Key: "crew." + s.Name + ".actual", Means: "hours taken: " + s.Title, Origin: figure.Measured}
		if s.Actual > 0 {
			actual.Value = s.Actual
		}
		figures = append(figures, actual)
	}
	return append(figures,
		figure.Figure{Key: "crew.total.hours", Means: "hours of one person, all steps", Value: measure.Word(w.Total.Print()), Origin: figure.Computed, Formula: "Σ steps", From: keys},
		figure.Figure{Key: "crew.days", Means: "days of eight hours for the crew", Value: measure.Count(len(w.Days)), Origin: figure.Computed, Formula: "middle of each range laid over the days", From: keys},
		figure.Figure{Key: "crew.people", Means: "people in the crew", Value: measure.Count(w.Crew), Origin: figure.Given},
	)
}
