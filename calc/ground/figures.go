package ground

import (
	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
)

// Figures returns every figure of the ground. The keys are the same whatever is
// known: what has no value yet has none, and prints as a blank.
func (g *Ground) Figures(j *job.Job) []figure.Figure {
	f := g.frame
	l := &ledger{Ledger: figure.Ledger{Style: j.Style()}, job: j, nodes: g.nodeKeys()}
	l.Figures = g.Book.Figures(j)
	l.surface(g)
	l.floor(g)
	l.posts(g)
	for i := range g.Piers {
		l.pier(g, i)
	}
	l.stone(g)
	l.spoil(g)
	l.clash(g)
	l.Figures = append(l.Figures, levelling.InstrumentFigures(j, f)...)
	l.outlook(g, f)
	l.measured(g)
	return l.Figures
}

// ledger gathers the figures of the ground.
type ledger struct {
	figure.Ledger
	job   *job.Job
	nodes []string // keys of the heights that the surface goes through
}
