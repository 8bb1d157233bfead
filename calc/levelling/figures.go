package levelling

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Figures returns every figure of the level book. The keys are the same
// whatever is known: without a book, nil, they have no value and print as blanks.
func (b *Book) Figures(j *job.Job) []figure.Figure {
	l := &ledger{Ledger: figure.Ledger{Style: j.Style()}, job: j}
	l.readings(b)
	return l.Figures
}

// InstrumentFigures returns what the checks of the instrument may show and what
// they came to, and where it stands best.
func InstrumentFigures(j *job.Job, f *frame.Frame) []figure.Figure {
	l := &ledger{Ledger: figure.Ledger{Style: j.Style()}, job: j}
	l.checks()
	l.checked()
	l.stands(f)
	return l.Figures
}

// ledger gathers the figures of the levelling.
type ledger struct {
	figure.Ledger
	job *job.Job
}

func (l *ledger) stands(f *frame.Frame) {
	stands := Stands(l.job, f)
	if len(stands) == 0 {
		l.Blank("stand.where", "best place for the instrument", "stand.error", "error the instrument may make at the farthest pier", "stand.spread", "errors of the piers among themselves")
		return
	}
	best := stands[0]
	tool := l.job.Ground.Instrument
	l.Word("stand.where", "best place for the instrument", best.Where, []string{"ground.instrument.error"})
	l.Add(figure.Figure{Key: "stand.error", Means: "error the instrument may make at the farthest pier, " + best.Worst.Pier, Value: measure.Small(best.Worst.Error),
		Formula: "error = distance × error of the class ÷ the distance it is given for",
		Working: fmt.Sprintf("%s × %s ÷ %s = %s", l.Print(best.Worst.Distance), l.Print(tool.Error), l.Print(tool.Over), l.Print(measure.Small(best.Worst.Error))),
		From:    []string{"ground.instrument.error"}})
	l.Add(figure.Figure{Key: "stand.spread", Means: "errors of the piers among themselves", Value: measure.Small(best.Spread),
		Formula: "error at the farthest pier − error at the nearest", Working: l.Print(measure.Small(best.Spread)), From: []string{"stand.error"}})
}
