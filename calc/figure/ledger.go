package figure

import (
	"fmt"
	"strings"

	"pierbook/calc/measure"
)

// Ledger gathers the figures of one part of the calculation, and prints what
// stands in their workings as the figures themselves are printed.
type Ledger struct {
	Style   measure.Style
	Figures []Figure
}

// Add enters a figure; one without an origin is computed.
func (l *Ledger) Add(f Figure) {
	if f.Origin == "" {
		f.Origin = Computed
	}
	l.Figures = append(l.Figures, f)
}

// Blank enters keys without a value, each followed by what it is: every job has
// the same keys, whatever is known yet, so that a page may name any of them.
func (l *Ledger) Blank(keysAndMeanings ...string) {
	for i := 0; i < len(keysAndMeanings); i += 2 {
		l.Add(Figure{Key: keysAndMeanings[i], Means: keysAndMeanings[i+1], Formula: "nothing in this job calls for it, or what it needs was not read yet"})
	}
}

// Word enters a word that a comparison came to; an empty one has no value.
func (l *Ledger) Word(key, means, value string, from []string) {
	f := Figure{Key: key, Means: means, Formula: "taken from the comparison of all piers", Working: value, From: from}
	if value != "" {
		f.Value = measure.Word(value)
	}
	l.Add(f)
}

// Print prints a quantity to the nearest mark.
func (l *Ledger) Print(q measure.Quantity) string { return q.Print(l.Style) }

// Up prints a quantity that must not be understated.
func (l *Ledger) Up(q measure.Quantity) string { return l.rounded(q, measure.Up) }

// Down prints a quantity that must not be overstated.
func (l *Ledger) Down(q measure.Quantity) string { return l.rounded(q, measure.Down) }

func (l *Ledger) rounded(q measure.Quantity, way measure.Rounding) string {
	style := l.Style
	style.Rounding = way
	return q.Print(style)
}

// Term is one part of a sum as it is printed.
type Term struct {
	minus bool
	value measure.Quantity
}

// Plus is a term that is added.
func Plus(q measure.Quantity) Term { return Term{value: q} }

// Minus is a term that is taken away.
func Minus(q measure.Quantity) Term { return Term{value: q, minus: true} }

// Sum prints terms with their signs and what they make: "8″ − 3″ = 5″".
func (l *Ledger) Sum(result measure.Quantity, terms ...Term) string {
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
		text := l.Print(t.value)
		if i > 0 && strings.HasPrefix(text, "−") {
			text = "(" + text + ")"
		}
		b.WriteString(text)
	}
	fmt.Fprintf(&b, " = %s", l.Print(result))
	return b.String()
}
