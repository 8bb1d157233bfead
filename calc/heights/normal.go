package heights

import "math"

// below returns the chance that a standard normal deviate is under z.
func below(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// density returns the standard normal density at z.
func density(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }
