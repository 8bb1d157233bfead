package blocks

import (
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
			list = append(list, curvesOf(c, p.Style))
		}
	}
	return list
}

func curvesOf(c *strength.Curves, style measure.Style) diagrams.Curves {
	d := diagrams.Curves{Member: c.What, Length: c.X[len(c.X)-1], Case: c.Case + "; greatest of all loadings " + greatest(c).Print(style)}
	for i, x := range c.Supports {
		d.Supports = append(d.Supports, diagrams.Support{Name: c.Names[i], X: x})
	}
	for i, x := range c.X {
		d.Moment = append(d.Moment, diagrams.MomentAt{X: x, Value: c.Moment[i]})
		d.Deflection = append(d.Deflection, diagrams.DeflectionAt{X: x, Value: c.Deflection[i]})
	}
	return d
}

// greatest returns the greatest moment of all loadings, either way up.
func greatest(c *strength.Curves) measure.Moment {
	var most measure.Moment
	for i := range c.MomentMost {
		most = max(most, c.MomentMost[i], -c.MomentLeast[i])
	}
	return most
}
