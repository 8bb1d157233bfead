package blocks

import (
	"pierbook/calc"
	"pierbook/diagrams"
)

// sheetCuts draws each way of cutting a sheet once.
func sheetCuts(p *calc.Plan) []diagrams.Drawing {
	var list []diagrams.Drawing
	for _, plan := range p.Sheets {
		d := diagrams.SheetCuts{Name: plan.Name, Length: plan.Good.Length, Width: plan.Good.Width}
		for _, like := range plan.Alike() {
			one := diagrams.CutSheet{Name: plan.Names(like)}
			first, last := plan.Result.Sheets[like[0]], plan.Result.Sheets[like[len(like)-1]]
			for i, part := range first.Placed {
				label := part.Name
				if other := last.Placed[i].Name; other != label {
					label += " … " + other
				}
				one.Parts = append(one.Parts, diagrams.CutPart{Label: label, X: part.X, Y: part.Y, Length: part.Length, Width: part.Width})
			}
			d.Sheets = append(d.Sheets, one)
		}
		for _, part := range d.Split() {
			list = append(list, part)
		}
	}
	return list
}
