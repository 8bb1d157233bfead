package blocks

import (
	"pierbook/calc"
	"pierbook/calc/cutting"
	"pierbook/diagrams"
)

// sticks draws each way of cutting once, with the sticks that are cut that way.
func sticks(p *calc.Plan) []diagrams.Drawing {
	var list []diagrams.Drawing
	for _, cut := range p.Cuts {
		var all []diagrams.Stick
		for _, like := range cut.Alike() {
			all = append(all, stickOf(p, cut, like))
		}
		for _, part := range (diagrams.Sticks{Section: cut.Section.Size, Sticks: all}).Split(p.Style) {
			list = append(list, part)
		}
	}
	return list
}

// stickOf draws sticks that are cut alike; each piece bears the name it has on
// the first of them, or the first and last names when there are several.
func stickOf(p *calc.Plan, cut calc.Cut, like []cutting.CutStick) diagrams.Stick {
	first, last := like[0], like[len(like)-1]
	d := diagrams.Stick{Name: cut.StickNames(like), Stock: first.Length, Trim: first.Trim, Kerf: p.Job.Yard.Kerf}
	for i, piece := range first.Cuts {
		label := piece.Name
		if len(like) > 1 && last.Cuts[i].Name != label {
			label += " … " + last.Cuts[i].Name
		}
		d.Pieces = append(d.Pieces, diagrams.StickPiece{Label: label, Long: piece.Length})
	}
	return d
}
