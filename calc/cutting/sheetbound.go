package cutting

import (
	"math"
	"slices"
)

// sheetBound returns a number of sheets below which no plan can be. Lengths along
// and across the sheet are each put on a scale on which no parts that fit beside
// one another come to more than the whole; parts that go on one sheet then cover
// no more than its area on the two scales, however they lie. A part that may turn
// counts for the less of its two ways. All pairs of scales are tried.
//
// Source: dual feasible functions in two directions, S.P. Fekete and J. Schepers,
// Mathematical Methods of Operations Research 60 (2004) 311–329, from memory.
func sheetBound(parts []rectangle, length, width int64) int {
	along, across := scales(parts, length), scales(parts, width)
	best := 0.0
	for _, f := range along {
		for _, g := range across {
			covered := 0.0
			for i, r := range parts {
				share := covers(f.length[i], g.width[i])
				if r.Turns {
					share = min(share, covers(f.width[i], g.length[i]))
				}
				covered += share
			}
			best = max(best, covered)
		}
	}
	return int(math.Ceil(best - 1e-6))
}

// covers returns the area of two sides: without end where one does not fit, also
// where the other counts for nothing.
func covers(along, across float64) float64 {
	if math.IsInf(along, 1) || math.IsInf(across, 1) {
		return math.Inf(1)
	}
	return along * across
}

// scale is what the sides of each part come to on a scale, as shares of the
// whole; infinite for sides that do not fit at all.
type scale struct{ length, width []float64 }

// mostThresholds is how many thresholds are tried in one direction.
const mostThresholds = 60

// scales returns the scales tried in a direction: the length itself; every
// threshold that some part makes; and lengths rounded down to parts of the whole.
func scales(parts []rectangle, room int64) []scale {
	var all []scale
	try := func(whole int64, f func(x int64) int64) {
		var s scale
		side := func(x int64) float64 {
			if x > room {
				return math.Inf(1)
			}
			return float64(f(x)) / float64(whole)
		}
		for _, r := range parts {
			s.length, s.width = append(s.length, side(r.length)), append(s.width, side(r.width))
		}
		all = append(all, s)
	}
	try(room, func(x int64) int64 { return x })
	for n := int64(1); n <= 6; n++ {
		try(n*room, func(x int64) int64 { return rounded(x, n, room) })
	}
	var thresholds []int64
	for _, r := range parts {
		for _, x := range []int64{r.length, r.width} {
			if a := min(x, room-x+1); a >= 1 && 2*a <= room {
				thresholds = append(thresholds, a)
			}
		}
	}
	slices.Sort(thresholds)
	thresholds = slices.Compact(thresholds)
	for k := range min(len(thresholds), mostThresholds) {
		a := thresholds[len(thresholds)-1-k]
		try(room, func(x int64) int64 { return threshold(x, a, room) })
	}
	return all
}
