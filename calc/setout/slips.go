package setout

import (
	"math"

	"pierbook/calc/measure"
)

// usual is a mistake that people make with a tape, by what it looks like when the
// reading is too long and when it is too short.
type usual struct {
	size        measure.Length
	long, short string
}

// The usual slips on a tape of feet and inches and on one of millimetres.
// Common practice, no source.
var (
	footSlips = []usual{
		{measure.Inch, "an inch (the tape held at its 1 in mark)", "an inch (taken off once too often)"},
		{2 * measure.Inch, "two inches", "two inches (the tape's case not added)"},
		{3 * measure.Inch, "9 read for 6", "6 read for 9"},
		{measure.Foot, "a foot", "a foot"},
	}
	metricSlips = []usual{
		{10 * measure.Millimetre, "10 mm", "10 mm"},
		{30 * measure.Millimetre, "9 read for 6", "6 read for 9"},
		{50 * measure.Millimetre, "50 mm", "50 mm (the tape's case not added)"},
		{100 * measure.Millimetre, "100 mm (the tape held at its 100 mm mark)", "100 mm (taken off once too often)"},
		{1000 * measure.Millimetre, "a metre", "a metre"},
	}
)

// nameSlips says which of the single mistakes may be a usual one. The size of
// each is known to σ / √r, r being its redundancy. Readings that agree hold none.
func (a *Adjustment) nameSlips(system measure.System) {
	if a.Verdict == Agree {
		return
	}
	slips := footSlips
	if system == measure.Metric {
		slips = metricSlips
	}
	for i := range a.Slips {
		a.Slips[i].compare(slips, a.Sigma.Scale(1/math.Sqrt(a.Redundancy[i])))
	}
}

// compare names the nearest usual slip within two deviations. A size that is
// itself within two is no slip at all.
func (s *Slip) compare(slips []usual, deviation measure.Length) {
	least := 2 * deviation
	if s.Size.Abs() <= least {
		return
	}
	for _, u := range slips {
		if off := (s.Size.Abs() - u.size).Abs(); off < least {
			least, s.Usual, s.Near = off, u.long, off <= deviation
			if s.Size < 0 {
				s.Usual = u.short
			}
		}
	}
}

// Suspects names the lengths in which a usual slip alone would explain that the
// six do not fit: those that come near one, or else those that may be one.
func (c *Check) Suspects() []string {
	var near, may []string
	for i, slip := range c.Adjustment.Slips {
		switch {
		case slip.Near:
			near = append(near, SideName(c.Rectangle, i))
		case slip.Usual != "":
			may = append(may, SideName(c.Rectangle, i))
		}
	}
	if len(near) > 0 {
		return near
	}
	return may
}
