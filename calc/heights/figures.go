package heights

import (
	"pierbook/calc/figure"
	"pierbook/calc/job"
)

// Figures returns every figure of the heights. The keys are the same whatever is
// known: what has no value yet has none, and prints as a blank.
func (h *Heights) Figures(j *job.Job) []figure.Figure {
	l := &ledger{Ledger: figure.Ledger{Style: j.Style()}, job: j}
	l.floor(h)
	l.posts(h)
	for i := range h.Piers {
		l.pier(h, i)
	}
	l.clash(h)
	l.outlook(h)
	l.measured(h)
	return l.Figures
}

// ledger gathers the figures of the heights.
type ledger struct {
	figure.Ledger
	job *job.Job
}
