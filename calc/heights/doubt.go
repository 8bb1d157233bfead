package heights

import (
	"fmt"

	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// DoubtfulSeat is a seat that was read farther from its plan than the blocks are
// set to, [trade.SeatAccept]. Before its post is cut it is read again.
type DoubtfulSeat struct {
	Pier   string
	Over   measure.Length // as read, over the plan
	Kind   string         // the usual slip that would explain it, empty when none does
	Should measure.Length // the reading without that slip
}

// DoubtfulSeats returns the seats to read again, of posts that are not cut.
func (h *Heights) DoubtfulSeats(j *job.Job) []DoubtfulSeat {
	if h.Seats == nil {
		return nil
	}
	accepted, aimed := trade.SeatAccept.In(j.Units), trade.BedDo.In(j.Units)
	var list []DoubtfulSeat
	for _, seat := range h.Seats.Read {
		pier, _ := h.Pier(seat.Name)
		_, cut := j.Measured.PostsCut[seat.Name]
		if pier.Expected == nil || cut || seat.Over().Abs() <= accepted || pier.asBefore(seat.Height, accepted) {
			continue
		}
		d := DoubtfulSeat{Pier: seat.Name, Over: seat.Over()}
		// A seat is set within what is accepted, so that a slip is as near as that only
		// where it is many times as great.
		within := min(accepted, max(aimed, seat.Over().Abs()/8))
		if kind, should, found := levelling.Misread(seat.Reading, seat.Reading+seat.Over(), within, j.Ground.Instrument.Reads); found {
			d.Kind, d.Should = kind, should
		}
		list = append(list, d)
	}
	return list
}

// asBefore holds for a seat that was set as planned before its hole was measured:
// what was dug too deep is filled with stone, and whoever did so read no slip.
func (p PierHeights) asBefore(seat, accepted measure.Length) bool {
	return p.Planned != nil && (seat-p.Planned.Seat).Abs() <= accepted
}

// Sentence tells what to do about the seat.
func (d DoubtfulSeat) Sentence(s measure.Style) string {
	where := "under"
	if d.Over > 0 {
		where = "over"
	}
	text := fmt.Sprintf("Read seat %s again before its post is cut: it stands %s %s its plan", d.Pier, d.Over.Abs().Print(s), where)
	if d.Kind != "" {
		text += fmt.Sprintf("; read as %s it would fit (%s)", measure.Reading(d.Should).Print(s), d.Kind)
	}
	return text + "."
}
