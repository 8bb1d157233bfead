package calc

import (
	_ "embed"
	"fmt"
	"strings"
	"sync"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// tradeText holds the numbers of the trade that pages quote: one a line, with
// key, imperial value, metric value, meaning and source between bars.
//
//go:embed trade.txt
var tradeText string

// tradeRow is one number of the trade in both systems.
type tradeRow struct {
	key, means, source string
	imperial, metric   measure.Quantity
	memory             bool
}

var tradeRows = sync.OnceValue(func() []tradeRow {
	var rows []tradeRow
	for line := range strings.Lines(tradeText) {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		parts := strings.Split(line, " | ")
		if len(parts) != 5 {
			panic("calc: trade.txt: " + line)
		}
		rows = append(rows, tradeRow{key: parts[0], imperial: tradeValue(parts[1]), metric: tradeValue(parts[2]), means: parts[3], source: parts[4],
			memory: strings.Contains(parts[4], "memory")})
	}
	return rows
})

// tradeValue reads a length, a mass or a plain count.
func tradeValue(text string) measure.Quantity {
	if strings.HasSuffix(text, "lb") || strings.HasSuffix(text, "kg") {
		if m, err := measure.ParseMass(text); err == nil {
			return m
		}
	}
	if l, err := measure.ParseLength(text); err == nil {
		return l
	}
	var n int
	if _, err := fmt.Sscanf(text, "%d", &n); err == nil {
		return measure.Count(n)
	}
	panic("calc: trade.txt: " + text + " is not a value")
}

// tradeFigures returns the numbers of the trade in the job's system.
func tradeFigures(j *job.Job) []figure.Figure {
	var figures []figure.Figure
	for _, row := range tradeRows() {
		value := row.imperial
		if j.Units == measure.Metric {
			value = row.metric
		}
		figures = append(figures, figure.Figure{Key: row.key, Means: row.means, Value: value, Origin: figure.Assumed, Source: row.source, Memory: row.memory})
	}
	return figures
}
