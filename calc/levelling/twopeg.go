package levelling

import (
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// PegTest is the check of a level on two pegs: read both from the middle, where
// an error of the sight line cancels, then from near the first.
type PegTest job.PegReadings

// Apart returns how much farther the second peg is from the second stand.
func (p PegTest) Apart() measure.Length { return p.ToB - p.ToA }

// Difference returns the true height of A over B: what B reads more than A from
// the middle.
func (p PegTest) Difference() measure.Length { return p.MiddleB - p.MiddleA }

// Error returns how much too high the instrument reads in the distance given.
//
//	e = ((b2 − a2) − (b1 − a1)) / (dB − dA)
func (p PegTest) Error(over measure.Length) measure.Length {
	apart := (p.FarB - p.NearA) - p.Difference()
	return apart.Scale(float64(over) / float64(p.Apart()))
}

// TurnAbout is the check of a laser: mark a far wall, turn the tool half round,
// mark again.
type TurnAbout struct {
	Gap      measure.Length // between the two marks
	Distance measure.Length // to the wall
}

// Error returns the error of the plane at the wall: half the gap.
func (t TurnAbout) Error() measure.Length { return t.Gap.Abs().Part(1, 2) }

// Allowed returns the gap that the class of the tool allows.
//
//	gap = 2 × distance × (error of the class ÷ the distance it is given for)
//
// Common practice, no source.
func (t TurnAbout) Allowed(tool job.Instrument) measure.Length {
	return 2 * offBy(tool, t.Distance)
}
