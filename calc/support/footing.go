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
