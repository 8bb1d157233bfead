package calc

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
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
		From: []string{"built.range", "built.hump", trade.FloorDo.Key(), trade.FloorAccept.Key(), trade.HumpDo.Key(), trade.HumpAccept.Key()}}
	built := p.Heights.AsBuilt
	if built == nil {
		return []figure.Figure{f}
	}
	within := func(floor, hump trade.Length) bool {
		return built.Range <= floor.In(p.Job.Units) && built.HumpBy.Abs() <= hump.In(p.Job.Units)
	}
	limit := func(of trade.Length) string { return of.In(p.Job.Units).Print(p.Style) }
	f.Value = beyondLimits
	switch {
	case within(trade.FloorDo, trade.HumpDo):
		f.Value = asPromised
	case within(trade.FloorAccept, trade.HumpAccept):
		f.Value = asPublished
	}
	f.Working = fmt.Sprintf("whole floor %s against %s and %s; hump %s against %s and %s", built.Range.Print(p.Style), limit(trade.FloorDo), limit(trade.FloorAccept),
		built.HumpBy.Abs().Print(p.Style), limit(trade.HumpDo), limit(trade.HumpAccept))
	return []figure.Figure{f}
}
