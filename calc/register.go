package calc

import (
	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// register gathers the figures of all parts.
func (p *Plan) register() {
	p.Figures.Add(jobFigures(p.Job)...)
	p.Figures.Add(p.Frame.Figures(p.Job)...)
	p.Figures.Add(p.Ground.Figures(p.Job)...)
	p.Figures.Add(p.SetOut.Figures(p.Job)...)
	p.Figures.Add(p.Strength.Figures()...)
	p.Figures.Add(p.cutFigures()...)
	p.Figures.Add(p.Order.Figures(p.Style)...)
	p.Figures.Add(p.Weekend.Figures()...)
	p.Figures.Add(p.flags()...)
}

// yes returns a figure that pages ask with {when}.
func yes(key, means string, holds bool) figure.Figure {
	word := measure.Word("no")
	if holds {
		word = "yes"
	}
	return figure.Figure{Key: key, Means: means, Value: word, Origin: figure.Computed}
}
