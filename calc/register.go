package calc

import (
	"pierbook/calc/figure"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
	"pierbook/calc/savings"
	"pierbook/calc/trade"
	"pierbook/calc/yard"
)

// register gathers the figures of all parts. A part that works out a figure
// under the path of a key of the job, such as the order's own stone.loose, has
// the word; the key of the job then has no figure.
func (p *Plan) register() {
	p.Figures.Add(p.Frame.Figures(p.Job)...)
	p.Figures.Add(p.Book.Figures(p.Job)...)
	p.Figures.Add(p.Ground.Figures(p.Job, p.Frame, p.Book)...)
	p.Figures.Add(p.Heights.Figures(p.Job)...)
	p.Figures.Add(p.Earthwork.Figures(p.Job, p.Ground, p.Heights.Piers)...)
	p.Figures.Add(levelling.InstrumentFigures(p.Job, p.Frame)...)
	p.Figures.Add(p.SetOut.Figures(p.Job)...)
	p.Figures.Add(p.Strength.Figures()...)
	p.Figures.Add(yard.Figures(p.Cuts, p.Job, p.Heights)...)
	p.Figures.Add(yard.SheetFigures(p.Sheets, p.Job)...)
	p.Figures.Add(p.Order.Figures(p.Style)...)
	p.Figures.Add(savings.Figures(p.tried, p.Style)...)
	p.Figures.Add(p.Weekend.Figures(p.Job)...)
	p.Figures.Add(p.wordFigures()...)
	p.Figures.Add(p.tenthFigures()...)
	p.Figures.Add(p.pageFigures()...)
	p.Figures.Add(p.builtFigures()...)
	p.Figures.Add(p.flags()...)
	p.addSets()
	p.Figures.Add(trade.Figures(p.Job.Units)...)
	for _, f := range jobFigures(p.Job) {
		if _, taken := p.Figures.Get(f.Key); !taken {
			p.Figures.Add(f)
		}
	}
}

// yes returns a figure that pages ask with {when}, the rule of its answer and the
// figures that it is answered from.
func yes(key, means string, holds bool, rule string, from ...string) figure.Figure {
	word := measure.Word("no")
	if holds {
		word = "yes"
	}
	return figure.Figure{Key: key, Means: means, Value: word, Origin: figure.Computed, Formula: rule, Working: string(word), From: from}
}
