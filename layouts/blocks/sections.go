package blocks

import (
	"pierbook/calc"
	"pierbook/calc/frame"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
	"pierbook/diagrams"
)

// Drawings from the side.

// sections draws every beam line once there is ground to draw.
func sections(p *calc.Plan) []diagrams.Drawing {
	if p.Ground.Surface == nil {
		return nil
	}
	list := make([]diagrams.Drawing, 0, len(p.Frame.Lines))
	for i, line := range p.Frame.Lines {
		list = append(list, sectionOf(p, i, line))
	}
	return list
}

func sectionOf(p *calc.Plan, index int, line frame.Line) diagrams.Section {
	f, j := p.Frame, p.Job
	s := diagrams.Section{
		Line: line.Name, Length: f.Length, Start: line.Start, End: line.End,
		BeamDepth: f.BuildUp.Beam, JoistDepth: f.BuildUp.Joist, JoistThick: f.Sections.Joist.Width, Surface: f.BuildUp.Surface, Joists: joistCentres(p),
		Block: j.Block.Height, SeatHeight: j.Block.SeatHeight, Base: j.Block.Base, Hole: holeSide(p), Post: f.Sections.Post.Width,
	}
	if floor := p.Heights.Floor; floor != nil {
		s.Floor, s.PostTops = &floor.Height, p.Heights.Lines[index].Top // of this line: its beam may be measured
	}
	for i, pier := range f.Piers {
		if pier.Line == index {
			s.Piers = append(s.Piers, sectionPier(p, i, pier))
		}
	}
	s.Ground, s.Before = groundAlong(p, line)
	return s
}

func sectionPier(p *calc.Plan, index int, pier frame.Pier) diagrams.SectionPier {
	known := p.Heights.Piers[index]
	d := diagrams.SectionPier{Name: pier.Name, X: pier.X, Splice: pier.Splice}
	if known.Level != nil {
		d.Ground, d.Estimated = known.Level.Height, !known.Level.Read
	}
	if hole := known.Hole; hole != nil {
		d.Known, d.Dig, d.Stone, d.Seat, d.PostLong = true, hole.Dig, hole.Stone, hole.Seat, hole.Post
	}
	return d
}

// groundAlong follows the surface under a beam line in short steps, and where it is
// cut the ground as it lay.
func groundAlong(p *calc.Plan, line frame.Line) (spots, before []diagrams.Spot) {
	if p.Ground.Surface == nil {
		return nil, nil
	}
	const steps = 48
	cut := false
	for i := range steps + 1 {
		x := p.Frame.Length.Part(i, steps)
		now, lay := p.Ground.Surface.At(x, line.Y), p.Ground.Surface.AsRead(x, line.Y)
		spots, before = append(spots, diagrams.Spot{X: x, Height: now}), append(before, diagrams.Spot{X: x, Height: lay})
		cut = cut || now != lay
	}
	if !cut {
		before = nil
	}
	return spots, before
}

// aPier draws the pier with the deepest hole, or any as long as none is known.
func aPier(p *calc.Plan) []diagrams.Drawing {
	f, j := p.Frame, p.Job
	d := diagrams.PierSection{
		Pier: "a pier", Cap: f.BuildUp.Cap, Post: f.Sections.Post.Width, Beam: f.Sections.Beam.Across(), BeamDepth: f.BuildUp.Beam,
		SeatHeight: j.Block.SeatHeight, SeatDepth: max(0, j.Block.Height-j.Block.SeatHeight), Base: j.Block.Base, SeatWidth: j.Block.SeatWidth,
		Hole: holeSide(p), Beside: j.Stone.BesideBlock,
	}
	var deepest measure.Length = -1
	for _, pier := range p.Heights.Piers {
		if pier.Hole != nil && pier.Hole.Dig > deepest {
			deepest = pier.Hole.Dig
			d.Pier, d.Known, d.Dig, d.Stone, d.PostLong = pier.Name, true, pier.Hole.Dig, pier.Hole.Stone, pier.Hole.Post
		}
	}
	return []diagrams.Drawing{d}
}

// splice draws one beam joint, when there is any.
func splice(p *calc.Plan) []diagrams.Drawing {
	f := p.Frame
	for _, pier := range f.Piers {
		if !pier.Splice {
			continue
		}
		d := diagrams.Splice{Pier: pier.Name, BeamDepth: f.BuildUp.Beam, Thick: f.Sections.Beam.Width, Post: f.Sections.Post.Width,
			Bearing: f.Sections.Post.Width / 2, Least: trade.BearingLeast.In(p.Job.Units)}
		for _, ply := range f.Lines[pier.Line].Plies {
			d.Plies = append(d.Plies, diagrams.SplicePly{Jointed: jointedAt(ply, pier.X, f.Sections.Post.Width)})
		}
		return []diagrams.Drawing{d}
	}
	return nil
}

// jointedAt says whether a ply is jointed over the post that stands at x.
func jointedAt(ply frame.Ply, x, post measure.Length) bool {
	for _, piece := range ply.Pieces[1:] {
		if (piece.From - x).Abs() < post/2 {
			return true
		}
	}
	return false
}

func loadPath(p *calc.Plan) []diagrams.Drawing {
	if len(p.Strength.Path) == 0 {
		return nil
	}
	d := diagrams.LoadPath{Pier: p.Strength.WorstPier}
	for _, step := range p.Strength.Path {
		part := diagrams.PathPart{Name: step.Part, Adds: step.Adds, Sum: step.Sum, Check: step.Check}
		d.Parts = append(d.Parts, part)
	}
	return []diagrams.Drawing{d}
}

// nailing draws the joint that the order counts and the step sheet names.
func nailing(p *calc.Plan) []diagrams.Drawing {
	joint, known := p.Order.Joint("surface")
	if !known || len(p.Frame.Surface.Panels) == 0 {
		return nil
	}
	return []diagrams.Drawing{diagrams.Nailing{
		Fastener: joint.Nail.Called(p.Job.Units), EdgeDistance: trade.EdgeDistance.In(p.Job.Units), Edge: joint.Edge, Field: joint.Field,
		Spacing: p.Job.Frame.Joists.Spacing, Joist: p.Frame.Sections.Joist.Width, Gap: p.Job.Platform.Surface.Gap,
	}}
}
