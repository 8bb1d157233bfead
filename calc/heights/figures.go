package heights

import (
	"pierbook/calc/figure"
	"pierbook/calc/job"
)

// Figures returns every figure of the heights. The keys are the same whatever is
// known: what has no value yet has none, and prints as a blank.
func (g *Heights) Figures(j *job.Job) []figure.Figure {
	l := &ledger{Ledger: figure.Ledger{Style: j.Style()}, job: j}
	l.floor(g)
	l.posts(g)
	for i := range g.Piers {
		l.pier(g, i)
	}
	l.clash(g)
	l.outlook(g)
	l.measured(g)
	return l.Figures
}

// ledger gathers the figures of the heights.
type ledger struct {
	figure.Ledger
	job *job.Job
}
