package blocks

import (
	"strconv"

	"pierbook/calc"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
	"pierbook/content"
)

// Tables that turn readings into decisions.

// standErrorTable is what the class of the tool lets each pier be off by from the
// best place: a row for each beam line, and a row for each pier where a line has
// more of them than stand side by side.
func standErrorTable(p *calc.Plan) content.Table {
	c := of(p)
	stands := levelling.Stands(p.Job, p.Frame)
	if len(stands) == 0 {
		return content.Table{}
	}
	if perLine := p.Frame.PerLine(0); perLine <= sideBySide {
		t := content.Table{Head: []content.Column{words("Pier")}}
		for n := 1; n <= perLine; n++ {
			t.Head = append(t.Head, number(strconv.Itoa(n)))
		}
		for i, e := range stands[0].Piers {
			if i%perLine == 0 {
				t.Rows = append(t.Rows, []content.Cell{head(e.Pier[:1])})
			}
			last := len(t.Rows) - 1
			t.Rows[last] = append(t.Rows[last], c.quantity(measure.Small(e.Error)))
		}
		return t
	}
	t := content.Table{Head: []content.Column{words("Pier"), number("Sight"), number("May be off by")}}
	for _, e := range stands[0].Piers {
		t.Rows = append(t.Rows, []content.Cell{head(e.Pier), c.length(e.Distance), c.quantity(measure.Small(e.Error))})
	}
	return t
}

// sideBySide is how many lengths stand in one row on paper.
const sideBySide = 10
