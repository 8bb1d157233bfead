package setout

import (
	"math"

	"pierbook/calc/measure"
)

// How well a tape can show that a corner is square. All are one standard
// deviation, by first-order propagation from the error σ of one reading.

// TriangleTurn returns the error, in radians, of an angle set by a triangle
// with the legs p and q.
//
//	√2 c σ / (p q),  c = √(p² + q²)
func TriangleTurn(p, q, tape measure.Length) float64 {
	return math.Sqrt2 * math.Hypot(p.Metres(), q.Metres()) * tape.Metres() / (p.Metres() * q.Metres())
}

// DiagonalTurn returns the error, in radians, of the angle that two equal
// diagonals show. What both readings have in common, such as a worn hook or the
// heat, cancels.
//
//	√2 D σ / (2 a b)
func DiagonalTurn(r Rectangle, tape measure.Length) float64 {
	return TriangleTurn(r.Length, r.Width, tape) / 2
}

// Aside returns how far the end of a side stands aside when its corner is
// turned by so many radians.
func Aside(side measure.Length, turn float64) measure.Length { return side.Scale(math.Sin(turn)) }

// CornerAngle returns the angle, in radians, between two legs whose ends are so
// far apart.
//
//	cos γ = (p² + q² − c²) / (2 p q)
func CornerAngle(p, q, across measure.Length) float64 {
	a, b, c := p.Metres(), q.Metres(), across.Metres()
	return math.Acos((a*a + b*b - c*c) / (2 * a * b))
}

// TargetError returns how well a measured diagonal can be held against the one
// worked out from measured sides. A diagonal within that proves nothing more.
//
//	√(a² σ² + b² σ²) / D = σ by the sides, and σ by the reading itself: √2 σ
func TargetError(r Rectangle, tape measure.Length) measure.Length {
	bySides := math.Hypot(r.Length.Metres(), r.Width.Metres()) / r.Diagonal().Metres() * tape.Metres()
	return measure.FromMetres(math.Hypot(bySides, tape.Metres()))
}

// Least mistake that six readings show, with a chance of one in a hundred of
// crying wolf.
const shows = 2.58

// Shows returns the least mistake in each of the six lengths that the test value
// brings to light.
//
//	2.58 σ / √r,  r = its redundancy
func (a Adjustment) Shows() [6]measure.Length {
	var least [6]measure.Length
	for i, r := range a.Redundancy {
		least[i] = a.Sigma.Scale(shows / math.Sqrt(r))
	}
	return least
}
