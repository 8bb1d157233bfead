package strength

import (
	"fmt"
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

// balances sums loads and reactions up for each case that is present.
func (c *checker) balances() []Balance {
	floor := float64(c.frame.Length.Times(c.frame.Width))
	var all []Balance
	for kind := range caseCount {
		if kind == windCase || !c.loads.present[kind] {
			continue
		}
		b := Balance{Case: caseNames[kind]}
		area := c.loads.area[kind] * floor
		applied, parts := area, []string{}
		if area > 0 {
			parts = append(parts, c.words.force(area)+" on the floor")
		}
		strips := 0.0
		for _, s := range c.loads.strips {
			if s.kind == kind {
				strips += s.total()
			}
		}
		if strips > 0 {
			parts = append(parts, c.words.force(strips)+" along walls and rims")
		}
		if kind == deadCase {
			beams := c.loads.beam * c.beamMetres()
			strips += beams
			parts = append(parts, c.words.force(beams)+" of beams")
		}
		if kind == liveCase {
			for _, p := range c.in.Patches {
				strips += float64(p.Load)
				parts = append(parts, c.words.force(float64(p.Load))+" "+p.Name)
			}
		}
		b.Applied = measure.Force(applied + strips)
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
