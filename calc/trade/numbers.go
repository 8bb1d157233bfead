package trade

import (
	"strconv"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Length, Mass and Count name a number of the trade of that kind by its key in
// tables/numbers.txt, without the "trade." under which pages print it.
type (
	Length string
	Mass   string
	Count  string
)

// number is one row of the table of numbers.
type number struct {
	key, means, source string
	imperial, metric   measure.Quantity
	memory             bool
}

func (n *number) in(system measure.System) measure.Quantity {
	if system == measure.Metric {
		return n.metric
	}
	return n.imperial
}

// In returns the length in a system.
func (k Length) In(system measure.System) measure.Length {
	return numberOf(string(k)).in(system).(measure.Length)
}

// In returns the mass in a system.
func (k Mass) In(system measure.System) measure.Mass {
	return numberOf(string(k)).in(system).(measure.Mass)
}

// Whole returns the count, which is the same in both systems.
func (k Count) Whole() int { return int(numberOf(string(k)).imperial.(measure.Count)) }

// Key returns the key of the figure that pages print, for what is worked out from it.
func (k Length) Key() string { return prefix + string(k) }

// Key returns the key of the figure that pages print, for what is worked out from it.
func (k Mass) Key() string { return prefix + string(k) }

// Source returns the document, edition and clause of the number.
func (k Length) Source() string { return numberOf(string(k)).source }

// Source returns the document, edition and clause of the number.
func (k Mass) Source() string { return numberOf(string(k)).source }

const prefix = "trade."

func numberOf(key string) *number {
	n := facts().byKey[prefix+key]
	if n == nil {
		panic("trade: tables/numbers.txt has no " + prefix + key)
	}
	return n
}

func readNumbers(rows []row) []number {
	list := make([]number, len(rows))
	for i, r := range rows {
		list[i] = number{key: r.text("key"), means: r.text("meaning"), source: r.text("source"),
			imperial: read(r, "imperial", parseNumber), metric: read(r, "metric", parseNumber), memory: strings.Contains(r.text("source"), "memory")}
	}
	return list
}

// parseNumber reads a length, a mass or a plain count.
func parseNumber(text string) (measure.Quantity, error) {
	if n, err := strconv.Atoi(text); err == nil {
		return measure.Count(n), nil
	}
	if strings.HasSuffix(text, "lb") || strings.HasSuffix(text, "kg") {
		return measure.ParseMass(text)
	}
	return measure.ParseLength(text)
}

// Figures returns the numbers of the trade in a system, as pages print them.
func Figures(system measure.System) []figure.Figure {
	list := make([]figure.Figure, 0, len(facts().numbers))
	for i := range facts().numbers {
		n := &facts().numbers[i]
		list = append(list, figure.Figure{Key: n.key, Means: n.means, Value: n.in(system), Origin: figure.Assumed, Source: n.source, Memory: n.memory})
	}
	return list
}
