package calc

import (
	"pierbook/calc/levelling"
	"pierbook/calc/savings"
	"pierbook/calc/trade"
	"pierbook/calc/yard"
)

// register gathers the figures of all parts. Those of the job's keys come last and
// only where no part has a figure of that name: what the order loads as
// stone.loose, say, is worked out, and pages must not print the bare key instead.
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
	p.Figures.Add(p.Heights.Verdict(p.Job)...)
	p.Figures.Add(p.questions()...)
	p.addSets()
	p.Figures.Add(trade.Figures(p.Job.Units)...)
	for _, f := range p.Job.Figures() {
		if _, taken := p.Figures.Get(f.Key); !taken {
			p.Figures.Add(f)
		}
	}
}
