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
	t := layouts.Table{Head: []layouts.Column{words("Pier"), number("Firm at"), words("Then")}, Size: layouts.Working}
	if p.Ground.Floor == nil {
		return t
	}
	step := measure.Inch
	if p.Job.Units == measure.Metric {
		step = 25 * measure.Millimetre
	}
	for _, b := range p.Ground.Beforehand(step, 3) {
		g := layouts.Group{Name: b.Pier + ": nothing changes from " + b.Shallowest.Print(c.style) + " down"}
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
			g.Rows = append(g.Rows, []layouts.Cell{head(b.Pier), c.length(row.Depth), text(then)})
		}
		if len(g.Rows) > 0 {
			t.Groups = append(t.Groups, g)
		}
	}
	return t
}
