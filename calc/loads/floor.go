package loads

import (
	"fmt"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Load is one load with where it comes from, as the load sheet prints it.
type Load struct {
	ID      string // key load.ID
	What    string
	Amount  measure.Quantity // by area, by length or whole
	Total   measure.Force    // of the whole platform, 0 where it has no meaning
	Source  string
	Path    string // of the job key it comes from, empty for a computed one
	Memory  bool
	Formula string
	Working string
	From    []string
}

// Strip is a load along a line on the floor: a wall or a rim.
type Strip struct {
	Kind           Case
	X1, Y1, X2, Y2 float64
	Size           float64 // N/m
	Name           string
}

// AlongX tells strips along the beams from those along a joist.
func (s Strip) AlongX() bool { return s.Y1 == s.Y2 }

// Total returns the whole load of the strip in newtons.
func (s Strip) Total() float64 { return s.Size * max(s.X2-s.X1, s.Y2-s.Y1) }

// ownWeights puts the weight of the actual parts on the floor.
func (g *gatherer) ownWeights() {
	f, l, w := g.frame, g.loads, g.words
	density, source := g.in.Timber.Density, g.in.Timber.Source
	if density == 0 {
		g.wrong("timber.density", fmt.Sprintf("the weight of %q is not known", g.job.Timber.Species), "give timber.density, such as 28 pcf or 450 kg/m3")
		return
	}
	area := f.Length.Times(f.Width)
	weigh := func(s job.Section) measure.LineLoad {
		return measure.LineLoad(float64(density) * float64(s.Across().Times(s.Depth)) * measure.StandardGravity)
	}
	surface := g.surfaceWeight(density)
	var joists, blocking measure.Length
	for _, j := range f.Joists {
		joists += j.Long()
	}
	for _, b := range f.Blocking {
		blocking += b.To - b.From
	}
	joist := weigh(f.Sections.Joist)
	framing := measure.Stress(float64(joist) * (joists + blocking).Metres() / float64(area))
	l.Area[DeadCase] = float64(surface + framing)
	l.Present[DeadCase] = true
	l.Beam = float64(weigh(f.Sections.Beam))
	l.Post = float64(weigh(f.Sections.Post))
	g.rimStrips(weigh(f.Sections.Rim))
	if g.in.Quiet {
		return
	}
	l.list(Load{ID: "joists", What: "joists and blocking, spread over the floor", Amount: framing, Total: framing.On(area), Source: source,
		Formula: "weight = density · width · depth · total length / area",
		Working: fmt.Sprintf("%s × %s × %s × %s / %s = %s", density.Print(w.Style), w.Length(f.Sections.Joist.Across()), w.Length(f.Sections.Joist.Depth),
			w.Length(joists+blocking), area.Print(w.Style), framing.Print(w.Style)), From: []string{"frame.length", "frame.width", "joist.count", "joist.length"}})
	beam := measure.LineLoad(l.Beam)
	l.list(Load{ID: "beams", What: "each beam line, by its length", Amount: beam, Total: measure.Force(l.Beam * BeamMetres(g.frame)), Source: source,
		Formula: "weight = density · width · depth",
		Working: fmt.Sprintf("%s × %s × %s = %s", density.Print(w.Style), w.Length(f.Sections.Beam.Across()), w.Length(f.Sections.Beam.Depth), beam.Print(w.Style)), From: []string{"beam.length"}})
}

// BeamMetres returns the length of all beam lines together.
func BeamMetres(f *frame.Frame) float64 {
	sum := 0.0
	for _, line := range f.Lines {
		sum += (line.End - line.Start).Metres()
	}
	return sum
}

// surfaceWeight returns the weight of the surface by area. Panels without a
// density of their own weigh 36 pcf (HUD Residential Structural Design Guide,
// 2000, Table 3.3), boards what the timber weighs.
func (g *gatherer) surfaceWeight(timber measure.Density) measure.Stress {
	s := g.job.Platform.Surface
	density, source, path := s.Density, g.job.Basis("platform.surface.density"), "platform.surface.density"
	if density == 0 {
		density, source, path = timber, "as the frame's timber", ""
		if s.Kind == "panels" {
			density, source = 36*measure.PoundPerCubicFoot, "HUD Residential Structural Design Guide (2000) Table 3.3: 36 pcf"
		}
	}
	weight := measure.Stress(float64(density) * s.Thickness.Metres() * measure.StandardGravity)
	if !g.in.Quiet {
		g.loads.list(Load{ID: "surface", What: "surface of " + s.Kind, Amount: weight, Total: weight.On(g.frame.Length.Times(g.frame.Width)), Source: source, Path: path,
			Memory:  path != "" && g.job.Recalled(path),
			Formula: "weight = density · thickness", Working: fmt.Sprintf("%s × %s = %s", density.Print(g.words.Style), g.words.Length(s.Thickness),
				weight.Print(g.words.Style)), From: []string{"platform.surface.thickness"}})
	}
	return weight
}

// rimStrips lets the rims weigh where they stand.
func (g *gatherer) rimStrips(rim measure.LineLoad) {
	total := measure.Force(0)
	for _, r := range g.frame.Rims {
		y := r.Y.Metres() + g.frame.Sections.Rim.Across().Metres()/2
		if r.Y > g.frame.Width/2 {
			y = r.Y.Metres() - g.frame.Sections.Rim.Across().Metres()/2
		}
		for _, p := range r.Pieces {
			s := Strip{DeadCase, p.From.Metres(), y, p.To.Metres(), y, float64(rim), "rim " + r.Side}
			g.loads.Strips = append(g.loads.Strips, s)
			total += measure.Force(s.Total())
		}
	}
	if !g.in.Quiet && total > 0 {
		g.loads.list(Load{ID: "rims", What: "rims, by their length", Amount: rim, Total: total, Source: "as the joists",
			Formula: "weight = density · width · depth", Working: rim.Print(g.words.Style) + " on each long side", From: []string{"rim.length"}})
	}
}

// liveLoad puts the load of use on the floor.
func (g *gatherer) liveLoad() {
	live := g.job.Platform.FloorLoad
	l := g.loads
	if live <= 0 {
		g.wrong("platform.floor_load", "no floor load is known", "name a use, or give a floor_load such as 40 psf")
		return
	}
	l.Area[LiveCase], l.Present[LiveCase] = float64(live), true
	if g.in.Quiet {
		return
	}
	path, source := "platform.floor_load", g.job.Basis("platform.floor_load")
	l.list(Load{ID: "floor", What: "floor live load", Amount: live, Total: live.On(g.frame.Length.Times(g.frame.Width)), Source: source, Path: path, Memory: g.job.Recalled("platform.floor_load")})
	g.patchItems()
}

// patchItems lists the heavy things that stand on the floor besides its live load.
func (g *gatherer) patchItems() {
	w := g.words
	for _, p := range g.in.Patches {
		path := "platform.loads." + p.Name + ".load"
		g.loads.list(Load{ID: "patch." + p.Name, What: fmt.Sprintf("%s, on %s × %s at %s along and %s across, besides the floor load", p.Name, w.Length(p.Length),
			w.Length(p.Width), w.Length(p.X), w.Length(p.Y)),
			Amount: p.Load, Total: p.Load, Source: g.job.Basis(path), Path: path})
	}
}
