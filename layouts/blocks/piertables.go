package blocks

import (
	"fmt"

	"pierbook/calc"
	"pierbook/calc/heights"
	"pierbook/content"
)

// Tables with a row for each pier, grouped by beam line.

// pierRow makes the row of one pier; known is nil before the heights are.
type pierRow func(pier heights.PierHeights) []content.Cell

func byLine(p *calc.Plan, row pierRow) []content.Group {
	groups := make([]content.Group, len(p.Frame.Lines))
	for i, line := range p.Frame.Lines {
		groups[i].Name = "Line " + line.Name
	}
	for i, pier := range p.Frame.Piers {
		g := &groups[pier.Line]
		g.Rows = append(g.Rows, row(p.Heights.Piers[i]))
	}
	return groups
}

func runningTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Line"), number("y, centre")}, Size: content.Working,
		Note: "Both from the frame corner at the hook end: hook the tape once and mark them all."}
	n := p.Frame.PerLine(0)
	for i := range n {
		t.Head = append(t.Head, number(fmt.Sprintf("x of %d", i+1)))
	}
	for i, line := range p.Frame.Lines {
		row := []content.Cell{head(line.Name), c.length(line.Y)}
		for _, pier := range p.Frame.Piers {
			if pier.Line == i {
				row = append(row, c.length(pier.X))
			}
		}
		t.Rows = append(t.Rows, row)
	}
	if n > 6 {
		return runningByPier(p)
	}
	return t
}

// runningByPier turns the table where a line has too many piers for its width.
func runningByPier(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Pier"), number("x"), number("y")}, Size: content.Working}
	t.Groups = byLine(p, func(pier heights.PierHeights) []content.Cell {
		return []content.Cell{head(pier.Name), c.length(pier.X), c.length(pier.Y)}
	})
	return t
}
