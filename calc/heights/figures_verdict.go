package heights

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// The three verdicts on the finished floor.
const (
	asPromised   measure.Word = "as level as promised"
	asPublished  measure.Word = "within the published limits, though not as level as promised"
	beyondLimits measure.Word = "beyond the published limits: find the pier and mend it"
)

// Verdict returns what the readings on the finished floor are worth. Published
// limits hold over 20 ft (6 m); the whole floor is held to them, which is no less
// strict.
func (h *Heights) Verdict(j *job.Job) []figure.Figure {
	f := figure.Figure{Key: "built.verdict", Means: "what the finished floor is", Origin: figure.Computed, Formula: "as promised up to do, within the published limits up to accept",
		From: []string{"built.range", "built.hump", trade.FloorDo.Key(), trade.FloorAccept.Key(), trade.HumpDo.Key(), trade.HumpAccept.Key()}}
	built := h.AsBuilt
	if built == nil {
		return []figure.Figure{f}
	}
	within := func(floor, hump trade.Length) bool {
		return built.Range <= floor.In(j.Units) && built.HumpBy.Abs() <= hump.In(j.Units)
	}
	limit := func(of trade.Length) string { return of.In(j.Units).Print(j.Style()) }
	f.Value = beyondLimits
	switch {
	case within(trade.FloorDo, trade.HumpDo):
		f.Value = asPromised
	case within(trade.FloorAccept, trade.HumpAccept):
		f.Value = asPublished
	}
	f.Working = fmt.Sprintf("whole floor %s against %s and %s; hump %s against %s and %s", built.Range.Print(j.Style()), limit(trade.FloorDo), limit(trade.FloorAccept),
		built.HumpBy.Abs().Print(j.Style()), limit(trade.HumpDo), limit(trade.HumpAccept))
	return []figure.Figure{f}
}
