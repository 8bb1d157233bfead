// Package calc runs a job through the parts of the calculation in working
// order and returns the Plan: every figure of the binder, with its key and
// where it came from.
//
//	job → frame → levelling → terrain → heights → earthwork → setout → strength → yard → order → crew
//
// Strength asks loads, statics, timber and support in that order. Three parts run
// back: before the frame is laid, sizing lays frames on trial where the job
// leaves sizes open; after a frame failed a check it tries the changes that would
// mend it; and at the end savings lays, cuts and checks changed jobs anew.
//
// Each part takes the parts before it as plain values and returns a value.
// Nothing here reads a clock, the environment or the disk; the same job gives
// the same plan.
package calc
