package measure

import (
	"math"
	"math/bits"
)

// Length is an exact length: a whole number of nanometres. Both a millimetre
// and a sixty-fourth of an inch are whole numbers of them, so sums of mixed
// lengths never drift and two lengths are equal when == says so.
//
// Never multiply two lengths with *: the product of two lengths above about
// 3 m passes the end of int64. Use [Length.Times] and [Hypot].
type Length int64

// Units of length. All are exact.
const (
	Nanometre   Length = 1
	Micrometre  Length = 1_000
	Millimetre  Length = 1_000_000
	Metre       Length = 1_000_000_000
	Inch        Length = 25_400_000
	Foot        Length = 12 * Inch
	SixtyFourth Length = Inch / 64
	Sixteenth   Length = Inch / 16
)

// Metres returns l in metres.
func (l Length) Metres() float64 { return float64(l) / float64(Metre) }

// Millimetres returns l in millimetres.
func (l Length) Millimetres() float64 { return float64(l) / float64(Millimetre) }

// Inches returns l in inches.
func (l Length) Inches() float64 { return float64(l) / float64(Inch) }

// Feet returns l in feet.
func (l Length) Feet() float64 { return float64(l) / float64(Foot) }

// FromMetres returns the length nearest to m metres.
func FromMetres(m float64) Length { return nearest(m * float64(Metre)) }

// Times returns the area of a rectangle with sides l and m.
func (l Length) Times(m Length) Area { return Area(l.Metres() * m.Metres()) }

// Scale returns l times f, to the nearest nanometre.
func (l Length) Scale(f float64) Length { return nearest(float64(l) * f) }

// nearest returns the length nearest to so many nanometres; beyond the ends of
// the range the end, and 0 for what is not a number, on every processor alike.
func nearest(nanometres float64) Length {
	switch {
	case nanometres >= math.MaxInt64:
		return math.MaxInt64
	case nanometres <= -math.MaxInt64:
		return -math.MaxInt64
	case math.IsNaN(nanometres):
		return 0
	}
	return Length(math.Round(nanometres))
}

// Part returns l·i/n to the nearest nanometre, halves away from zero, without
// an overflow on the way: the i-th of n equal spacings counted from the origin.
// It panics unless n is positive.
func (l Length) Part(i, n int) Length {
	if n <= 0 {
		panic("measure: Part of no parts")
	}
	negative := (l < 0) != (i < 0)
	hi, lo := bits.Mul64(magnitude(int64(l)), magnitude(int64(i)))
	quotient, rest := bits.Div64(hi, lo, uint64(n))
	if rest >= uint64(n)-rest {
		quotient++
	}
	if negative {
		return -Length(quotient)
	}
	return Length(quotient)
}

func magnitude(v int64) uint64 {
	if v < 0 {
		return uint64(-v)
	}
	return uint64(v)
}

// Abs returns l without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// RoundTo returns the multiple of step nearest to l, halves away from zero.
// A step of zero or less leaves l as it is.
func (l Length) RoundTo(step Length) Length {
	if step <= 0 {
		return l
	}
	if l < 0 {
		return -(-l).RoundTo(step)
	}
	return (l + step/2) / step * step
}

// RoundDownTo returns the greatest multiple of step that is not above l.
// A step of zero or less leaves l as it is.
func (l Length) RoundDownTo(step Length) Length {
	if step <= 0 {
		return l
	}
	rest := l % step
	if rest < 0 {
		rest += step
	}
	return l - rest
}

// RoundUpTo returns the least multiple of step that is not below l.
// A step of zero or less leaves l as it is.
func (l Length) RoundUpTo(step Length) Length { return -(-l).RoundDownTo(step) }

// Hypot returns the diagonal of a rectangle with sides a and b, to the nearest
// nanometre.
func Hypot(a, b Length) Length {
	return nearest(math.Hypot(float64(a), float64(b)))
}
