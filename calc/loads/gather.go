package loads

import (
	"fmt"
	"maps"
	"slices"

	"pierbook/calc/check"
	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Input is what the loads are found from.
type Input struct {
	Job          *job.Job
	Frame        *frame.Frame
	Patches      []Patch      // heavy things at a place: a stove, a tank
	Walls        []PlacedWall // nil for the four outer walls of the building
	Timber       TimberWeight
	RiskCategory string
	Underside    measure.Length                   // of the beams over the ground at the tallest pier
	Shares       func(y measure.Length) []float64 // what each beam line gets of a load along y
	Quiet        bool                             // a frame on trial: no rows of the load sheet
}

// TimberWeight is what the frame's timber weighs, and who says so.
type TimberWeight struct {
	Density measure.Density // 0 when not known
	Source  string
}

// Acting is all that acts on the platform, before it is carried down.
type Acting struct {
	Area       [CaseCount]float64 // N/m2
	Strips     []Strip
	Patches    []Patch
	Beam       float64   // own weight of a beam line, N/m
	Post       float64   // of a post, N/m
	LightShare float64   // the lightest building over the heaviest
	Wind       *WindLoad // nil when no wind or no building was given
	Present    [CaseCount]bool
	Items      []Load   // rows of the load sheet
	Unchecked  []string // what no load could be found for, and why
}

func (a *Acting) list(items ...Load) { a.Items = append(a.Items, items...) }

// SnowOnFloor is the snow on a floor without a building.
func (a *Acting) SnowOnFloor() measure.Stress { return measure.Stress(a.Area[SnowCase]) }

// gatherer is one run through the job's loads.
type gatherer struct {
	in     Input
	job    *job.Job
	frame  *frame.Frame
	words  check.Words
	faults fault.List
	loads  *Acting
}

// Gather finds what acts on the platform, and reports faults for loads that are
// not known.
func Gather(in Input) (*Acting, fault.List) {
	g := gatherer{in: in, job: in.Job, frame: in.Frame, words: check.Words{Style: in.Job.Style()}, loads: &Acting{Patches: in.Patches}}
	g.ownWeights()
	g.liveLoad()
	g.building()
	if g.faults.Empty() {
		g.wind()
	}
	return g.loads, g.faults
}

// wrong puts a fault at the place of a key of the job.
func (g *gatherer) wrong(path, wrong, remedy string) {
	g.faults.Add(fault.Fault{At: g.job.At(path), Path: path, Wrong: wrong, Remedy: remedy})
}

// Misplaced faults walls and patches that do not stand on the floor.
func Misplaced(in Input) fault.List {
	g := gatherer{in: in, job: in.Job, frame: in.Frame, words: check.Words{Style: in.Job.Style()}}
	g.offPlatform()
	return g.faults
}

// Placed returns the job's own heavy loads and walls by name, where none were
// handed over.
func Placed(j *job.Job, patches []Patch, walls []PlacedWall) ([]Patch, []PlacedWall) {
	if patches == nil {
		for _, name := range slices.Sorted(maps.Keys(j.Platform.Loads)) {
			p := j.Platform.Loads[name]
			patches = append(patches, Patch{name, p.X, p.Y, p.Length, p.Width, p.Load})
		}
	}
	if walls == nil && j.Building != nil {
		for _, name := range slices.Sorted(maps.Keys(j.Building.Walls)) {
			w := j.Building.Walls[name]
			wall := PlacedWall{Name: name, X1: w.From, X2: w.To, Y1: w.At, Y2: w.At, CarriesRoof: w.Roof}
			if w.Runs == "along_width" {
				wall.X1, wall.X2, wall.Y1, wall.Y2 = w.At, w.At, w.From, w.To
			}
			walls = append(walls, wall)
		}
	}
	return patches, walls
}

// WeightOf returns what the frame's timber weighs: as given, or by the specific
// gravity of the species at 15 per cent moisture dry and 19 wet.
func WeightOf(j *job.Job) TimberWeight {
	timber := j.Timber
	if timber.Density > 0 {
		return TimberWeight{Density: timber.Density, Source: j.Basis("timber.density")}
	}
	moisture := 15.0
	if timber.Wet {
		moisture = 19
	}
	s, ok := trade.FindSpecies(timber.Species)
	if !ok {
		return TimberWeight{}
	}
	return TimberWeight{Density: s.DensityAt(moisture), Source: fmt.Sprintf("G %.2f at %.0f%% moisture, %s", float64(s.Gravity), moisture, s.Source)}
}
