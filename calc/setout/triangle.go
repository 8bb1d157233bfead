package setout

import "pierbook/calc/measure"

// Triangle is a 3-4-5 triangle laid on the rectangle from the hook corner.
type Triangle struct {
	AlongLength, AlongWidth, Across measure.Length
}

// LargestTriangle returns the largest 3-4-5 triangle that fits the rectangle,
// in whole multiples of 3, 4 and 5 feet, or of 300, 400 and 500 mm. A small
// triangle turns a 1/16 in slip into half an inch over 16 ft, so the largest is
// the one to use, and only for the first string; the diagonals follow. A
// rectangle too small for the least multiple has the zero Triangle.
func LargestTriangle(r Rectangle, system measure.System) Triangle {
	unit := measure.Foot
	if system == measure.Metric {
		unit = 100 * measure.Millimetre
	}
	lengthwise := min(r.Length/(4*unit), r.Width/(3*unit)) // the 4 along the length
	crosswise := min(r.Length/(3*unit), r.Width/(4*unit))
	if lengthwise >= crosswise {
		return Triangle{4 * lengthwise * unit, 3 * lengthwise * unit, 5 * lengthwise * unit}
	}
	return Triangle{3 * crosswise * unit, 4 * crosswise * unit, 5 * crosswise * unit}
}
