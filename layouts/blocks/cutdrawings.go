package blocks

import (
	"fmt"
	"slices"

	"pierbook/calc"
	"pierbook/calc/cutting"
	"pierbook/calc/frame"
	"pierbook/calc/measure"
	"pierbook/calc/yard"
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
func stickOf(p *calc.Plan, cut yard.Cut, like []cutting.CutStick) diagrams.Stick {
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

// labels makes a slip for every piece: the timber in the order of the saw, then
// the panels and the other parts from sheets.
func labels(p *calc.Plan) []diagrams.Drawing {
	var all diagrams.Labels
	places := placesOf(p)
	for _, cut := range p.Cuts {
		if cut.Result == nil || cut.Estimate {
			continue
		}
		for _, s := range cut.Result.Sticks {
			for _, piece := range s.Cuts {
				label := diagrams.PieceLabel{Name: piece.Name, Long: piece.Length, From: "from " + cut.StickName(s), Place: places[piece.Name]}
				if plannedPosts(p, cut) {
					label.Long, label.From = 0, "cut it from its reading"
				}
				all.Labels = append(all.Labels, label)
			}
		}
	}
	for _, panel := range p.Frame.Surface.Panels {
		all.Labels = append(all.Labels, panelLabel(p, panel))
	}
	for _, plan := range p.Sheets {
		for i, sheet := range plan.Result.Sheets {
			for _, part := range sheet.Placed {
				all.Labels = append(all.Labels, diagrams.PieceLabel{Name: part.Name, Long: part.Length, Wide: part.Width, From: plan.Names([]int{i})})
			}
		}
	}
	var list []diagrams.Drawing
	for _, part := range all.Split() {
		list = append(list, part)
	}
	return list
}

// plannedPosts says whether a section holds posts that are planned only: their
// lengths are for the order, and no saw is set to them.
func plannedPosts(p *calc.Plan, cut yard.Cut) bool {
	return slices.Contains(cut.Uses, "posts") && len(p.Job.Measured.Seats) == 0
}

func panelLabel(p *calc.Plan, panel frame.Panel) diagrams.PieceLabel {
	from := fmt.Sprintf("sheet %d", panel.Sheet)
	if panel.FromOffcut {
		from += ", offcut"
	}
	return diagrams.PieceLabel{Name: panel.Name, Long: panel.Length, Wide: panel.Width, From: from,
		Place: fmt.Sprintf("floor: row %d, starts at %s", panel.Row, panel.X.Print(p.Style))}
}

// joistPlace says between which lines a joist goes, where that matters, and at
// which mark.
func joistPlace(p *calc.Plan, j frame.Joist) string {
	mark, lines := j.Near.Print(p.Style), p.Frame.Lines
	switch {
	case p.Frame.BuildUp.Joist > 0:
		return "joist: near face at " + mark
	case j.Overhang && j.Bay == 0:
		return "past line " + lines[0].Name + ", mark " + mark
	case j.Overhang:
		return "past line " + lines[len(lines)-1].Name + ", mark " + mark
	default:
		return fmt.Sprintf("lines %s to %s, mark %s", lines[j.Bay-1].Name, lines[j.Bay].Name, mark)
	}
}

// placesOf says by name where each piece of timber goes.
func placesOf(p *calc.Plan) map[string]string {
	places := map[string]string{}
	say := func(l measure.Length) string { return l.Print(p.Style) }
	for _, j := range p.Frame.Joists {
		places[j.Name] = joistPlace(p, j)
	}
	for _, b := range p.Frame.Blocking {
		places[b.Name] = fmt.Sprintf("block: from %s, %s across", say(b.From), say(b.Y))
		if b.Turned {
			places[b.Name] = fmt.Sprintf("block along the joists: %s along, from %s", say(b.Y), say(b.From))
		}
	}
	for _, r := range p.Frame.Rims {
		for _, piece := range r.Pieces {
			places[piece.Name] = fmt.Sprintf("rim, side %s: %s to %s", r.Side, say(piece.From), say(piece.To))
		}
	}
	for _, line := range p.Frame.Lines {
		for _, ply := range line.Plies {
			for _, piece := range ply.Pieces {
				places[piece.Name] = fmt.Sprintf("beam, line %s: %s to %s", line.Name, say(piece.From), say(piece.To))
			}
		}
	}
	for _, pier := range p.Frame.Piers {
		places[pier.Name] = "post on pier " + pier.Name
	}
	return places
}
