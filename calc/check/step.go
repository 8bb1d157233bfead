package check

import "pierbook/calc/measure"

// Stage is one stage of a load on its way down, with the running sum.
type Stage struct {
	Part    string // surface, joists, walls, beam, runs on, post, block, stone, soil
	Adds    measure.Force
	Sum     measure.Force
	Working string
	Check   string // the check that governs the part, such as "bending 0.62"; empty when none
}
