package calc_test

import "math"

func hypot(x, y float64) float64 { return math.Hypot(x, y) }

// apex returns the corner of a triangle on the base from 0 to a, with the sides r
// from 0 and s from a.
func apex(a, r, s float64) (x, y float64) {
	x = (a*a + r*r - s*s) / (2 * a)
	return x, math.Sqrt(r*r - x*x)
}
