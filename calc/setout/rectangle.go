package setout

import (
	"math"

	"pierbook/calc/measure"
)

// Rectangle is a rectangle to be marked on the ground. Its corners are named by
// the nearest pier, in order round it: the hook corner, along the length,
// across, and back.
type Rectangle struct {
	Name          string // "frame" or "piers"
	Title         string // what it is, in words
	Corners       [4]string
	Length, Width measure.Length // along and across the beams
}

// Diagonal returns the length of both diagonals, to the nearest nanometre.
func (r Rectangle) Diagonal() measure.Length { return measure.Hypot(r.Length, r.Width) }

// Limits says how far the two diagonals may differ.
type Limits struct {
	Tape    measure.Length // one standard deviation of a tape reading
	Lateral measure.Length // sideways error of a corner that squareness allows
	Allowed measure.Length // difference of the diagonals which that makes
	Guard   measure.Length // what two tape readings may hide, 95 times in 100
	Do      measure.Length // work to this
	Accept  measure.Length // square for certain
	Stop    measure.Length // out of square for certain; between the two, measure again
}

// Tolerances of squareness.
const (
	// lateralOver: a corner may stand 1/4 in to the side for each 12 ft of side.
	// The published limit for a foundation, 1/2 in on the 20 ft hypotenuse of a
	// 12 by 16 ft triangle (NAHB, Residential Construction Performance Guidelines, 3rd
	// ed., 2005, foundations, from memory), lets 5/8 in
	// through by geometry; a dead-level frame under panels keeps well inside it.
	lateralOver = 4.0 / (12 * 12 * 16) // 1/4 in over 144 in
	// twoSided is the 95 % point of the normal distribution.
	twoSided = 1.96
)

// Basis of [Limits], for the sheets.
const LimitsBasis = "derived: a corner may stand 1/4 in to the side in 12 ft; less, and plus, what two tape readings may hide 95 times in 100"

// DiagonalLimits returns how far the diagonals of a rectangle may differ when a
// tape reading has the standard deviation tape.
//
//	lateral e = b / 576,  allowed = 2 a e / D,  guard = 1.96 √2 σ
//	accept = allowed − guard (not under σ),  stop = allowed + guard
//
// with a the longer and b the shorter side and D the diagonal.
func DiagonalLimits(r Rectangle, tape measure.Length) Limits {
	a, b := max(r.Length, r.Width), min(r.Length, r.Width)
	l := Limits{Tape: tape, Lateral: b.Scale(lateralOver)}
	l.Allowed = measure.FromMetres(2 * a.Metres() * l.Lateral.Metres() / r.Diagonal().Metres())
	l.Guard = tape.Scale(twoSided * math.Sqrt2)
	l.Accept = max(l.Allowed-l.Guard, tape)
	l.Do = max(tape, l.Accept/2)
	l.Stop = l.Allowed + l.Guard
	return l
}

// TapeError returns the standard deviation assumed for one tape reading with
// marking and hooking: 1/16 in, or 2 mm. A tape's own allowance is 1/16 in from
// 7 to 30 ft (NIST Handbook 44); the rest is a judgement.
func TapeError(system measure.System) measure.Length {
	if system == measure.Metric {
		return 2 * measure.Millimetre
	}
	return measure.Sixteenth
}
