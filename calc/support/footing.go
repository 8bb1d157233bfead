package support

import (
	"math"

	"pierbook/calc/measure"
)

// LeastSide returns the side of the square that brings a load down to an
// allowable pressure: √(P/q).
func LeastSide(load measure.Force, allowable measure.Stress) measure.Length {
	return measure.FromMetres(math.Sqrt(float64(load) / float64(allowable)))
}

// LeastDiameter returns the diameter of the circle that does the same: √(4·P/(π·q)).
func LeastDiameter(load measure.Force, allowable measure.Stress) measure.Length {
	return measure.FromMetres(math.Sqrt(4 * float64(load) / (math.Pi * float64(allowable))))
}

// Spread returns the plan area that carries a load a depth z under a rectangle
// of sides a and b, spreading one sideways for every two down.
//
//	A = (a + z)·(b + z)
//
// The 2:1 rule of soil mechanics texts.
func Spread(a, b, z measure.Length) measure.Area { return (a + z).Times(b + z) }
