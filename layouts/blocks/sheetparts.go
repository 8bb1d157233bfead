package blocks

import (
	"strings"

	"pierbook/calc"
	"pierbook/calc/cutting"
	"pierbook/calc/measure"
	"pierbook/content"
	"pierbook/diagrams"
)

// Parts other than the floor that are cut from sheets.

// sheetPartTable says which sheet yields which parts, and where to saw, strip by
// strip.
func sheetPartTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Sheet"), words("Parts"), words("Saw in this order"), words("Cut")}}
	for _, plan := range p.Sheets {
		g := content.Group{Name: plan.Name + ", " + plan.Good.Length.Print(p.Style) + " × " + plan.Good.Width.Print(p.Style) + ": " + plan.Proof()}
		for _, like := range plan.Alike() {
			parts := make([]string, len(like))
			for i, number := range like {
				parts[i] = partList(p, plan.Result.Sheets[number], i == 0)
			}
			saw := sawWords(plan.Result.Sheets[like[0]].Saw(plan.Good.Length, plan.Good.Width), p.Style)
			g.Rows = append(g.Rows, []content.Cell{head(strings.TrimPrefix(plan.Names(like), plan.Name+" ")), text(strings.Join(parts, "; ")), text(saw), tick()})
		}
		t.Groups = append(t.Groups, g)
	}
	t.Note = "Rip: along the grain. Crosscut: across it. In brackets the cuts within the strip just taken off."
	return t
}

// partList names the parts of a sheet, those of one size together, with their
// sizes where they are not the same as on the sheet before.
func partList(p *calc.Plan, sheet cutting.Sheet, sizes bool) string {
	const few = 3
	var groups []string
	for at := 0; at < len(sheet.Placed); {
		first, to := sheet.Placed[at], at+1
		for to < len(sheet.Placed) && sheet.Placed[to].Length == first.Length && sheet.Placed[to].Width == first.Width {
			to++
		}
		names := make([]string, to-at)
		for i := range names {
			names[i] = sheet.Placed[at+i].Name
		}
		words := strings.Join(names, ", ")
		if len(names) > few {
			words = names[0] + " to " + names[len(names)-1]
		}
		if sizes {
			words += " " + first.Length.Print(p.Style) + "\u00a0×\u00a0" + first.Width.Print(p.Style)
		}
		groups = append(groups, words)
		at = to
	}
	return strings.Join(groups, "; ")
}

// sawWords says the cuts in their order: "rip at 14″, at 28 1/8″ (crosscut at 20″)".
func sawWords(cuts []cutting.SheetCut, style measure.Style) string {
	var parts []string
	said := ""
	for _, cut := range cuts {
		way, words := "crosscut ", "at "+cut.At.Print(style)
		if cut.Rip {
			way = "rip "
		}
		if cut.Rest {
			words = "the rest"
			if len(parts) == 0 {
				words = "the whole"
			}
		} else if way != said {
			said = way
			words = way + words
		}
		if within := sawWords(cut.Within, style); within != "" {
			words += " (" + within + ")"
		}
		parts = append(parts, words)
	}
	return strings.Join(parts, ", ")
}

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
