package strength

import (
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
	LiveLimit, TotalLimit, OverhangLimit int            // L/360, L/240, 2a/360
	Eccentricity                         measure.Length // of a post on its block
	StoneBearing                         measure.Stress // allowable on the compacted bed
	StoneFriction                        measure.Ratio  // allowable, block on stone
	BracedAbove                          measure.Length // post
	NotSizedAbove                        measure.Length // block and post together
	RiskCategory                         string
	Editions                             string
}

// DefaultRules returns the limits that hold unless the job says otherwise.
func DefaultRules() Rules {
	return Rules{
		LiveLimit: 360, TotalLimit: 240, OverhangLimit: 180, // IRC R301.7 as printed in R502.3.1 and R507.5; cantilever 2a/360
		Eccentricity:  measure.Inch / 2,  // common practice, no source
		StoneBearing:  psf(3000),         // IBC 2012 Table 1806.2, gravel
		StoneFriction: 0.55 / 1.5,        // NAVFAC DM 7.02 Table 1, concrete on clean gravel 0.55, over 1.5
		BracedAbove:   24 * measure.Inch, // common practice, no source
		NotSizedAbove: 36 * measure.Inch, // 24 CFR 3285.306 form: taller single stacks are an engineer's; from memory
		RiskCategory:  "II",              // ASCE 7-16 Table 1.5-1, from memory
		Editions:      "NDS 2018, ASCE 7-16, IRC 2021",
	}
}

func (r Rules) filled() Rules {
	d := DefaultRules()
	r.LiveLimit, r.TotalLimit, r.OverhangLimit = orInt(r.LiveLimit, d.LiveLimit), orInt(r.TotalLimit, d.TotalLimit), orInt(r.OverhangLimit, d.OverhangLimit)
	r.Eccentricity = orLength(r.Eccentricity, d.Eccentricity)
	r.BracedAbove, r.NotSizedAbove = orLength(r.BracedAbove, d.BracedAbove), orLength(r.NotSizedAbove, d.NotSizedAbove)
	if r.StoneBearing == 0 {
		r.StoneBearing = d.StoneBearing
	}
	if r.StoneFriction == 0 {
		r.StoneFriction = d.StoneFriction
	}
	if r.RiskCategory == "" {
		r.RiskCategory = d.RiskCategory
	}
	if r.Editions == "" {
		r.Editions = d.Editions
	}
	return r
}

func orInt(v, usual int) int {
	if v == 0 {
		return usual
	}
	return v
}

func orLength(v, usual measure.Length) measure.Length {
	if v == 0 {
		return usual
	}
	return v
}
