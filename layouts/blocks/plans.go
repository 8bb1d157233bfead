package blocks

import (
	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/calc/setout"
	"pierbook/diagrams"
)

// Drawings from above.

func planDrawing(p *calc.Plan) []diagrams.Drawing {
	s := p.Frame.Sections
	return []diagrams.Drawing{diagrams.Plan{
		Grid: gridOf(p), Block: p.Job.Block.Base, Post: s.Post.Width, Beam: s.Beam.Across(), Joist: s.Joist.Width,
		Joists: joistCentres(p), Door: doorOf(p), Corner: p.Job.Platform.Origin.Corner,
	}}
}

func rectangles(p *calc.Plan) []diagrams.Drawing {
	first := p.Frame.Corners()[0]
	return []diagrams.Drawing{diagrams.Rectangles{
		Frame: rectangleOf(p.SetOut.Frame), Piers: rectangleOf(p.SetOut.Piers), LinesGoLeft: gridOf(p).LinesGoLeft,
		AcrossToPier: first.X, ForwardToPier: first.Y,
	}}
}

func squaring(p *calc.Plan) []diagrams.Drawing {
	t := p.SetOut.Triangle
	return []diagrams.Drawing{diagrams.Squaring{
		Frame: rectangleOf(p.SetOut.Frame), LinesGoLeft: gridOf(p).LinesGoLeft,
		AlongLength: t.AlongLength, AlongWidth: t.AlongWidth, Across: t.Across,
	}}
}

func rectangleOf(r setout.Rectangle) diagrams.Rectangle {
	return diagrams.Rectangle{Corners: r.Corners, Length: r.Length, Width: r.Width, Diagonal: r.Diagonal()}
}

func stringLines(p *calc.Plan) []diagrams.Drawing {
	return []diagrams.Drawing{diagrams.Strings{Grid: gridOf(p), SetBack: p.SetOut.Boards.Offset, Board: p.SetOut.Boards.BoardLong, Hole: holeSide(p)}}
}

func joistMarks(p *calc.Plan) []diagrams.Drawing {
	d := diagrams.JoistMarks{On: "each rim", Length: p.Frame.Length}
	if len(p.Frame.Rims) == 0 {
		d.On = "each beam line"
	}
	for _, j := range p.Frame.Joists {
		if j.Bay == 1 {
			d.Joists = append(d.Joists, diagrams.JoistMark{Number: j.Number, Near: j.Near, Before: j.MarkSide == "before"})
		}
	}
	return []diagrams.Drawing{d}
}

func panels(p *calc.Plan) []diagrams.Drawing {
	s := p.Frame.Surface
	if len(s.Panels) == 0 {
		return nil
	}
	d := diagrams.Panels{Length: p.Frame.Length, Width: p.Frame.Width, LinesGoLeft: gridOf(p).LinesGoLeft, Joists: joistCentres(p), Gap: p.Job.Platform.Surface.Gap, Openings: voids(p)}
	if p.Job.Platform.Surface.Edge == "tongue_and_groove" {
		d.Note = "tongue towards line " + p.Frame.Lines[len(p.Frame.Lines)-1].Name
	}
	for _, piece := range s.Panels {
		d.Panels = append(d.Panels, diagrams.PanelPiece{Name: piece.Name, X: piece.X, Y: piece.Y, Length: piece.Length, Width: piece.Width,
			Cut: piece.CutLength || piece.Ripped, FromOffcut: piece.FromOffcut})
	}
	return []diagrams.Drawing{d}
}

func boards(p *calc.Plan) []diagrams.Drawing {
	if len(p.Frame.Surface.Boards) == 0 {
		return nil
	}
	d := diagrams.Boards{Length: p.Frame.Length, Width: p.Frame.Width, LinesGoLeft: gridOf(p).LinesGoLeft, Joists: joistCentres(p), Gap: p.Job.Platform.Surface.Gap, Openings: voids(p)}
	for _, b := range p.Frame.Surface.Boards {
		run := diagrams.BoardRun{Y: b.Y, Width: b.Width, Ripped: b.Ripped}
		for _, piece := range b.Pieces {
			run.Ends = append(run.Ends, piece.To)
		}
		d.Boards = append(d.Boards, run)
	}
	return []diagrams.Drawing{d}
}

// voids are the openings in the floor as drawings show them.
func voids(p *calc.Plan) []diagrams.Void {
	var list []diagrams.Void
	for _, o := range p.Frame.Openings {
		list = append(list, diagrams.Void{Name: o.Name, X: o.X, Y: o.Y, Length: o.Length, Width: o.Width})
	}
	return list
}

func loads(p *calc.Plan) []diagrams.Drawing {
	d := diagrams.Loads{Grid: gridOf(p), Rated: p.Job.Block.RatedLoad}
	for _, l := range p.Strength.Piers {
		d.Loads = append(d.Loads, diagrams.PierLoad{Load: l.Most, Ratio: worstAt(p, l.Name)})
	}
	return []diagrams.Drawing{d}
}

// worstAt is the worst ratio of what presses on a pier: block, stone and soil.
func worstAt(p *calc.Plan, pier string) measure.Ratio {
	var worst measure.Ratio
	for _, kind := range []string{"block", "stone", "soil", "eccentric"} {
		if c, made := p.Strength.Find("pier." + pier + "." + kind); made {
			worst = max(worst, c.Ratio)
		}
	}
	return worst
}
