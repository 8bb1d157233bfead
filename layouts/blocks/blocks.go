// Package blocks makes the parts of a page that come from a job's plan: its
// drawings, its tables, the parts of a step and the little sums for the phone.
// It works nothing out; it picks from the plan what a drawing or a table shows.
package blocks

import (
	"html/template"
	"slices"

	"pierbook/calc"
	"pierbook/content"
)

// maker makes one block of a plan.
type maker func(p *calc.Plan, c content.Call) template.HTML

// Of returns the blocks of a plan. Drawings that cannot be drawn are kept in
// the error that Trouble returns after the binding.
func Of(p *calc.Plan) (content.Blocks, *Trouble) {
	trouble := &Trouble{}
	return content.Blocks{
		"drawing": set(p, drawings(trouble)),
		"table":   tablesOf(p),
		"parts":   set(p, partsOfStep()),
		"form":    set(p, forms),
	}, trouble
}

// tablesOf makes the tables. The one of sheets to throw away looks at all other
// sheets.
func tablesOf(p *calc.Plan) content.Maker {
	m := set(p, tables)
	m.Last = []string{throwAway}
	return m
}

// Trouble holds the first drawing that could not be drawn.
type Trouble struct{ Err error }

func set(p *calc.Plan, makers map[string]maker) content.Maker {
	names := make([]string, 0, len(makers))
	for name := range makers {
		names = append(names, name)
	}
	slices.Sort(names)
	return content.Maker{Names: names, Make: func(c content.Call) template.HTML { return makers[c.Argument](p, c) }}
}
