package strength

import (
	"fmt"
	"math"
	"strings"

	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// Balance is the proof that nothing was lost on the way: what was put on the
// platform and what the piers push back, case by case, every span loaded.
type Balance struct {
	Case               string
	Applied, Reactions measure.Force
	Working            string
}

// Difference returns what is missing, to the newton: less is the last digit of the
// arithmetic.
func (b Balance) Difference() measure.Force {
	return measure.Force(math.Round(float64(b.Applied-b.Reactions))) + 0
}

// balances sums loads and reactions up for each case that is present.
func (t *Trial) balances() []Balance {
	var all []Balance
	for kind := range loads.CaseCount {
		if kind == loads.WindCase || !t.Loads.Present[kind] {
			continue
		}
		b := Balance{Case: loads.CaseNames[kind]}
		var parts []string
		b.Applied, parts = t.applied(kind)
		for i := range t.Lines {
			for _, r := range t.Lines[i].Reactions[kind].Whole {
				b.Reactions += measure.Force(r)
			}
		}
		b.Working = fmt.Sprintf("%s = %s; reactions of all piers %s", strings.Join(parts, " + "), t.Words.Force(float64(b.Applied)), t.Words.Force(float64(b.Reactions)))
		all = append(all, b)
	}
	return all
}

// applied adds up what a case puts on the platform, and says of what.
func (t *Trial) applied(kind loads.Case) (measure.Force, []string) {
	sum, parts := 0.0, []string{}
	add := func(load float64, what string) {
		if load != 0 {
			sum += load
			parts = append(parts, t.Words.Force(load)+" "+what)
		}
	}
	add(t.Loads.Area[kind]*float64(t.frame.Length.Times(t.frame.Width)), "on the floor")
	strips := 0.0
	for _, s := range t.Loads.Strips {
		if s.Kind == kind {
			strips += s.Total()
		}
	}
	add(strips, "along walls and rims")
	if kind == loads.DeadCase {
		add(t.Loads.Beam*loads.BeamMetres(t.frame), "of beams")
	}
	if kind == loads.LiveCase {
		for _, p := range t.in.Patches {
			add(float64(p.Load), "of "+p.Name)
		}
	}
	return measure.Force(sum), parts
}
