package crew

import "pierbook/calc/measure"

// Work is how much there is to do.
type Work struct {
	Piers, Posts, BeamPieces, Joists, Rims, Panels, Boards int
	Readings                                               int
	Dig, Stone                                             measure.Volume // dug in the bank, stone compacted
	Area                                                   measure.Area
	BeamRun, JoistRun                                      measure.Length
}

// Step is one step of the work, in order, as the binder's step sheets name it.
type Step struct {
	Name      string // "dig"
	Title     string
	People    int    // who can work at it together
	Overnight string // whether the work may be left overnight after it
	Hold      string // the hold point at its end
}

// MayWait says whether the work may be left overnight.
func (s Step) MayWait() bool { return len(s.Overnight) < 2 || s.Overnight[:2] != "no" }

// Steps returns the steps of the work in order.
func Steps() []Step {
	return []Step{
		{"set-out", "Set out and square", 2, "yes, strings down and line marks kept", "four sides and two diagonals within their limits"},
		{"survey", "Read the ground", 2, "yes", "the level book closes"},
		{"choose-height", "Choose the height", 1, "yes", "the floor height is agreed and written down"},
		{"mark-piers", "Mark the piers", 2, "yes", "every pier centre checked from the hook corner"},
		{"dig", "Dig", 2, "yes, every hole covered", "firm ground in every hole, written down"},
		{"stone", "Lay and tamp the stone", 2, "yes, covered against rain", "top of every bed at its height"},
		{"blocks", "Set the blocks", 2, "yes", "every seat read and written down"},
		{"posts", "Cut and set the posts", 2, "no: brace them or lay them down", "every post top at one reading"},
		{"beams", "Lay the beams", 2, "yes, once braced", "all lines level and straight, joints over posts"},
		{"square-again", "Square again", 2, "yes, braced", "four sides and two diagonals within their limits"},
		{"ground-cloth", "Lay the ground cloth", 2, "yes, weighted down", "laps the right way and wide enough"},
		{"joists", "Set the joists", 2, "yes, with the rims nailed", "every joist on its mark, crown up"},
		{"surface", "Lay the floor", 2, "no: fix what is laid, tie down what is loose", "gaps, fasteners and edges checked"},
		{"final-check", "Check and hand over", 2, "yes", "as-built readings within their limits, the book signed"},
	}
}
