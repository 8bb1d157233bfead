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
		"sticks":       stickTable,
		"sheet-parts":  sheetPartTable,
		"settings":     settingTable,
		"proofs":       proofTable,
		"assumptions":  assumptionTable,
		"levels":       levelTable,
		"routes":       routeTable,
		"instrument":   instrumentTable,
		"diagonals":    diagonalTable,
		"racking":      rackingTable,
		"beam-racking": beamRackingTable,
		"running":      runningTable,
		"savings":      savingTable,
		"changes":      changeTable,
		"price":        priceTable,
		"next":         nextTable,
		"chances":      chanceTable,
		"freedom":      freedomTable,
		"stands":       standTable,
		"stand-errors": standErrorTable,
		"drops":        dropTable,
		"taped":        tapedTable,
		"odds":         oddsTable,
		"humps":        humpTable,
		"arithmetic":   arithmeticTable,
		"second":       secondTable,
		"ways":         wayTable,
		"six":          sixTable,
		"moves":        moveTable,
		"finished":     finishedTable,
		"pier-checks":  pierCheckTable,
		"beam-checks":  beamCheckTable,
	} {
		makers[name] = func(p *calc.Plan, c content.Call) template.HTML { return make(p).For(c) }
	}
	makers["workings"] = workings
	makers[throwAway] = throwAwayTable
	return makers
}()
