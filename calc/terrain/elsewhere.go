package terrain

import (
	"math"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Lie is another way for a frame to lie on the ground: turned about its middle
// from line A towards the other lines, then shifted along and across its lines.
type Lie struct {
	Turn          float64 // degrees
	Along, Across measure.Length
}

// seen returns where a place of the ground lies, counted from a frame that lies so.
func (l Lie) seen(f *frame.Frame, x, y measure.Length) (measure.Length, measure.Length) {
	sin, cos := math.Sincos(-l.Turn * math.Pi / 180)
	middleX, middleY := f.Length/2, f.Width/2
	u, v := float64(x-l.Along-middleX), float64(y-l.Across-middleY)
	return middleX + measure.Length(math.Round(u*cos-v*sin)), middleY + measure.Length(math.Round(u*sin+v*cos))
}

// Elsewhere returns the ground as another frame meets it, or the same frame lying
// otherwise: through the same readings, at the places where that frame sees them.
// The surface is the same one, since a thin-plate spline does not turn with its
// axes. A pier that comes to stand on a reading is read, all others are estimated.
// Nothing is returned for ground that is cut: the cuts were laid out for the frame
// as it lies.
func (g *Ground) Elsewhere(j *job.Job, f *frame.Frame, lie Lie) (*Ground, bool) {
	if g.Surface == nil || len(g.Surface.cuts) > 0 {
		return nil, false
	}
	there := &Ground{far: bay(f) / 2}
	var nodes []Node
	for _, n := range g.Surface.Nodes {
		n.X, n.Y = lie.seen(f, n.X, n.Y)
		nodes = append(nodes, n)
		if n.X >= 0 && n.X <= f.Length && n.Y >= 0 && n.Y <= f.Width {
			there.Spots = append(there.Spots, SpotHeight{Name: n.Name, X: n.X, Y: n.Y, Height: n.Height, Inside: true})
		}
	}
	surface, ok := NewSpline(nodes)
	if !ok {
		return nil, false
	}
	there.Surface = surface
	there.Levels = make([]Level, len(f.Piers))
	for i, p := range f.Piers {
		for _, n := range surface.Nodes {
			if (n.X-p.X).Abs() <= together && (n.Y-p.Y).Abs() <= together {
				there.Levels[i] = Level{Pier: p.Name, Height: n.Height, Read: true, Sights: 1}
			}
		}
	}
	there.estimate(j, f, there.Levels)
	return there, true
}
