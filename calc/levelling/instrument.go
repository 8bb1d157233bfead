package levelling

import (
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// offBy returns what the class of a tool lets it be off by in a distance, 0 when
// it has none.
//
//	error = distance × error of the class ÷ the distance it is given for
func offBy(tool job.Instrument, distance measure.Length) measure.Length {
	if tool.Over <= 0 {
		return 0
	}
	return distance.Scale(float64(tool.Error) / float64(tool.Over))
}

// InstrumentCheck is one check of the instrument, as it came out.
type InstrumentCheck struct {
	Name  string         // "pegs", "wall", "wall_across", "ends"
	Over  measure.Length // distance in which the error was found; 0 for the ends of a tube
	Error measure.Length // with its sign for pegs: above 0 it reads too high
	Limit measure.Length // what the class of the tool allows in that distance
}

// InOrder holds when the tool may be used as it is.
func (c InstrumentCheck) InOrder() bool { return c.Error.Abs() <= c.Limit }

// InstrumentChecks returns the checks of the instrument that the job tells of.
// The limit of each is what the tool's class allows.
func InstrumentChecks(j *job.Job) []InstrumentCheck {
	tool := j.Ground.Instrument
	var list []InstrumentCheck
	if tool.Pegs != nil {
		peg := PegTest(*tool.Pegs)
		list = append(list, InstrumentCheck{Name: "pegs", Over: peg.Apart(), Error: peg.Error(peg.Apart()), Limit: offBy(tool, peg.Apart())})
	}
	if wall := tool.Wall; wall != nil {
		list = append(list, InstrumentCheck{Name: "wall", Over: wall.Distance, Error: TurnAbout{Gap: wall.Gap}.Error(), Limit: offBy(tool, wall.Distance)})
		if wall.Across != nil {
			list = append(list, InstrumentCheck{Name: "wall_across", Over: wall.Distance, Error: TurnAbout{Gap: *wall.Across}.Error(), Limit: offBy(tool, wall.Distance)})
		}
	}
	if tool.Ends != nil {
		list = append(list, InstrumentCheck{Name: "ends", Error: *tool.Ends, Limit: tool.Error})
	}
	return list
}
