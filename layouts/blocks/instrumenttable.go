package blocks

import (
	"pierbook/calc"
	"pierbook/calc/levelling"
	"pierbook/content"
)

// instrumentTable is the verdict on each check of the instrument, with its working.
func instrumentTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Check"), words("Worked"), number("Allowed"), words("Verdict")}}
	names := map[string]string{"pegs": "two pegs", "wall": "wall, turned about", "wall_across": "wall, turned a quarter first", "ends": "both ends of the tube"}
	for _, check := range levelling.InstrumentChecks(p.Job) {
		key := "instrument." + check.Name
		found, _ := p.Figures.Get(key + ".error")
		allowed, _ := p.Figures.Get(key + ".allowed")
		verdict, _ := p.Figures.Get(key + ".verdict")
		t.Rows = append(t.Rows, []content.Cell{head(names[check.Name]), text(found.Working), text(allowed.Text(p.Style)), text(verdict.Text(p.Style))})
	}
	return t
}
