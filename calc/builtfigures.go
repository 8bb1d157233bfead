package calc

import (
	"fmt"
	"slices"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// The three verdicts on the finished floor.
const (
	asPromised   measure.Word = "as level as promised"
	asPublished  measure.Word = "within the published limits, though not as level as promised"
	beyondLimits measure.Word = "beyond the published limits: find the pier and mend it"
)

// builtFigures say what the readings on the finished floor are worth. Published
// limits hold over 20 ft (6 m); the whole floor is held to them, which is no less
// strict.
func (p *Plan) builtFigures() []figure.Figure {
	f := figure.Figure{Key: "built.verdict", Means: "what the finished floor is", Origin: figure.Computed, Formula: "as promised up to do, within the published limits up to accept",
		From: []string{"built.range", "built.hump", "trade.floor_do", "trade.floor_accept", "trade.hump_do", "trade.hump_accept"}}
	built := p.Ground.AsBuilt
	if built == nil {
		return []figure.Figure{f}
	}
	within := func(floor, hump string) bool {
		return built.Range <= p.tradeLength(floor) && built.HumpBy.Abs() <= p.tradeLength(hump)
	}
	f.Value = beyondLimits
	switch {
	case within("trade.floor_do", "trade.hump_do"):
		f.Value = asPromised
	case within("trade.floor_accept", "trade.hump_accept"):
		f.Value = asPublished
	}
	f.Working = fmt.Sprintf("whole floor %s against %s and %s; hump %s against %s and %s", built.Range.Print(p.Style), p.tradeLength("trade.floor_do").Print(p.Style), p.tradeLength("trade.floor_accept").Print(p.Style),
		built.HumpBy.Abs().Print(p.Style), p.tradeLength("trade.hump_do").Print(p.Style), p.tradeLength("trade.hump_accept").Print(p.Style))
	return []figure.Figure{f}
}

// tradeLength returns a length of the trade in the job's system.
func (p *Plan) tradeLength(key string) measure.Length {
	figures := tradeFigures(p.Job)
	i := slices.IndexFunc(figures, func(f figure.Figure) bool { return f.Key == key })
	return figures[i].Value.(measure.Length)
}
