package blocks

import (
	"strconv"

	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/diagrams"
)

// gridOf returns the plan view that most drawings stand on.
func gridOf(p *calc.Plan) diagrams.Grid {
	g := diagrams.Grid{Length: p.Frame.Length, Width: p.Frame.Width, LinesGoLeft: p.Job.Platform.Origin.LinesGo == "left"}
	for _, line := range p.Frame.Lines {
		g.Lines = append(g.Lines, diagrams.GridLine{Name: line.Name, Y: line.Y, Start: line.Start, End: line.End})
	}
	for _, pier := range p.Frame.Piers {
		g.Piers = append(g.Piers, diagrams.GridPier{Name: pier.Name, Line: pier.Line, X: pier.X, Y: pier.Y})
	}
	return g
}

// joistCentres returns x of the joists of the first bay.
func joistCentres(p *calc.Plan) []measure.Length {
	var centres []measure.Length
	for _, j := range p.Frame.Joists {
		if j.Bay == 1 {
			centres = append(centres, j.Centre)
		}
	}
	return centres
}

// doorOf returns the door, or nil when the job has none.
func doorOf(p *calc.Plan) *diagrams.Door {
	d := p.Job.Platform.Door
	if d == nil {
		return nil
	}
	door := &diagrams.Door{From: d.From1, Width: d.Width}
	lines := p.Frame.Lines
	switch d.Side {
	case lines[0].Name:
		door.Side = diagrams.SideNear
	case lines[len(lines)-1].Name:
		door.Side = diagrams.SideFar
	case "1":
		door.Side = diagrams.EndHook
	case strconv.Itoa(p.Frame.PerLine(0)):
		door.Side = diagrams.EndFar
	default:
		return nil
	}
	return door
}

// holeSide is the side of the square hole.
func holeSide(p *calc.Plan) measure.Length { return p.Job.Block.Base + 2*p.Job.Stone.Margin }
