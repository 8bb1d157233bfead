package check

import (
	"cmp"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

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
	gravel, _ := trade.FindSoil("gravel")
	return Rules{
		LiveLimit: 360, TotalLimit: 240, // IRC 2021 R301.7, R502.3.1 and R507.5; cantilever 2a/360
		Eccentricity:  measure.Inch / 2, // common practice, no source
		StoneBearing:  gravel.Presumed,
		StoneFriction: 0.55 / 1.5,        // NAVFAC DM 7.02 Table 1, concrete on clean gravel 0.55, over 1.5
		BracedAbove:   24 * measure.Inch, // common practice, no source
		NotSizedAbove: 36 * measure.Inch, // 24 CFR 3285.306 form: taller single stacks are an engineer's; from memory
		RiskCategory:  "II",              // ASCE 7-16 Table 1.5-1, from memory
		Editions:      "NDS 2018, ASCE 7-16, IRC 2021",
	}
}

// RulesOf takes what was given in so many words, then what the job says, then
// the defaults.
func RulesOf(given Rules, j *job.Job) Rules {
	d, w := DefaultRules(), j.Design
	r := given
	r.LiveLimit, r.TotalLimit = cmp.Or(r.LiveLimit, w.LiveLimit, d.LiveLimit), cmp.Or(r.TotalLimit, w.TotalLimit, d.TotalLimit)
	r.Eccentricity = cmp.Or(r.Eccentricity, d.Eccentricity)
	r.BracedAbove, r.NotSizedAbove = cmp.Or(r.BracedAbove, w.BracedAbove, d.BracedAbove), cmp.Or(r.NotSizedAbove, w.NotSizedAbove, d.NotSizedAbove)
	r.StoneBearing, r.StoneFriction = cmp.Or(r.StoneBearing, w.StoneBearing, d.StoneBearing), cmp.Or(r.StoneFriction, d.StoneFriction)
	r.RiskCategory, r.Editions = cmp.Or(r.RiskCategory, w.RiskCategory, d.RiskCategory), cmp.Or(r.Editions, w.Editions, d.Editions)
	return r
}
