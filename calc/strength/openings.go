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
	all := len(c.frame.Joists) + len(c.frame.Rims)
	if c.between() {
		all += len(c.frame.Lines)
	}
	whole := all - len(o.Through)
	check := Check{ID: "opening." + o.Name + ".headers", What: "the opening " + o.Name + " cuts " + strings.Join(o.Through, ", "),
		Demand: measure.Count(all), Capacity: measure.Count(whole), Ratio: ratioOf(float64(all), float64(whole)),
		Clause: "IRC 2021 R502.10, framing of openings: from memory", Memory: true,
		Needs: "headers and trimmers, with their hangers, for what the opening cuts"}
	return finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("opening %s × %s at %s along and %s across", t.length(o.Length), t.length(o.Width), t.length(o.X), t.length(o.Y)),
			fmt.Sprintf("of %d members under the floor, which must all run through, %d do", all, whole),
			fmt.Sprintf("cut: %s; they hold only with headers between trimmers, which are not sized here", strings.Join(o.Through, ", ")),
		}
	}}
}
