package blocks

import (
	"html/template"

	"pierbook/calc"
	"pierbook/content"
)

// tabled makes a table of a plan.
type tabled func(p *calc.Plan) content.Table

// tables are the makers of the tables that no page can write as rows of a set.
// Assumptions and changes tell of the figures themselves; the instrument's checks
// print workings; running, stand-errors and the grids of ratios have as many
// columns as the job has piers or kinds of check; workings are no table; what to
// throw away looks at all other sheets. The parts of a step are one table on many
// sheets, and stand once, in parttables.go.
var tables = func() map[string]maker {
	makers := map[string]maker{}
	for name, make := range map[string]tabled{
		"assumptions":  assumptionTable,
		"instrument":   instrumentTable,
		"running":      runningTable,
		"changes":      changeTable,
		"stand-errors": standErrorTable,
		"pier-checks":  pierCheckTable,
		"beam-checks":  beamCheckTable,
	} {
		makers[name] = func(p *calc.Plan, c content.Call) template.HTML { return make(p).For(c) }
	}
	makers["workings"] = workings
	makers[throwAway] = throwAwayTable
	return makers
}()
