package strength

import (
	"pierbook/calc/check"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// Input is all that the checks are worked out from.
type Input struct {
	Job     *job.Job
	Frame   *frame.Frame
	Heights map[string]statics.Height  // by pier; nil before the ground is known, and then the job's bounds stand in
	Patches []loads.Patch              // heavy things at a place: a stove, a tank
	Steep   map[string]measure.Percent // slope of the ground at the piers where it is an engineer's matter; nil before it is known
	Walls   []loads.PlacedWall         // nil for the four outer walls of the building
	Rules   check.Rules                // zero fields take the defaults of [DefaultRules]
}
