package heights

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/fault"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// nothingLeft reports seats that leave no post at all under the beam: a slip of the
// rod, of the bench mark or of a tape on the beam, and never a length to cut. It
// names what was measured last: the beam, where the post stood on paper without it.
func (h *Heights) nothingLeft(j *job.Job) fault.List {
	var faults fault.List
	if h.Seats == nil {
		return faults
	}
	style := j.Style()
	for _, seat := range h.Seats.Read {
		line := h.Lines[h.frame.Piers[h.index[seat.Name]].Line]
		post := line.Top - seat.Height
		if post > 0 {
			continue
		}
		path, remedy := "measured.seats."+seat.Name, "read this seat and the bench mark again"
		if post+line.BuildUp-h.terms.BuildUp > 0 {
			path, remedy = "measured.timber.beams."+line.Name, "measure the beam again"
			if _, given := j.Measured.Timber.Beams[line.Name]; !given {
				path, remedy = "measured.timber.joists", "measure the joists again"
			}
		}
		faults.Add(fault.Fault{At: j.At(path), Path: path,
			Wrong: fmt.Sprintf("the seat of %s stands %s over the tops of its line, so that no post is left under the beam",
				seat.Name, (-post).Print(style)), Remedy: remedy})
	}
	return faults
}

// Unfitting tells of the posts that nobody may cut: the seat as read, or the beam as
// measured, asks for one under the shortest or over the longest.
func (h *Heights) Unfitting(style measure.Style) []string {
	var list []string
	for _, p := range h.Posts {
		if p.State != Unfit {
			continue
		}
		words := fmt.Sprintf("The post at %s would be %s, over the longest of %s", p.Name, p.Length().Print(style), h.terms.Longest.Print(style))
		if p.Length() < h.terms.Shortest {
			words = fmt.Sprintf("The post at %s would be %s, under the shortest of %s", p.Name, p.Length().Print(style), h.terms.Shortest.Print(style))
		}
		words += ": it is not cut and stands in no cutting plan."
		if len(p.Ways) > 0 {
			words += fmt.Sprintf(" Read the seat again; if it is so, %s by %s.", p.Ways[0].Kind, p.Ways[0].By.Print(style))
		}
		list = append(list, words)
	}
	return list
}

// DayMisread says that the bench mark was misread on the day of the seats, or is not
// the one of the level book, or returns "": no two blocks are set wrong alike, but
// all are off together.
func (h *Heights) DayMisread(j *job.Job) string {
	off, all := h.allOff(trade.SeatAccept.In(j.Units))
	if !all {
		return ""
	}
	return fmt.Sprintf("Every seat that was read stands about %s off its plan, the same way (%s): the bench mark of that day was misread, or is not the one of the level book. Read it again before any post is cut.",
		off.Abs().Print(j.Style()), strings.Join(h.seatNames(), ", "))
}

// fewestAlike is how many seats off by the same amount point to the bench mark and
// not to themselves.
const fewestAlike = 3

// allOff returns by how much all seats are off their plan, and whether they are off
// together, each by more than is accepted.
func (h *Heights) allOff(accepted measure.Length) (measure.Length, bool) {
	if h.Seats == nil || h.Floor == nil || len(h.Seats.Read) < fewestAlike {
		return 0, false
	}
	var over []measure.Length
	for _, seat := range h.Seats.Read {
		over = append(over, seat.Over())
	}
	slices.Sort(over)
	middle := over[len(over)/2]
	alike := over[len(over)-1]-over[0] <= 2*accepted
	return middle, alike && (over[0] > accepted || over[len(over)-1] < -accepted)
}

func (h *Heights) seatNames() []string {
	var names []string
	for _, seat := range h.Seats.Read {
		names = append(names, seat.Name)
	}
	return names
}
