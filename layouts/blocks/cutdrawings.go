package blocks

import (
	"pierbook/calc"
	"pierbook/calc/cutting"
	"pierbook/diagrams"
)

// sticksOnSheet are as many sticks as one drawing holds.
const sticksOnSheet = 9

// sticks draws each way of cutting once, with the sticks that are cut that way.
func sticks(p *calc.Plan) []diagrams.Drawing {
	var list []diagrams.Drawing
	for _, cut := range p.Cuts {
		var all []diagrams.Stick
		for _, like := range cut.Alike() {
			all = append(all, stickOf(p, cut, like))
		}
		for part := 0; part*sticksOnSheet < len(all); part++ {
			end := min(len(all), (part+1)*sticksOnSheet)
			list = append(list, diagrams.Sticks{Section: cut.Section.Size, Part: part + 1, Sticks: all[part*sticksOnSheet : end]})
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
