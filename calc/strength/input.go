package strength

import (
	"cmp"
	"maps"
	"slices"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Input is all that the checks are worked out from.
type Input struct {
	Job     *job.Job
	Frame   *frame.Frame
	Heights map[string]Height // by pier; nil before the ground is known, and then the job's bounds stand in
	Patches []Patch           // heavy things at a place: a stove, a tank
	Walls   []Wall            // nil for the four outer walls of the building
	Rules   Rules             // zero fields take the defaults of [DefaultRules]
}

// Height is how tall one pier stands.
type Height struct {
	Post  measure.Length // between the seat and the cap
	Dig   measure.Length // below the ground
	Stone measure.Length // compacted bed under the block
}

// Patch is a load at a place of the floor that may be there or not.
type Patch struct {
	Name          string
	X, Y          measure.Length // its corner nearest the frame corner by A1
	Length, Width measure.Length // along x and y
	Load          measure.Force
}

// Wall is a straight wall along x or along y, by its centre line.
type Wall struct {
	Name             string
	X1, Y1, X2, Y2   measure.Length
	CarriesRoof      bool          // an eaves wall
	ShareOfRoof      measure.Ratio // of the roof's whole load
	ShareOfWallsMass measure.Ratio
}

// Long returns the length of the wall.
func (w Wall) Long() measure.Length { return max((w.X2 - w.X1).Abs(), (w.Y2 - w.Y1).Abs()) }

// Rules are the limits and allowances that the job may set and that have
// defaults. Ratios are spans over a number.
type Rules struct {
	LiveLimit, TotalLimit int            // L/360, L/240; overhangs 2a over the same
	Eccentricity          measure.Length // of a post on its block
	StoneBearing          measure.Stress // allowable on the compacted bed
	StoneFriction         measure.Ratio  // allowable, block on stone
	BracedAbove           measure.Length // post
	NotSizedAbove         measure.Length // block and post together
	RiskCategory          string
	Editions              string
}

// DefaultRules returns the limits that hold unless the job says otherwise.
func DefaultRules() Rules {
	return Rules{
		LiveLimit: 360, TotalLimit: 240, // IRC 2021 R301.7, R502.3.1 and R507.5; cantilever 2a/360
		Eccentricity:  measure.Inch / 2,  // common practice, no source
		StoneBearing:  psf(3000),         // IBC 2012 Table 1806.2, gravel
		StoneFriction: 0.55 / 1.5,        // NAVFAC DM 7.02 Table 1, concrete on clean gravel 0.55, over 1.5
		BracedAbove:   24 * measure.Inch, // common practice, no source
		NotSizedAbove: 36 * measure.Inch, // 24 CFR 3285.306 form: taller single stacks are an engineer's; from memory
		RiskCategory:  "II",              // ASCE 7-16 Table 1.5-1, from memory
		Editions:      "NDS 2018, ASCE 7-16, IRC 2021",
	}
}

// rulesOf takes what was given in so many words, then what the job says, then
// the defaults.
func rulesOf(given Rules, j *job.Job) Rules {
	d, w := DefaultRules(), j.Design
	r := given
	r.LiveLimit, r.TotalLimit = cmp.Or(r.LiveLimit, w.LiveLimit, d.LiveLimit), cmp.Or(r.TotalLimit, w.TotalLimit, d.TotalLimit)
	r.Eccentricity = cmp.Or(r.Eccentricity, d.Eccentricity)
	r.BracedAbove, r.NotSizedAbove = cmp.Or(r.BracedAbove, w.BracedAbove, d.BracedAbove), cmp.Or(r.NotSizedAbove, w.NotSizedAbove, d.NotSizedAbove)
	r.StoneBearing, r.StoneFriction = cmp.Or(r.StoneBearing, w.StoneBearing, d.StoneBearing), cmp.Or(r.StoneFriction, d.StoneFriction)
	r.RiskCategory, r.Editions = cmp.Or(r.RiskCategory, w.RiskCategory, d.RiskCategory), cmp.Or(r.Editions, w.Editions, d.Editions)
	return r
}

// placed returns the input with the job's own heavy loads and walls in it, by
// name, where none were handed over.
func placed(in Input) Input {
	if in.Patches == nil {
		for _, name := range slices.Sorted(maps.Keys(in.Job.Platform.Loads)) {
			p := in.Job.Platform.Loads[name]
			in.Patches = append(in.Patches, Patch{name, p.X, p.Y, p.Length, p.Width, p.Load})
		}
	}
	if in.Walls == nil && in.Job.Building != nil {
		for _, name := range slices.Sorted(maps.Keys(in.Job.Building.Walls)) {
			w := in.Job.Building.Walls[name]
			wall := Wall{Name: name, X1: w.From, X2: w.To, Y1: w.At, Y2: w.At, CarriesRoof: w.Roof}
			if w.Runs == "along_width" {
				wall.X1, wall.X2, wall.Y1, wall.Y2 = w.At, w.At, w.From, w.To
			}
			in.Walls = append(in.Walls, wall)
		}
	}
	return in
}
