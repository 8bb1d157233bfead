package blocks

import (
	"fmt"

	"pierbook/calc"
	"pierbook/calc/strength"
	"pierbook/diagrams"
)

// moments draws the moment and the deflection of the governing joist and beam.
func moments(p *calc.Plan) []diagrams.Drawing {
	var list []diagrams.Drawing
	for _, c := range []*strength.Curves{p.Strength.Joist, p.Strength.Beam} {
		if c != nil && len(c.X) > 1 {
			list = append(list, curvesOf(c))
		}
	}
	return list
}

func curvesOf(c *strength.Curves) diagrams.Curves {
	d := diagrams.Curves{Member: c.What, Length: c.X[len(c.X)-1], Case: c.Case}
	for i, x := range c.Supports {
		d.Supports = append(d.Supports, diagrams.Support{Name: fmt.Sprint(i + 1), X: x})
	}
	for i, x := range c.X {
		d.Moment = append(d.Moment, diagrams.MomentAt{X: x, Value: c.Moment[i]})
		d.Deflection = append(d.Deflection, diagrams.DeflectionAt{X: x, Value: c.Deflection[i]})
	}
	return d
}
