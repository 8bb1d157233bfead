package setout

import "pierbook/calc/figure"

// Questions are what pages ask of the setting-out with {when}.
func (s *SetOut) Questions() []figure.Figure {
	return []figure.Figure{
		figure.Answer("has.strings", "the strings were measured", s.Strings != nil, "the job file has measured strings"),
		figure.Answer("has.frame_measured", "the beams were measured for square", s.Sides != nil, "the job file has a measured frame"),
	}
}
