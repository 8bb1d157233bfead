package kit

import "pierbook/calc/measure"

// LeastInterval is the closest that contours are drawn.
const LeastInterval = measure.Inch / 2

// Interval returns a round step between contours that makes about eight of a fall
// of the ground.
func Interval(fall measure.Length, system measure.System) measure.Length {
	steps := []measure.Length{LeastInterval, measure.Inch, 2 * measure.Inch, 3 * measure.Inch, 6 * measure.Inch, measure.Foot}
	if system == measure.Metric {
		steps = []measure.Length{10 * measure.Millimetre, 20 * measure.Millimetre, 50 * measure.Millimetre, 100 * measure.Millimetre, 200 * measure.Millimetre, 500 * measure.Millimetre}
	}
	for _, step := range steps {
		if fall <= 9*step {
			return step
		}
	}
	return steps[len(steps)-1]
}
