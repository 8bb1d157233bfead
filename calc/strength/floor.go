package strength

import (
	"fmt"

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

// strip is a load along a line on the floor: a wall or a rim.
type strip struct {
	kind           loadCase
	x1, y1, x2, y2 float64
	size           float64 // N/m
	name           string
}

func (s strip) alongX() bool { return s.y1 == s.y2 }

func (s strip) total() float64 { return s.size * max(s.x2-s.x1, s.y2-s.y1) }

// floorLoads are all loads that stand on the floor, before they are carried down.
type floorLoads struct {
	area    [caseCount]float64 // N/m2
	strips  []strip
	items   []Load
	beam    float64 // own weight of a beam line, N/m
	post    float64 // of a post, N/m
	present [caseCount]bool
}

// timberDensity returns what the frame's timber weighs: as given, or by the
// specific gravity of the species at 15 per cent moisture dry and 19 wet.
func (c *checker) timberDensity() (measure.Density, string, bool) {
	timber := c.job.Timber
	if timber.Density > 0 {
		return timber.Density, c.basis("timber.density"), true
	}
	moisture := 15.0
	if timber.Wet {
		moisture = 19
	}
	if s, ok := FindSpecies(timber.Species); ok {
		return s.Density(moisture), fmt.Sprintf("G %.2f at %.0f%% moisture, %s", float64(s.SpecificGravity), moisture, s.Source), true
	}
	return 0, "", false
}

// ownWeights puts the weight of the actual parts on the floor.
func (c *checker) ownWeights() {
	f, l, w := c.frame, &c.loads, c.words
	density, source, known := c.timberDensity()
	if !known {
		c.wrong("timber.density", fmt.Sprintf("the weight of %q is not known", c.job.Timber.Species), "give timber.density, such as 28 pcf or 450 kg/m3")
		return
	}
	area := f.Length.Times(f.Width)
	weigh := func(s job.Section) measure.LineLoad {
		return measure.LineLoad(float64(density) * float64(s.Across().Times(s.Depth)) * measure.StandardGravity)
	}
	surface := c.surfaceWeight(density)
	var joists, blocking measure.Length
	for _, j := range f.Joists {
		joists += j.Long()
	}
	for _, b := range f.Blocking {
		blocking += b.To - b.From
	}
	joist := weigh(f.Sections.Joist)
	framing := measure.Stress(float64(joist) * (joists + blocking).Metres() / float64(area))
	l.area[deadCase] = float64(surface + framing)
	l.present[deadCase] = true
	l.beam = float64(weigh(f.Sections.Beam))
	l.post = float64(weigh(f.Sections.Post))
	c.rimStrips(weigh(f.Sections.Rim))
	if c.quiet {
		return
	}
	l.add(Load{ID: "joists", What: "joists and blocking, spread over the floor", Amount: framing, Total: framing.On(area), Source: source,
		Formula: "weight = density · width · depth · total length / area",
		Working: fmt.Sprintf("%s × %s × %s × %s / %s = %s", density.Print(w.style), w.length(f.Sections.Joist.Across()), w.length(f.Sections.Joist.Depth), w.length(joists+blocking), area.Print(w.style), framing.Print(w.style)), From: []string{"frame.length", "frame.width", "joist.count", "joist.length"}})
	beam := measure.LineLoad(l.beam)
	l.add(Load{ID: "beams", What: "each beam line, by its length", Amount: beam, Total: measure.Force(l.beam * c.beamMetres()), Source: source,
		Formula: "weight = density · width · depth",
		Working: fmt.Sprintf("%s × %s × %s = %s", density.Print(w.style), w.length(f.Sections.Beam.Across()), w.length(f.Sections.Beam.Depth), beam.Print(w.style)), From: []string{"beam.length"}})
}

func (c *checker) beamMetres() float64 {
	sum := 0.0
	for _, line := range c.frame.Lines {
		sum += (line.End - line.Start).Metres()
	}
	return sum
}

// surfaceWeight returns the weight of the surface by area. Panels without a
// density of their own weigh 36 pcf (HUD Residential Structural Design Guide,
// 2000, Table 3.3), boards what the timber weighs.
func (c *checker) surfaceWeight(timber measure.Density) measure.Stress {
	s := c.job.Platform.Surface
	density, source, path := s.Density, c.basis("platform.surface.density"), "platform.surface.density"
	if density == 0 {
		density, source, path = timber, "as the frame's timber", ""
		if s.Kind == "panels" {
			density, source = 36*measure.PoundPerCubicFoot, "HUD Residential Structural Design Guide (2000) Table 3.3: 36 pcf"
		}
	}
	weight := measure.Stress(float64(density) * s.Thickness.Metres() * measure.StandardGravity)
	if !c.quiet {
		c.loads.add(Load{ID: "surface", What: "surface of " + s.Kind, Amount: weight, Total: weight.On(c.frame.Length.Times(c.frame.Width)), Source: source, Path: path, Memory: path != "" && c.recalled(path),
			Formula: "weight = density · thickness", Working: fmt.Sprintf("%s × %s = %s", density.Print(c.words.style), c.words.length(s.Thickness), weight.Print(c.words.style)), From: []string{"platform.surface.thickness"}})
	}
	return weight
}

// rimStrips lets the rims weigh where they stand.
func (c *checker) rimStrips(rim measure.LineLoad) {
	total := measure.Force(0)
	for _, r := range c.frame.Rims {
		y := r.Y.Metres() + c.frame.Sections.Rim.Across().Metres()/2
		if r.Y > c.frame.Width/2 {
			y = r.Y.Metres() - c.frame.Sections.Rim.Across().Metres()/2
		}
		for _, p := range r.Pieces {
			s := strip{deadCase, p.From.Metres(), y, p.To.Metres(), y, float64(rim), "rim " + r.Side}
			c.loads.strips = append(c.loads.strips, s)
			total += measure.Force(s.total())
		}
	}
	if !c.quiet && total > 0 {
		c.loads.add(Load{ID: "rims", What: "rims, by their length", Amount: rim, Total: total, Source: "as the joists",
			Formula: "weight = density · width · depth", Working: rim.Print(c.words.style) + " on each long side", From: []string{"rim.length"}})
	}
}

// basis tells where a value of the job comes from: the job file, or the source
// of its default.
func (c *checker) basis(path string) string {
	if e, ok := c.job.Entry(path); ok && e.Source != "" {
		return e.Source
	}
	return "job file"
}

// recalled says whether a value of the job, or its source, is from memory.
func (c *checker) recalled(path string) bool {
	e, ok := c.job.Entry(path)
	return ok && e.Memory
}

// liveLoad puts the load of use on the floor.
func (c *checker) liveLoad() {
	live := c.job.Platform.FloorLoad
	l := &c.loads
	if live <= 0 {
		c.wrong("platform.floor_load", "no floor load is known", "name a use, or give a floor_load such as 40 psf")
		return
	}
	l.area[liveCase], l.present[liveCase] = float64(live), true
	if c.quiet {
		return
	}
	path, source := "platform.floor_load", c.basis("platform.floor_load")
	l.add(Load{ID: "floor", What: "floor live load", Amount: live, Total: live.On(c.frame.Length.Times(c.frame.Width)), Source: source, Path: path, Memory: c.recalled("platform.floor_load")})
	c.patchItems()
}

// patchItems lists the heavy things that stand on the floor besides its live load.
func (c *checker) patchItems() {
	w := c.words
	for _, p := range c.in.Patches {
		path := "platform.loads." + p.Name + ".load"
		c.loads.add(Load{ID: "patch." + p.Name, What: fmt.Sprintf("%s, on %s × %s at %s along and %s across, besides the floor load", p.Name, w.length(p.Length), w.length(p.Width), w.length(p.X), w.length(p.Y)),
			Amount: p.Load, Total: p.Load, Source: c.basis(path), Path: path})
	}
}

func (l *floorLoads) add(items ...Load) { l.items = append(l.items, items...) }
