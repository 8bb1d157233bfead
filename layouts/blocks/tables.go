package blocks

import (
	"html/template"

	"pierbook/calc"
	"pierbook/content"
)

// tabled makes a table of a plan.
type tabled func(p *calc.Plan) content.Table

// tables are the makers of all tables by name.
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
