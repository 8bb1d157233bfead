package heights

import (
	"fmt"

	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

// Seats are the rod readings in the seats of the blocks, all from one set-up.
type Seats struct {
	BenchMark  measure.Length  // the day's reading on the bench mark
	Instrument measure.Length  // height of the bench mark + that reading
	Close      *measure.Length // the bench mark read again at the end, nil when it was not
	Misses     measure.Length  // what the second reading says, found − known
	Read       []SeatRead      // in the order of the piers
}

// SeatRead is one seat.
type SeatRead struct {
	Name     string
	Reading  measure.Length
	Height   measure.Length // instrument − reading
	Expected measure.Length // as the plan with the holes as dug has it
}

// Over returns how far the seat came out above what was expected.
func (s SeatRead) Over() measure.Length { return s.Height - s.Expected }

// readSeats works out the heights of the seats.
//
//	seat = height of the bench mark + its reading − reading in the seat
//
// No misclosure is shared out, so that the heights are those that the sheet
// gives on paper. It reports a fault when the bench mark was not read that day
// and when the second reading of it misses by more than one set-up may.
func readSeats(j *job.Job, f *frame.Frame) (*Seats, fault.List) {
	readings := j.Measured.Seats
	bench, again, faults := levelling.Day(j, readings, "measured.seats")
	if len(readings) == 0 || !faults.Empty() {
		return nil, faults
	}
	s := &Seats{BenchMark: bench, Instrument: j.Ground.BenchMark.Height + bench, Close: again}
	if again != nil {
		s.Misses = bench - *again
	}
	for _, p := range f.Piers {
		if reading, read := readings[p.Name]; read {
			s.Read = append(s.Read, SeatRead{Name: p.Name, Reading: reading, Height: s.Instrument - reading})
		}
	}
	return s, faults
}

// height returns the height of a seat that was read.
func (s *Seats) height(pier string) *measure.Length {
	if s == nil {
		return nil
	}
	for _, read := range s.Read {
		if read.Name == pier {
			return &read.Height
		}
	}
	return nil
}

// locked reports that the floor may not be worked out anew once a seat is read
// or a post cut, and gives the line that holds it where it is: the floor as it
// was before a seat was set or a beam measured, which the last binder printed.
// Holes may or may not have been in that binder, so that a floor which they
// changed is named too.
func (h *Heights) locked(j *job.Job) (fault.Fault, bool) {
	if !j.Platform.Floor.Lowest || (h.Seats == nil || len(h.Seats.Read) == 0) && len(j.Measured.PostsCut) == 0 {
		return fault.Fault{}, false
	}
	const path = "platform.floor.height"
	f := fault.Fault{At: j.At(path), Path: path,
		Wrong:  `"lowest" would move the floor under seats that are read or posts that are cut`,
		Remedy: "give the height of the floor that the last binder printed"}
	planned, clash := h.terms.floor(h.planned(j), h.ground.Inside())
	dug, stuck := h.terms.floor(h.dug(j), h.ground.Inside())
	switch {
	case clash != nil && stuck != nil:
	case clash != nil:
		f.Remedy = fmt.Sprintf("write height: %s in its place, the floor of the last binder", dug.Height)
	default:
		f.Remedy = fmt.Sprintf("write height: %s in its place, the floor of the last binder", planned.Height)
		if stuck == nil && dug.Height != planned.Height {
			f.Remedy += fmt.Sprintf("; or height: %s if that binder already had the holes as dug", dug.Height)
		}
	}
	if e, given := j.Entry("platform.floor.round_up"); given && e.Origin != figure.Assumed {
		f.Remedy += "; take round_up out, a given height has none"
	}
	return f, true
}
