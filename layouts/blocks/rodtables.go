package blocks

import (
	"pierbook/calc"
	"pierbook/calc/heights"
	"pierbook/content"
)

// Tables of rod readings that are taken once a height is known. What is expected
// is given over or under the day's reading on the bench mark, since the
// instrument stands elsewhere every day.

// plannedHole is the hole before anything was measured on the pier, nil before
// the heights are known.
func plannedHole(pier heights.Pier) *heights.Hole {
	if pier.Planned != nil {
		return pier.Planned
	}
	return pier.Hole
}

func rodUnit(p *calc.Plan) string    { return p.Figures.Text("unit.rod", p.Style) }
func lengthUnit(p *calc.Plan) string { return p.Figures.Text("unit.length", p.Style) }

// rodWords heads a column of blanks with the unit of the rod.
func rodWords(p *calc.Plan, text string) content.Column {
	return content.Column{Text: text, Unit: rodUnit(p)}
}

// rodNumber is the same for a column of numbers.
func rodNumber(p *calc.Plan, text string) content.Column {
	c := rodWords(p, text)
	c.Align = content.Right
	return c
}

// lengthWords heads a column of blanks with the unit of lengths.
func lengthWords(p *calc.Plan, text string) content.Column {
	return content.Column{Text: text, Unit: lengthUnit(p)}
}
