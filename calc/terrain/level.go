package terrain

import (
	"fmt"
	"math"

	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

// assumedUnevenness stands for the standard error of ground about the plane
// through three readings, which leave nothing over to work it out from. Common
// practice, no source.
const assumedUnevenness = measure.Inch

// level gives each pier its ground, read or estimated.
func (g *Ground) level(j *job.Job, f *frame.Frame, book *levelling.Book) fault.List {
	var faults fault.List
	var nodes []Node
	levels := make([]Level, len(f.Piers))
	for i, p := range f.Piers {
		levels[i].Pier = p.Name
		if h, read := book.Point(p.Name); read {
			levels[i] = Level{Pier: p.Name, Height: h.Height, Read: true, Sights: h.Sights, Spread: h.Spread}
			nodes = append(nodes, Node{Name: p.Name, X: p.X, Y: p.Y, Height: h.Height})
		}
	}
	for _, s := range g.Spots {
		nodes = append(nodes, Node{Name: s.Name, X: s.X, Y: s.Y, Height: s.Height})
	}
	surface, ok := NewSpline(nodes)
	if !ok {
		faults.Add(tooFew(j, f, merged(nodes)))
		return faults
	}
	g.Surface = surface
	g.estimate(j, f, levels)
	g.Levels = levels
	surface.cuts = cuttings(j, f)
	return g.lower(j, f)
}

// estimate fills in the piers that were not read. No estimate is better than
// one reading, however well the readings agree.
func (g *Ground) estimate(j *job.Job, f *frame.Frame, levels []Level) {
	scatter, rough, known := measure.Length(0), false, false
	for i, p := range f.Piers {
		if levels[i].Read {
			continue
		}
		if !known {
			scatter, rough = g.Surface.unevenness()
			scatter, known = max(scatter, levelling.OneReading(j)), true
		}
		levels[i] = Level{
			Pier:   p.Name,
			Height: g.Surface.At(p.X, p.Y),
			Error:  scatter.Scale(math.Sqrt(1 + g.Surface.Plane.Leverage(p.X, p.Y))),
			Rough:  rough,
			Beyond: g.Beyond(p.X, p.Y),
		}
	}
}

// unevenness returns the standard error of the ground between the readings, and
// whether it is rough: from leaving out each reading in turn when there are five
// or more, from the plane when there are four, assumed when there are three.
func (s *Spline) unevenness() (measure.Length, bool) {
	switch n := len(s.Nodes); {
	case n >= 5:
		if scatter, used := s.scatter(); used >= 3 {
			return scatter, false
		}
		return s.Plane.Residual(), true
	case n == 4:
		return s.Plane.Residual(), true
	}
	return assumedUnevenness, true
}

// bay returns the greatest distance of neighbouring piers on a line.
func bay(f *frame.Frame) measure.Length {
	var widest measure.Length
	for i, p := range f.Piers {
		if i > 0 && f.Piers[i-1].Line == p.Line {
			widest = max(widest, p.X-f.Piers[i-1].X)
		}
	}
	return widest
}

// tooFew reports that no surface goes through the readings and names the pier
// to read next: the one farthest from the readings, or from the line they lie in.
func tooFew(j *job.Job, f *frame.Frame, nodes []Node) fault.Fault {
	wrong := fmt.Sprintf("%s on the ground; three that do not lie in a line are the least", measure.Counted(len(nodes), "reading"))
	if len(nodes) >= 3 {
		wrong = "all readings on the ground lie in one line, so the fall across it is unknown"
	}
	return fault.Fault{At: j.At("ground.sights"), Path: "ground.sights", Wrong: wrong,
		Remedy: fmt.Sprintf("read the ground at %s next", readNext(f, nodes))}
}

func readNext(f *frame.Frame, nodes []Node) string {
	if len(nodes) == 0 {
		return f.Piers[0].Name
	}
	a, b := nodes[0], nodes[0]
	for _, n := range nodes {
		if between(a, n) > between(a, b) {
			b = n
		}
	}
	best, farthest := f.Piers[0].Name, measure.Length(-1)
	for _, p := range f.Piers {
		if off := offLine(a, b, Node{X: p.X, Y: p.Y}); off > farthest {
			best, farthest = p.Name, off
		}
	}
	return best
}
