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
