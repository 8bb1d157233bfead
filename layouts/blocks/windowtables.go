package blocks

import (
	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/layouts"
)

// windowTable says beforehand what to do where something firm is met before
// the hole is deep enough.
func windowTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{number("Firm at"), words("Then")}}
	if p.Ground.Floor == nil {
		return t
	}
	step := measure.Inch
	if p.Job.Units == measure.Metric {
		step = 25 * measure.Millimetre
	}
	var all []pierGroup
	for _, b := range p.Ground.Beforehand(step, 3) {
		g := pierGroup{pier: b.Pier, says: "nothing changes from " + b.Shallowest.Print(c.style) + " down"}
		for _, row := range b.Rows {
			then := "stop and ask: no bed and no floor makes it good"
			switch {
			case row.UnderRule:
				then = "stop and ask: shallower than the least dig"
			case row.Bed != nil:
				then = "keep the floor with a bed of " + row.Bed.Print(c.style)
			case row.LiftFloor != nil:
				then = "lift the floor by " + row.LiftFloor.Print(c.style) + "; every post changes"
			}
			g.rows = append(g.rows, []layouts.Cell{c.length(row.Depth), text(then)})
		}
		if len(g.rows) > 0 {
			all = append(all, g)
		}
	}
	t.Groups = alike(all)
	return t
}
