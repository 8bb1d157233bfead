package ground

import (
	"fmt"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Figures returns every figure of the ground. The keys are the same whatever is
// known: what has no value yet has none, and prints as a blank.
func (g *Ground) Figures(j *job.Job) []figure.Figure {
	f := g.frame
	l := &ledger{job: j, style: j.Style(), nodes: g.nodeKeys()}
	l.readings(g)
	l.surface(g)
	l.floor(g)
	l.posts(g)
	for i := range g.Piers {
		l.pier(g, i)
	}
	l.stone(g)
	l.spoil(g)
	l.clash(g)
	l.outlook(g, f)
	l.measured(g)
	return l.figures
}

// ledger gathers figures.
type ledger struct {
	job     *job.Job
	style   measure.Style
	nodes   []string // keys of the heights that the surface goes through
	figures []figure.Figure
}

func (l *ledger) add(f figure.Figure) {
	if f.Origin == "" {
		f.Origin = figure.Computed
	}
	l.figures = append(l.figures, f)
}

// blank adds keys without a value, with what each of them is.
func (l *ledger) blank(keysAndMeanings ...string) {
	for i := 0; i < len(keysAndMeanings); i += 2 {
		l.add(figure.Figure{Key: keysAndMeanings[i], Means: keysAndMeanings[i+1], Formula: "nothing in this job calls for it, or what it needs was not read yet"})
	}
}

func (l *ledger) print(q measure.Quantity) string { return q.Print(l.style) }

// up and down print a length the safe way, as the figure itself is printed.
func (l *ledger) up(q measure.Quantity) string   { return l.rounded(q, measure.Up) }
func (l *ledger) down(q measure.Quantity) string { return l.rounded(q, measure.Down) }

func (l *ledger) rounded(q measure.Quantity, way measure.Rounding) string {
	style := l.style
	style.Rounding = way
	return q.Print(style)
}

// term is one part of a sum as it is printed.
type term struct {
	minus bool
	value measure.Quantity
}

func plus(q measure.Quantity) term  { return term{value: q} }
func minus(q measure.Quantity) term { return term{value: q, minus: true} }

// sum prints terms with their signs and what they make: "8″ − 3″ = 5″".
func (l *ledger) sum(result measure.Quantity, terms ...term) string {
	var b strings.Builder
	for i, t := range terms {
		switch {
		case i == 0 && t.minus:
			b.WriteString("−")
		case i > 0 && t.minus:
			b.WriteString(" − ")
		case i > 0:
			b.WriteString(" + ")
		}
		text := l.print(t.value)
		if i > 0 && strings.HasPrefix(text, "−") {
			text = "(" + text + ")"
		}
		b.WriteString(text)
	}
	fmt.Fprintf(&b, " = %s", l.print(result))
	return b.String()
}
