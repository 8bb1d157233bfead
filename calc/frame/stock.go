package frame

import (
	"slices"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// stock returns the lengths of a size that can be used, rising, and whether the
// yard's list knows them. A stick loses the yard's end trim.
//
// Where the yard's list is silent, every length up to 16 ft (4.8 m) in steps of
// 2 ft (0.3 m) counts as to be had: common practice, no source.
func (l *layout) stock(section job.Section) (lengths []measure.Length, known bool) {
	sold := l.job.Yard.Stock[section.Size]
	for _, s := range sold {
		if usable := s.Length - l.job.Yard.EndTrim; usable > 0 {
			lengths = append(lengths, usable)
		}
	}
	if len(lengths) > 0 {
		slices.Sort(lengths)
		return lengths, true
	}
	return usualStock(l.job.Units), false
}

var usualImperial, usualMetric = steps(2*measure.Foot, 16*measure.Foot), steps(300*measure.Millimetre, 4800*measure.Millimetre)

func usualStock(system measure.System) []measure.Length {
	if system == measure.Metric {
		return usualMetric
	}
	return usualImperial
}

func steps(step, most measure.Length) []measure.Length {
	var lengths []measure.Length
	for l := step; l <= most; l += step {
		lengths = append(lengths, l)
	}
	return lengths
}
