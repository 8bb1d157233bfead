package frame

import (
	"slices"

	"pierbook/calc/figure"
)

// Questions are what pages ask of the frame with {when}.
func (f *Frame) Questions() []figure.Figure {
	built := f.Sections.Beam.Plies > 1
	joints := slices.ContainsFunc(f.Piers, func(p Pier) bool { return p.Splice })
	return []figure.Figure{
		figure.Answer("has.panels", "the surface is panels", len(f.Surface.Panels) > 0, "surface is panels", "platform.surface.kind"),
		figure.Answer("has.boards", "the surface is boards", len(f.Surface.Boards) > 0, "surface is boards", "platform.surface.kind"),
		figure.Answer("has.between", "joists sit between the beams", f.BuildUp.Joist == 0, "joists sit between the beams", "frame.joists.sit"),
		figure.Answer("has.blocking", "there is blocking", len(f.Blocking) > 0, "count of blocking above 0", "blocking.count"),
		figure.Answer("has.openings", "the floor has openings", len(f.Openings) > 0, "openings above 0", "openings.count"),
		figure.Answer("has.headers", "an opening cuts a joist, a rim or a beam", slices.ContainsFunc(f.Openings, Opening.NeedsHeaders), "openings that cut the frame above 0", "openings.cutting"),
		figure.Answer("has.built_up", "beams are built up of plies", built, "plies above 1", "beam.plies"),
		figure.Answer("has.single_beams", "beams are one piece thick", !built, "plies = 1", "beam.plies"),
		figure.Answer("has.joints", "beams have joints", joints, "joints above 0", "beam.joints"),
	}
}
