package strength

import (
	"fmt"
	"strings"

	"pierbook/calc/frame"
	"pierbook/calc/measure"
)

// openings asks for headers and trimmers at every opening that cuts what carries
// the floor. They are not sized here: whoever is qualified does.
func (c *checker) openings() {
	for _, o := range c.frame.Openings {
		if o.NeedsHeaders() {
			c.add(c.headers(o))
		}
	}
}

func (c *checker) headers(o frame.Opening) finding {
	cut := measure.Count(len(o.Through))
	check := Check{ID: "opening." + o.Name + ".headers", What: "the opening " + o.Name + " cuts " + strings.Join(o.Through, ", "), Demand: cut, Capacity: measure.Count(0), Ratio: ratioOf(float64(cut), 0),
		Clause: "IRC 2021 R502.10, framing of openings: from memory", Memory: true,
		Needs: "headers and trimmers, with their hangers, for what the opening cuts"}
	return finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("opening %s × %s at %s along and %s across", t.length(o.Length), t.length(o.Width), t.length(o.X), t.length(o.Y)),
			fmt.Sprintf("cuts %s; none may be cut without headers between trimmers, which are not sized here", strings.Join(o.Through, ", ")),
		}
	}}
}
