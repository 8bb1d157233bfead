package strength

import (
	"fmt"
	"math"
	"strings"

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
func (c *checker) balances() []Balance {
	var all []Balance
	for kind := range caseCount {
		if kind == windCase || !c.loads.present[kind] {
			continue
		}
		b := Balance{Case: caseNames[kind]}
		var parts []string
		b.Applied, parts = c.applied(kind)
		for i := range c.lines {
			for _, r := range c.lines[i].reactions[kind].whole {
				b.Reactions += measure.Force(r)
			}
		}
		b.Working = fmt.Sprintf("%s = %s; reactions of all piers %s", strings.Join(parts, " + "), c.words.force(float64(b.Applied)), c.words.force(float64(b.Reactions)))
		all = append(all, b)
	}
	return all
}

// applied adds up what a case puts on the platform, and says of what.
func (c *checker) applied(kind loadCase) (measure.Force, []string) {
	sum, parts := 0.0, []string{}
	add := func(load float64, what string) {
		if load != 0 {
			sum += load
			parts = append(parts, c.words.force(load)+" "+what)
		}
	}
	add(c.loads.area[kind]*float64(c.frame.Length.Times(c.frame.Width)), "on the floor")
	strips := 0.0
	for _, s := range c.loads.strips {
		if s.kind == kind {
			strips += s.total()
		}
	}
	add(strips, "along walls and rims")
	if kind == deadCase {
		add(c.loads.beam*c.beamMetres(), "of beams")
	}
	if kind == liveCase {
		for _, p := range c.in.Patches {
			add(float64(p.Load), "of "+p.Name)
		}
	}
	return measure.Force(sum), parts
}
