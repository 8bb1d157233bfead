package heights

import (
	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// FinishedFloor is how level the finished floor came out.
type FinishedFloor struct {
	Instrument     measure.Length // height of the bench mark + its reading that day
	Points         []FloorPoint   // in the order of the piers
	Mean           measure.Length // of their heights
	High, Low      FloorPoint
	Range          measure.Length // High − Low
	TiltX, TiltY   measure.Length // rise of the best plane from one side of the piers to the other, along x and y
	Hump           FloorPoint     // the point farthest from that plane, either way
	HumpBy         measure.Length // height over the plane, negative for a hollow
	WorstNeighbour [2]FloorPoint  // the neighbours that differ most
	WorstStep      measure.Length // by how much
	Plane          bool           // three points not in a line were read, so that tilt and hump are known
}

// FloorPoint is a place on the finished floor, named by the pier under it.
type FloorPoint struct {
	Name    string
	X, Y    measure.Length
	Reading measure.Length
	Height  measure.Length
	Over    measure.Length // over the planned floor
}

// readFinished works out the finished floor from the rod readings on it.
func readFinished(j *job.Job, f *frame.Frame, floor measure.Length) (*FinishedFloor, fault.List) {
	readings := j.Measured.Finished
	bench, _, faults := levelling.Day(j, readings, "measured.finished")
	if len(readings) == 0 || !faults.Empty() {
		return nil, faults
	}
	a := &FinishedFloor{Instrument: j.Ground.BenchMark.Height + bench}
	var sum measure.Length
	var nodes []terrain.Node
	for _, p := range f.Piers {
		reading, read := readings[p.Name]
		if !read {
			continue
		}
		point := FloorPoint{Name: p.Name, X: p.X, Y: p.Y, Reading: reading, Height: a.Instrument - reading}
		point.Over = point.Height - floor
		a.Points = append(a.Points, point)
		nodes = append(nodes, terrain.Node{Name: p.Name, X: p.X, Y: p.Y, Height: point.Height})
		sum += point.Height
	}
	if len(a.Points) == 0 {
		return nil, faults
	}
	a.Mean = sum.Part(1, len(a.Points))
	a.extremes()
	a.neighbours(f)
	a.plane(nodes)
	return a, faults
}

func (a *FinishedFloor) extremes() {
	a.High, a.Low = a.Points[0], a.Points[0]
	for _, p := range a.Points {
		if p.Height > a.High.Height {
			a.High = p
		}
		if p.Height < a.Low.Height {
			a.Low = p
		}
	}
	a.Range = a.High.Height - a.Low.Height
}

// neighbours finds the greatest step between piers next to each other on a line,
// and between piers of one number on lines next to each other.
func (a *FinishedFloor) neighbours(f *frame.Frame) {
	at := map[[2]int]FloorPoint{}
	for _, p := range a.Points {
		pier, _ := f.Pier(p.Name)
		at[[2]int{pier.Line, pier.Number}] = p
	}
	for _, p := range f.Piers {
		here, read := at[[2]int{p.Line, p.Number}]
		if !read {
			continue
		}
		for _, next := range [][2]int{{p.Line, p.Number + 1}, {p.Line + 1, p.Number}} {
			if there, read := at[next]; read && (there.Height-here.Height).Abs() > a.WorstStep {
				a.WorstStep, a.WorstNeighbour = (there.Height - here.Height).Abs(), [2]FloorPoint{here, there}
			}
		}
	}
}

// plane fits the best plane and finds what stands out of it.
func (a *FinishedFloor) plane(nodes []terrain.Node) {
	surface, ok := terrain.NewSpline(nodes)
	if !ok {
		return
	}
	a.Plane = true
	lowX, highX, lowY, highY := nodes[0].X, nodes[0].X, nodes[0].Y, nodes[0].Y
	for _, p := range a.Points {
		lowX, highX = min(lowX, p.X), max(highX, p.X)
		lowY, highY = min(lowY, p.Y), max(highY, p.Y)
		if by := p.Height - surface.Plane.At(p.X, p.Y); by.Abs() > a.HumpBy.Abs() {
			a.Hump, a.HumpBy = p, by
		}
	}
	a.TiltX = measure.FromMetres(surface.Plane.SlopeX * (highX - lowX).Metres())
	a.TiltY = measure.FromMetres(surface.Plane.SlopeY * (highY - lowY).Metres())
}
