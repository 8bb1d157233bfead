package blocks

import (
	"math"

	"pierbook/calc"
	"pierbook/calc/crew"
	"pierbook/calc/measure"
	"pierbook/calc/setout"
	"pierbook/calc/trade"
	"pierbook/diagrams"
	"pierbook/diagrams/kit"
)

// Drawings of the ground, of what was measured, and of the days.

// contourNet is how many steps the net over the ground has along its longer side.
const contourNet = 40

func contours(p *calc.Plan) []diagrams.Drawing {
	d := diagrams.Contours{Grid: gridOf(p)}
	if surface := p.Ground.Surface; surface != nil {
		d.Field = fieldOf(p)
		long, wide := d.Field.X1-d.Field.X0, d.Field.Y1-d.Field.Y0
		var low, high measure.Length = math.MaxInt64, math.MinInt64
		for row := range contourNet + 1 {
			var heights []measure.Length
			for column := range contourNet + 1 {
				h := surface.At(d.Field.X0+long.Part(column, contourNet), d.Field.Y0+wide.Part(row, contourNet))
				low, high = min(low, h), max(high, h)
				heights = append(heights, h)
			}
			d.Field.Heights = append(d.Field.Heights, heights)
		}
		d.Interval = kit.Interval(high-low, p.Job.Units)
	}
	for _, pier := range p.Heights.Piers {
		if pier.Level != nil {
			d.Spots = append(d.Spots, diagrams.GroundSpot{Name: pier.Name, X: pier.X, Y: pier.Y, Height: pier.Level.Height, Read: pier.Level.Read})
		}
	}
	for _, spot := range p.Ground.Spots {
		d.Spots = append(d.Spots, diagrams.GroundSpot{Name: spot.Name, X: spot.X, Y: spot.Y, Height: spot.Height, Read: true})
	}
	return []diagrams.Drawing{d}
}

// fieldOf is what the contours cover: the frame with an eighth of its length
// around it, and every spot that was read.
func fieldOf(p *calc.Plan) diagrams.Field {
	beside := p.Frame.Length / 8
	f := diagrams.Field{X0: -beside, Y0: -beside, X1: p.Frame.Length + beside, Y1: p.Frame.Width + beside}
	for _, spot := range p.Ground.Spots {
		f.X0, f.Y0 = min(f.X0, spot.X), min(f.Y0, spot.Y)
		f.X1, f.Y1 = max(f.X1, spot.X), max(f.Y1, spot.Y)
	}
	return f
}

// heightCurve shows what the height of the floor costs in digging, stone and posts.
func heightCurve(p *calc.Plan) []diagrams.Drawing {
	points := p.Heights.Price()
	if len(points) < 2 {
		return nil
	}
	d := diagrams.HeightCurve{Lowest: p.Heights.Floor.Lowest, Chosen: p.Heights.Floor.Height}
	dig, stone, posts := diagrams.HeightSeries{Name: "dig"}, diagrams.HeightSeries{Name: "stone"}, diagrams.HeightSeries{Name: "posts"}
	for _, point := range points {
		d.Breaks = append(d.Breaks, point.Floor)
		dig.Points = append(dig.Points, diagrams.HeightPoint{Floor: point.Floor, Value: point.Dig})
		stone.Points = append(stone.Points, diagrams.HeightPoint{Floor: point.Floor, Value: point.Stone})
		posts.Points = append(posts.Points, diagrams.HeightPoint{Floor: point.Floor, Value: point.Posts})
	}
	d.Series = []diagrams.HeightSeries{dig, stone, posts}
	return []diagrams.Drawing{d}
}

// racking draws what is slid once the beams were measured, or both cases.
func racking(p *calc.Plan) []diagrams.Drawing {
	return []diagrams.Drawing{rackingOf(p, "beams", p.SetOut.Beams, p.SetOut.Sides)}
}

// stringRacking does so for the strings.
func stringRacking(p *calc.Plan) []diagrams.Drawing {
	d := rackingOf(p, "strings", p.SetOut.Frame, p.SetOut.Strings)
	d.FarBoard = p.SetOut.Boards.AtFarBoard(d.Slide, d.Width)
	return []diagrams.Drawing{d}
}

// rackingOf draws what was measured, unless one of the six lengths is a mistake:
// then nothing is moved by them.
func rackingOf(p *calc.Plan, of string, r setout.Rectangle, check *setout.Check) diagrams.Racking {
	d := diagrams.Racking{Of: of, Corners: r.Corners, FarLine: p.Frame.Lines[len(p.Frame.Lines)-1].Name, LinesGoLeft: gridOf(p).LinesGoLeft, Length: r.Length, Width: r.Width}
	if check != nil && check.MayMove() {
		d.Measured, d.First, d.Second, d.Slide = true, check.First(), check.Second(), check.Slide().Abs()
	}
	return d
}

// cornerMoves draws the least moving of stakes, once the strings were measured
// and no reading is a mistake.
func cornerMoves(p *calc.Plan) []diagrams.Drawing {
	var list []diagrams.Drawing
	for _, check := range p.SetOut.Checks() {
		if !check.MayMove() || check.InPlace() {
			continue
		}
		hold := check.Holds[1] // stakes go where least is to be moved
		if check == p.SetOut.Sides {
			hold = check.Holds[0] // a beam line on its posts stays, and the others slide
		}
		d := diagrams.Moves{Of: check.Of, LinesGoLeft: gridOf(p).LinesGoLeft, Length: check.Rectangle.Length, Width: check.Rectangle.Width}
		for i, m := range hold.Moves {
			along, across := check.Parts(m)
			d.Corners[i] = diagrams.CornerMove{Name: check.Rectangle.Corners[i], Along: along, Forward: across, Stays: m.Size() <= check.Tolerance}
		}
		list = append(list, d)
	}
	return list
}

func asBuilt(p *calc.Plan) []diagrams.Drawing {
	finished := p.Heights.AsBuilt
	if finished == nil {
		return nil
	}
	d := diagrams.AsBuilt{Grid: gridOf(p), Accept: trade.FloorDo.In(p.Job.Units)}
	for _, point := range finished.Points {
		d.Spots = append(d.Spots, diagrams.FinishedSpot{X: point.X, Y: point.Y, Read: true, Off: point.Height - finished.Mean})
	}
	return []diagrams.Drawing{d}
}

func weekend(p *calc.Plan) []diagrams.Drawing {
	d := diagrams.Weekend{}
	for i, day := range p.Weekend.Days {
		name := crew.DayName(p.Job.Crew.Starts, i)
		var long measure.Hours
		for _, part := range day.Parts {
			long = max(long, part.End)
		}
		d.Days = append(d.Days, diagrams.WorkDay{Name: name, Hours: max(long, 8)})
	}
	begun := map[string]bool{}
	for i, day := range p.Weekend.Days {
		for _, part := range day.Parts {
			if begun[part.Step] {
				continue
			}
			begun[part.Step] = true
			d.Steps = append(d.Steps, workStep(p.Weekend, part, i))
		}
	}
	return []diagrams.Drawing{d}
}

func workStep(w crew.Weekend, part crew.Part, day int) diagrams.WorkStep {
	step := diagrams.WorkStep{Name: part.Title, Day: day, From: part.Start, Hold: true}
	for _, s := range w.Steps {
		if s.Name == part.Step {
			hands := measure.Hours(max(1, min(w.Crew, s.People)))
			step.Least, step.Most, step.Leave = s.Hours.Least/hands, s.Hours.Most/hands, s.MayWait()
		}
	}
	return step
}

// fall shows the client the side with the door, or else side A.
func fall(p *calc.Plan) []diagrams.Drawing {
	f := p.Frame
	corners := f.Corners()
	d := diagrams.Fall{Side: "side " + f.Lines[0].Name, Length: f.Length, LeftName: corners[0].Name, RightName: corners[1].Name,
		Frame: f.BuildUp.Total() - f.BuildUp.Cap, Post: f.Sections.Post.Width}
	side := f.Lines[0].Name
	if door := p.Job.Platform.Door; door != nil {
		side = door.Side
		d.Door = &diagrams.Doorway{From: door.From1, Width: door.Width}
	}
	along, at := true, measure.Length(0)
	last := f.Lines[len(f.Lines)-1].Name
	switch side {
	case last:
		d.Side, at, d.LeftName, d.RightName = "side "+last, f.Width, corners[3].Name, corners[2].Name
	case f.Lines[0].Name:
	case "1":
		d.Side, along, d.Length, d.RightName = "the hook end", false, f.Width, corners[3].Name
	default:
		d.Side, along, at, d.Length, d.LeftName, d.RightName = "the far end", false, f.Length, f.Width, corners[1].Name, corners[2].Name
	}
	if p.Heights.Floor != nil {
		d.Floor = &p.Heights.Floor.Height
	}
	d.Posts, d.Ground = sideView(p, along, at, d.Length)
	if d.Door != nil && d.Floor != nil && len(d.Ground) > 0 {
		d.Door.Steps, d.Door.Rise = stepsAt(p, *d.Floor)
	}
	return []diagrams.Drawing{d}
}

// sideView returns the outer posts and the ground along a side.
func sideView(p *calc.Plan, along bool, at, long measure.Length) (posts []measure.Length, spots []diagrams.Spot) {
	outer := 0
	if at > 0 {
		outer = len(p.Frame.Lines) - 1
	}
	for _, pier := range p.Frame.Piers {
		switch {
		case along && pier.Line == outer:
			posts = append(posts, pier.X)
		case !along && (at == 0 && pier.Number == 1 || at > 0 && pier.Number == p.Frame.PerLine(pier.Line)):
			posts = append(posts, pier.Y)
		}
	}
	if p.Ground.Surface == nil {
		return posts, nil
	}
	const steps = 32
	for i := range steps + 1 {
		s := long.Part(i, steps)
		x, y := s, at
		if !along {
			x, y = at, s
		}
		spots = append(spots, diagrams.Spot{X: s, Height: p.Ground.Surface.At(x, y)})
	}
	return posts, spots
}

// stepsAt divides the height at the door into equal rises; the last one leads
// onto the floor.
func stepsAt(p *calc.Plan, floor measure.Length) (int, measure.Length) {
	x, y := p.DoorPlace()
	height := floor - p.Ground.Surface.At(x, y)
	if height <= 0 {
		return 0, 0
	}
	most := trade.RiserMost.In(p.Job.Units)
	rises := int((height + most - 1) / most)
	return rises - 1, height.Part(1, rises)
}
