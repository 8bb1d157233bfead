package strength

import (
	"pierbook/calc/frame"
	"pierbook/calc/job"
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
