package levelling

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Slip is a usual mistake in one reading that would bring the book back inside
// its limits.
type Slip struct {
	SetUp  int       // number of the set-up, as in the job file
	Sight  job.Sight // the reading as booked
	Kind   string    // "a foot", "an inch", "a tenth", "digits exchanged", "backsight and foresight exchanged", …
	Should measure.Length
	Leaves measure.Length // what the worst of the loops then misses by
}

// slips returns every usual slip in a single reading that would close all of
// the loops given, the best first. A slip in an intermediate sight that was
// taken once shows in none of them.
func (r *reduction) slips(loops []loop) []Slip {
	var found []Slip
	tried := map[sightAt]bool{}
	try := func(l leg, kind string, should measure.Length, change map[sightAt]measure.Length) {
		if leaves, closes := mended(loops, change); closes {
			found = append(found, Slip{SetUp: l.at.setUp, Sight: l.sight, Kind: kind, Should: should, Leaves: leaves})
		}
	}
	for _, loop := range loops {
		for i, l := range loop.legs {
			if loop.within() || tried[l.at] {
				continue
			}
			tried[l.at] = true
			for _, c := range candidates(l.sight.Reading, r.job.Ground.Instrument.Reads) {
				try(l, c.kind, c.should, map[sightAt]measure.Length{l.at: c.should - l.sight.Reading})
			}
			for _, n := range beside(loop.legs, i) {
				by := n.sight.Reading - l.sight.Reading
				try(l, "backsight and foresight exchanged", n.sight.Reading, map[sightAt]measure.Length{l.at: by, n.at: -by})
			}
		}
	}
	slices.SortStableFunc(found, func(a, b Slip) int { return cmp.Or(cmp.Compare(a.Leaves, b.Leaves), cmp.Compare(a.SetUp, b.SetUp)) })
	return found
}

// beside returns the foresights whose place in the book a backsight may have
// taken: that of its own set-up, and the one on the same turning point from the
// set-up before.
func beside(legs []leg, i int) []leg {
	if legs[i].at.number != 1 {
		return nil
	}
	var list []leg
	for _, k := range []int{i - 1, i + 1} {
		if k >= 0 && k < len(legs) && legs[k].at.number != 1 && legs[k].of == 1 && legs[k].sight.Reading != legs[i].sight.Reading {
			list = append(list, legs[k])
		}
	}
	return list
}

// mended returns what the worst loop misses by once readings are changed, and
// whether all of them then close.
func mended(loops []loop, change map[sightAt]measure.Length) (measure.Length, bool) {
	var worst measure.Length
	for _, loop := range loops {
		misses := loop.misses
		for _, l := range loop.legs {
			if by := change[l.at]; by != 0 {
				misses += (l.sign * by).Part(1, l.of)
			}
		}
		if misses.Abs() > loop.allowed {
			return 0, false
		}
		worst = max(worst, misses.Abs())
	}
	return worst, true
}

type candidate struct {
	kind   string
	should measure.Length
}

// rodSlips are the steps by which a rod is misread, and the unit whose digits
// are exchanged, by the way it reads. Common practice, no source.
var rodSlips = map[string]struct {
	unit  measure.Length
	steps []candidate
}{
	"feet_inches": {measure.Inch, []candidate{{"a foot", measure.Foot}, {"an inch", measure.Inch}, {"a tenth of a foot", measure.Foot / 10}}},
	"tenths":      {measure.Foot / 100, []candidate{{"a foot", measure.Foot}, {"a tenth of a foot", measure.Foot / 10}}},
	"millimetres": {measure.Millimetre, []candidate{{"1000 mm", measure.Metre}, {"100 mm", 100 * measure.Millimetre}, {"10 mm", 10 * measure.Millimetre}}},
}

// candidates returns what a reading may have meant, by the way the rod reads.
func candidates(reading measure.Length, reads string) []candidate {
	rod := rodSlips[reads]
	var list []candidate
	for _, step := range rod.steps {
		list = append(list, candidate{step.kind, reading + step.should})
		if reading < 0 || reading >= step.should { // a rod held upright reads no less than 0
			list = append(list, candidate{step.kind, reading - step.should})
		}
	}
	for _, swapped := range digitsExchanged(reading, rod.unit) {
		list = append(list, candidate{"digits exchanged", swapped})
	}
	return list
}

// Meant is what a reading may have meant, and the slip that made it what it is.
type Meant struct {
	Kind   string
	Should measure.Length
}

// MeantReadings returns what a reading may have meant, by the way the rod reads.
func MeantReadings(reading measure.Length, reads string) []Meant {
	var list []Meant
	for _, c := range candidates(reading, reads) {
		list = append(list, Meant{c.kind, c.should})
	}
	return list
}

// Misread returns the usual slip in one reading that would bring it nearest to
// what was expected, and whether one brings it within the limit.
func Misread(reading, expected, within measure.Length, reads string) (kind string, should measure.Length, found bool) {
	for _, c := range candidates(reading, reads) {
		if off := (c.should - expected).Abs(); off <= within && (!found || off < (should-expected).Abs()) {
			kind, should, found = c.kind, c.should, true
		}
	}
	return kind, should, found
}

// digitsExchanged returns the reading with each two neighbouring digits of its
// whole units changed over; what is left below a unit stays. Feet and inches are
// written apart: they change over as a whole, 3' 4" for 4' 3", and so do the two
// digits of 10 in, which make 01.
func digitsExchanged(reading, unit measure.Length) []measure.Length {
	if reading < 0 {
		return nil
	}
	whole, rest := reading/unit, reading%unit
	if unit == measure.Inch {
		feet, inches := whole/12, whole%12
		var list []measure.Length
		if feet != inches && feet <= 11 {
			list = append(list, (inches*12+feet)*unit+rest)
		}
		if other := (inches%10)*10 + inches/10; inches == 10 || inches == 1 {
			list = append(list, (feet*12+other)*unit+rest)
		}
		return list
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

// slipRemedy sends to the few readings whose slip would close the book before
// everything is read again.
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

// markName returns the name of a bench mark as it stands in a sentence.
func markName(point string) string {
	if point == BenchMark {
		return "bench mark"
	}
	return "bench mark " + point
}
