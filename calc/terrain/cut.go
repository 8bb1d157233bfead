package terrain

import (
	"fmt"
	"slices"

	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// CutRun is how far the sides of a cut lean back for each unit up: International
// Building Code 2018, Appendix J, J106.1, from memory.
const CutRun = 2

// The deepest cut that is worked out here: beyond it the rules for trenches and
// for walls hold, 29 CFR 1926.651 and 1926.652 (2023). How far its leaning sides
// are followed: on a steep bank they may never come out.
const (
	CutDeepest = 48 * measure.Inch
	sideReach  = 3 * CutRun * CutDeepest
)

// cutting is one cut of the job with the rectangles in plan that it covers.
type cutting struct {
	name  string
	to    *measure.Length // nil for a cut by a depth
	by    measure.Length
	plots []plot
}

// plot is a rectangle in plan.
type plot struct{ x0, y0, x1, y1 measure.Length }

// nearest returns the place of the rectangle nearest to another.
func (p plot) nearest(x, y measure.Length) (measure.Length, measure.Length) {
	return min(max(x, p.x0), p.x1), min(max(y, p.y0), p.y1)
}

// cuttings returns the cuts of a job in the order of their names.
func cuttings(j *job.Job, f *frame.Frame) []cutting {
	var list []cutting
	for _, name := range j.Ground.CutNames() {
		c := j.Ground.Cuts[name]
		one := cutting{name: name, to: c.To, by: c.By}
		if len(c.Piers) == 0 {
			one.plots = []plot{{c.X, c.Y, c.X + c.Length, c.Y + c.Width}}
		}
		for _, p := range f.Piers {
			if slices.Contains(c.Piers, p.Name) {
				one.plots = append(one.plots, plot{p.X - c.Reach, p.Y - c.Reach, p.X + c.Reach, p.Y + c.Reach})
			}
		}
		list = append(list, one)
	}
	return list
}

// left returns the height at a place that one plot of a cut leaves: its floor, and
// beside it the side that leans back.
//
//	left = to, or ground at the nearest place of the plot − by        + distance ÷ 2
func (s *Spline) left(c cutting, p plot, x, y measure.Length) (measure.Length, bool) {
	nearX, nearY := p.nearest(x, y)
	off := measure.Hypot(x-nearX, y-nearY)
	if off > sideReach {
		return 0, false
	}
	if c.to != nil {
		return *c.to + off/CutRun, true
	}
	return s.AsRead(nearX, nearY) - c.by + off/CutRun, true
}

// cut returns what all cuts leave of ground of a height at a place. Where cuts
// meet the deeper one rules; they are not added.
func (s *Spline) cut(x, y, height measure.Length) measure.Length {
	for _, c := range s.cuts {
		for _, p := range c.plots {
			if left, near := s.left(c, p, x, y); near {
				height = min(height, left)
			}
		}
	}
	return height
}

// lower takes the cuts off the levels and the spots. It reports cuts that take
// nothing, go too deep, or go into rock or water that the bar has met.
func (g *Ground) lower(j *job.Job, f *frame.Frame) fault.List {
	var faults fault.List
	if len(g.Surface.cuts) == 0 {
		return faults
	}
	for i, p := range f.Piers {
		l := &g.Levels[i]
		left := g.Surface.cut(p.X, p.Y, l.Height)
		l.Height, l.Cut = left, l.Height-left
	}
	for i := range g.Spots {
		s := &g.Spots[i]
		left := g.Surface.cut(s.X, s.Y, s.Height)
		s.Height, s.Cut = left, s.Height-left
	}
	for _, c := range g.Surface.cuts {
		if bad, wrong := g.misfit(j, c); wrong {
			faults.Add(bad)
		}
	}
	for _, l := range g.Levels {
		if probe, probed := j.Ground.Probes[l.Pier]; probed && probe.Found != "firm" && l.Cut > probe.Depth {
			faults.Add(fault.Fault{At: j.At("ground.cut"), Path: "ground.cut", Wrong: fmt.Sprintf("%s are cut off at %s, where the bar met %s at %s", l.Cut.Print(j.Style()), l.Pier, probe.Found, probe.Depth.Print(j.Style())),
				Remedy: fmt.Sprintf("cut %s at the most there, or leave that pier out", probe.Depth.Print(j.Style()))})
		}
	}
	return faults
}

// misfit reports a cut down to a height that takes nothing, or too much.
func (g *Ground) misfit(j *job.Job, c cutting) (fault.Fault, bool) {
	path := "ground.cut." + c.name
	deepest, least := g.Surface.depths(c)
	style := j.Style()
	switch {
	case deepest <= 0:
		return fault.Fault{At: j.At(path + ".to"), Path: path + ".to", Wrong: fmt.Sprintf("cut down to %s nothing is taken off: the ground there lies %s to %s lower", c.to.Print(style), (-deepest).Print(style), (-least).Print(style)),
			Remedy: "write a lower height; low ground is filled with nothing but tamped stone in the holes, and filling with soil is for an engineer (IRC 2021 R401.2, R401.4)"}, true
	case deepest > CutDeepest:
		return fault.Fault{At: j.At(path), Path: path, Wrong: fmt.Sprintf("the cut is %s deep at its deepest", deepest.Print(style)),
			Remedy: fmt.Sprintf("cut %s at the most; what holds a higher face back is for an engineer", CutDeepest.Print(style))}, true
	}
	return fault.Fault{}, false
}

// depths returns the greatest and the least depth of a cut over its plots,
// negative where the ground lies lower than it is cut to.
func (s *Spline) depths(c cutting) (deepest, least measure.Length) {
	if c.to == nil {
		return c.by, c.by
	}
	const steps = 16
	for n, p := range c.plots {
		for i := 0; i <= steps; i++ {
			for k := 0; k <= steps; k++ {
				d := s.AsRead(p.x0+(p.x1-p.x0).Part(i, steps), p.y0+(p.y1-p.y0).Part(k, steps)) - *c.to
				if n+i+k == 0 {
					deepest, least = d, d
				}
				deepest, least = max(deepest, d), min(least, d)
			}
		}
	}
	return deepest, least
}
