package levelling

import (
	"cmp"
	"slices"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Stand is a place for the instrument, with what its class lets it be wrong at
// each pier.
type Stand struct {
	Where  string // in words
	X, Y   measure.Length
	Piers  []PierError    // in the order of the frame
	Worst  PierError      // the farthest pier
	Spread measure.Length // greatest less least error: what sights of unequal length do to the piers among themselves
}

// PierError is the error that the instrument's class allows at a pier.
type PierError struct {
	Pier     string
	Distance measure.Length
	Error    measure.Length
}

// besideFrame is how far outside the frame a tripod is out of the way. Common
// practice, no source.
const besideFrame = 6 * measure.Foot

// Stands returns places to stand, the best first: in the middle of the frame,
// where the longest sight is shortest, and outside it beside the middle of each
// side, out of the way of the work.
//
//	error = distance × (error of the class ÷ the distance it is given for)
//
// A tilt that is the same all round cancels between sights of equal length, so
// the spread of the errors matters for the level of the floor, their size only
// for its height. Water stands level whatever its distance, so that a water level
// has no stands.
func Stands(j *job.Job, f *frame.Frame) []Stand {
	tool := j.Ground.Instrument
	if tool.Kind == "water_level" || tool.Error <= 0 || tool.Over <= 0 {
		return nil
	}
	middleX, middleY := f.Length/2, f.Width/2
	places := []Stand{
		{Where: "in the middle of the frame", X: middleX, Y: middleY},
		{Where: "beside the middle of line " + f.Lines[0].Name, X: middleX, Y: -besideFrame},
		{Where: "beside the middle of line " + f.Lines[len(f.Lines)-1].Name, X: middleX, Y: f.Width + besideFrame},
		{Where: "beyond the first piers", X: -besideFrame, Y: middleY},
		{Where: "beyond the last piers", X: f.Length + besideFrame, Y: middleY},
	}
	for i := range places {
		places[i].predict(f, tool)
	}
	slices.SortStableFunc(places, func(a, b Stand) int {
		return cmp.Or(cmp.Compare(a.Worst.Error, b.Worst.Error), cmp.Compare(a.Spread, b.Spread))
	})
	return places
}

func (s *Stand) predict(f *frame.Frame, tool job.Instrument) {
	var least measure.Length
	for i, p := range f.Piers {
		distance := measure.Hypot(p.X-s.X, p.Y-s.Y)
		e := PierError{Pier: p.Name, Distance: distance, Error: offBy(tool, distance)}
		s.Piers = append(s.Piers, e)
		if i == 0 || e.Error < least {
			least = e.Error
		}
		if i == 0 || e.Error > s.Worst.Error {
			s.Worst = e
		}
	}
	s.Spread = s.Worst.Error - least
}
