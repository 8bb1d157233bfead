package setout

import (
	"math"

	"pierbook/calc/measure"
)

// Tape is a steel tape as its corrections need it. The zero Tape has no weight
// and no standard state.
type Tape struct {
	Weight    measure.LineLoad // of the tape by its length
	Section   measure.Area
	Elastic   measure.Stress
	Expansion float64       // by its length for each kelvin
	Standard  measure.Force // pull at which it is right
}

// buildersTape is a 1/2 in steel tape: weight 0.022 lb/ft, worked out from its
// section; elastic modulus and expansion of steel as course slides on taping
// give them. Its standard pull is 10 lb by common practice, no source.
var buildersTape = Tape{
	Weight:    measure.LineLoad(0.022 * float64(measure.PoundForce) / measure.Foot.Metres()),
	Section:   measure.Area(0.0065 * measure.Inch.Metres() * measure.Inch.Metres()),
	Elastic:   29e6 * measure.PoundPerSquareIn,
	Expansion: 6.5e-6 * 9 / 5,
	Standard:  10 * measure.PoundForce,
}

// Sag returns what a length held at its ends alone loses by hanging: the tape
// reads too long by it.
//
//	w² L³ / (24 P²)
func (t Tape) Sag(long measure.Length, pull measure.Force) measure.Length {
	w, l, p := float64(t.Weight), long.Metres(), float64(pull)
	return measure.FromMetres(w * w * l * l * l / (24 * p * p))
}

// Stretch returns by how much more a tape reaches at a pull than at its standard
// one, negative when it is pulled less.
//
//	(P − P0) L / (A E)
func (t Tape) Stretch(long measure.Length, pull measure.Force) measure.Length {
	return long.Scale(float64(pull-t.Standard) / (float64(t.Section) * float64(t.Elastic)))
}

// Warmth returns by how much more a tape reaches when it is so many kelvins
// warmer than at its standard. It cancels where two diagonals are compared.
//
//	α L ΔT
func (t Tape) Warmth(long measure.Length, kelvins float64) measure.Length {
	return long.Scale(t.Expansion * kelvins)
}

// TooLong returns by how much a tape laid along a slope reads over the level
// length.
//
//	s − √(s² − rise²), near rise² / (2 s)
func TooLong(taped, rise measure.Length) measure.Length {
	s, v := taped.Metres(), rise.Metres()
	return measure.FromMetres(v * v / (s + math.Sqrt(s*s-v*v)))
}

// TapeClass is an accuracy class of measuring tapes in European law.
type TapeClass struct{ Base, PerMetre measure.Length }

// The classes of directive 2004/22/EC, annex MI-008.
var (
	ClassI   = TapeClass{100 * measure.Micrometre, 100 * measure.Micrometre}
	ClassII  = TapeClass{300 * measure.Micrometre, 200 * measure.Micrometre}
	ClassIII = TapeClass{600 * measure.Micrometre, 400 * measure.Micrometre}
)

// Allows returns the error a tape of the class may have over a length, which
// counts as the next whole metre.
//
//	a + b L
func (c TapeClass) Allows(long measure.Length) measure.Length {
	return c.Base + c.PerMetre*(long.RoundUpTo(measure.Metre)/measure.Metre)
}

// TapeAllowance returns the error that the tape alone may have over a length,
// and by which rule: a metric one of class II, else a foot tape.
//
// NIST Handbook 44 (2020), section 5.52, allows 1/32 in to 6 ft (from memory), 1/16 in to 30 ft and
// 1/8 in to 55 ft.
func TapeAllowance(long measure.Length, system measure.System) (measure.Length, string) {
	if system == measure.Metric {
		return ClassII.Allows(long), "directive 2004/22/EC, annex MI-008: class II tapes, 0.3 mm + 0.2 mm a metre"
	}
	const source = "NIST Handbook 44 (2020), section 5.52: 1/16 in from 7 to 30 ft, 1/8 in to 55 ft"
	switch {
	case long <= 6*measure.Foot:
		return measure.Inch / 32, source
	case long <= 30*measure.Foot:
		return measure.Sixteenth, source
	}
	return measure.Inch / 8, source
}
