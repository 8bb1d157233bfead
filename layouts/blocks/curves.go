package blocks

import (
	"fmt"

	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/calc/strength"
	"pierbook/diagrams"
)

// moments draws the moment and the deflection of the governing joist and beam.
func moments(p *calc.Plan) []diagrams.Drawing {
	var list []diagrams.Drawing
	for _, c := range []*strength.Curves{p.Strength.Joist, p.Strength.Beam} {
		if c != nil && len(c.X) > 1 {
			list = append(list, curvesOf(p, c))
		}
	}
	return list
}

func curvesOf(p *calc.Plan, c *strength.Curves) diagrams.Curves {
	d := diagrams.Curves{Member: c.What, Length: c.X[len(c.X)-1], Case: "the greatest of all load cases at each place"}
	for i, x := range c.Supports {
		d.Supports = append(d.Supports, diagrams.Support{Name: fmt.Sprint(i + 1), X: x})
	}
	for i, x := range c.X {
		d.Moment = append(d.Moment, diagrams.MomentAt{X: x, Value: larger(c.MomentMost[i], c.MomentLeast[i])})
		d.Deflection = append(d.Deflection, diagrams.DeflectionAt{X: x, Value: c.DeflectionMost[i]})
	}
	return d
}

// larger returns the one of two moments that is further from zero.
func larger(a, b measure.Moment) measure.Moment {
	if -b > a {
		return b
	}
	return a
}
