package strength

import (
	"fmt"
	"strings"

	"pierbook/calc/check"
	"pierbook/calc/frame"
	"pierbook/calc/measure"
)

// openings asks for headers and trimmers at every opening that cuts what carries
// the floor. They are not sized here: whoever is qualified does.
func (t *Trial) openings() []check.Finding {
	var found []check.Finding
	for _, o := range t.frame.Openings {
		if o.NeedsHeaders() {
			found = append(found, t.headers(o))
		}
	}
	return found
}

func (t *Trial) headers(o frame.Opening) check.Finding {
	all := len(t.frame.Joists) + len(t.frame.Rims)
	if t.hung() {
		all += len(t.frame.Lines)
	}
	whole := all - len(o.Through)
	result := check.Check{ID: "opening." + o.Name + ".headers", What: "the opening " + o.Name + " cuts " + strings.Join(o.Through, ", "),
		Demand: measure.Count(all), Capacity: measure.Count(whole), Ratio: check.RatioOf(float64(all), float64(whole)),
		Clause: "IRC 2021 R502.10, framing of openings: from memory", Memory: true,
		Needs: "headers and trimmers, with their hangers, for what the opening cuts"}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("opening %s × %s at %s along and %s across", t.Length(o.Length), t.Length(o.Width), t.Length(o.X), t.Length(o.Y)),
			fmt.Sprintf("of %d members under the floor, which must all run through, %d do", all, whole),
			fmt.Sprintf("cut: %s; they hold only with headers between trimmers, which are not sized here", strings.Join(o.Through, ", ")),
		}
	}}
}
