package diagrams

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/diagrams/kit"
)

// faults returns what makes a sheet hard to read: words off the sheet or over
// one another or over an arrowhead, ink off the sheet, a sheet wider than the page.
func faults(r kit.Record) []string {
	var list []string
	page := kit.Box{Right: 171.001, Bottom: 251}
	if !page.Holds(r.Sheet) {
		list = append(list, "the sheet is larger than the page")
	}
	if !r.Sheet.Grown(0.01).Holds(r.Ink) {
		list = append(list, "ink leaves the sheet")
	}
	for i, l := range r.Labels {
		if !r.Sheet.Holds(l.Box) {
			list = append(list, "off the sheet: "+l.Words)
		}
		for _, m := range r.Labels[:i] {
			if l.Box.Grown(-0.05).Meets(m.Box.Grown(-0.05)) {
				list = append(list, "one over another: "+m.Words+" | "+l.Words)
			}
		}
		for _, a := range r.Arrows {
			if l.Box.Grown(-0.3).Meets(a.Grown(-0.1)) {
				list = append(list, "over an arrowhead: "+l.Words)
			}
		}
	}
	return list
}

func TestEveryLabelStandsClearOnItsSheet(t *testing.T) {
	for _, j := range sites {
		for _, d := range everyDrawing(j) {
			t.Run(j.name+"/"+d.About().Name, func(t *testing.T) {
				assert.Empty(t, faults(d.sheet(j.style).Record()))
			})
		}
	}
}
