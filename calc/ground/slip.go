package ground

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Slip is a usual mistake in one reading that would bring a run back inside its
// limit.
type Slip struct {
	SetUp   int       // number of the set-up, as in the job file
	Sight   job.Sight // the reading as booked
	Kind    string    // "a foot", "an inch", "a tenth", "digits exchanged", "backsight and foresight exchanged", …
	Should  measure.Length
	Leaves  measure.Length // misclosure once it is mended
	Closing bool           // the reading is the closing sight on the bench mark itself
}

// slips returns every usual slip in a single reading on the way from the bench
// mark to the closing sight that would close the run, the best first. Only
// backsights and foresights carry the height on; a slip in an intermediate
// sight does not show in a misclosure.
func (r *reduction) slips(run Run) []Slip {
	var found []Slip
	closing := run.Closing
	for at := closing; ; {
		s := r.book.SetUps[at.SetUp]
		shot := s.Shots[at.Shot]
		if len(shot.Sights) == 1 {
			found = append(found, r.tries(run, s, shot.Sights[0], -1, at == closing)...)
		}
		found = append(found, r.tries(run, s, s.Backsight, +1, false)...)
		found = append(found, r.exchanged(run, s, shot.Reading)...)
		at = r.back[at.SetUp]
		if at.Shot < 0 {
			break
		}
		found = append(found, r.exchanged(run, s, r.book.SetUps[at.SetUp].Shots[at.Shot].Reading)...)
	}
	slices.SortStableFunc(found, func(a, b Slip) int {
		if d := a.Leaves.Abs() - b.Leaves.Abs(); d != 0 {
			return int(max(-1, min(1, d)))
		}
		return a.SetUp - b.SetUp
	})
	return found
}

// tries puts the usual slips of one reading to the test. A backsight raises what
// is found by what is added to it (sign +1), a foresight lowers it (−1).
func (r *reduction) tries(run Run, s SetUp, sight job.Sight, sign measure.Length, closing bool) []Slip {
	var found []Slip
	for _, c := range candidates(sight.Reading, r.job.Ground.Instrument.Reads) {
		leaves := run.Misclosure + sign*(c.should-sight.Reading)
		if leaves.Abs() <= run.Allowed {
			found = append(found, Slip{SetUp: s.Number, Sight: sight, Kind: c.kind, Should: c.should, Leaves: leaves, Closing: closing})
		}
	}
	return found
}

// exchanged tries the backsight of a set-up and a foresight written in each
// other's place: the one of the same set-up, or the one on the same turning point
// from the set-up before.
func (r *reduction) exchanged(run Run, s SetUp, foresight measure.Length) []Slip {
	leaves := run.Misclosure + 2*(foresight-s.Backsight.Reading)
	if leaves.Abs() > run.Allowed || foresight == s.Backsight.Reading {
		return nil
	}
	return []Slip{{SetUp: s.Number, Sight: s.Backsight, Kind: "backsight and foresight exchanged", Should: foresight, Leaves: leaves}}
}

type candidate struct {
	kind   string
	should measure.Length
}

// candidates returns what a reading may have meant, by the way the rod reads.
func candidates(reading measure.Length, reads string) []candidate {
	steps := []struct {
		kind string
		by   measure.Length
	}{{"a foot", measure.Foot}, {"an inch", measure.Inch}, {"a tenth of a foot", measure.Foot / 10}}
	unit := measure.Foot / 100
	switch reads {
	case "millimetres":
		steps = steps[:0]
		for _, by := range []measure.Length{measure.Metre, 100 * measure.Millimetre, 10 * measure.Millimetre} {
			steps = append(steps, struct {
				kind string
				by   measure.Length
			}{fmt.Sprintf("%d mm", by/measure.Millimetre), by})
		}
		unit = measure.Millimetre
	case "feet_inches":
		unit = measure.Inch
	}
	var list []candidate
	for _, step := range steps {
		list = append(list, candidate{step.kind, reading + step.by}, candidate{step.kind, reading - step.by})
	}
	for _, swapped := range digitsExchanged(reading, unit) {
		list = append(list, candidate{"digits exchanged", swapped})
	}
	return list
}

// digitsExchanged returns the reading with each two neighbouring digits of its
// whole units changed over; what is left below a unit stays. Feet and inches are
// written apart, so that feet and inches change over as a whole: 3' 4" for 4' 3".
func digitsExchanged(reading, unit measure.Length) []measure.Length {
	if reading < 0 {
		return nil
	}
	whole, rest := reading/unit, reading%unit
	if unit == measure.Inch {
		feet, inches := whole/12, whole%12
		if feet == inches || feet > 11 {
			return nil
		}
		return []measure.Length{(inches*12+feet)*unit + rest}
	}
	var list []measure.Length
	for low := measure.Length(1); low*10 <= whole; low *= 10 {
		a, b := whole/low%10, whole/(low*10)%10
		if a != b {
			list = append(list, (whole+(b-a)*low+(a-b)*low*10)*unit+rest)
		}
	}
	return list
}

// slipRemedy says which readings to look at first.
func slipRemedy(slips []Slip, style measure.Style) string {
	const again = "read the set-ups again"
	if len(slips) == 0 {
		return again + ": no usual slip in a single reading would close it"
	}
	var parts []string
	for _, s := range slips[:min(6, len(slips))] {
		parts = append(parts, fmt.Sprintf("%s in set-up %d, %s for %s (%s)",
			pointName(s.Sight.Point), s.SetUp, measure.Reading(s.Should).Print(style), measure.Reading(s.Sight.Reading).Print(style), s.Kind))
	}
	return "one of these readings would close it: " + strings.Join(parts, "; ") + "; else " + again
}

// pointName returns the name of a point as it is printed.
func pointName(point string) string {
	if point == BenchMark {
		return "bench mark"
	}
	return point
}
