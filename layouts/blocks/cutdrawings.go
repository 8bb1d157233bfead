package blocks

import (
	"fmt"

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
		for _, s := range sticksOf(cut) {
			all = append(all, stickOf(p, cut, s))
		}
		for part := 0; part*sticksOnSheet < len(all); part++ {
			end := min(len(all), (part+1)*sticksOnSheet)
			list = append(list, diagrams.Sticks{Section: cut.Section.Size, Part: part + 1, Sticks: all[part*sticksOnSheet : end]})
		}
	}
	return list
}

func stickOf(p *calc.Plan, cut calc.Cut, s cutting.CutStick) diagrams.Stick {
	d := diagrams.Stick{Name: cut.StickName(s), Stock: s.Length, Trim: s.Trim, Kerf: p.Job.Yard.Kerf}
	for i, piece := range s.Cuts {
		label := piece.Name
		if label == "" {
			label = fmt.Sprintf("%d", i+1)
		}
		d.Pieces = append(d.Pieces, diagrams.StickPiece{Label: label, Long: piece.Length})
	}
	return d
}
