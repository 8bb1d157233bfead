// Package calc runs a job through the parts of the calculation in working
// order and returns the Plan: every figure of the binder, with its key and
// where it came from.
//
//	job → frame → levelling → terrain → heights → earthwork → strength → setout → yard → order → crew
//
// Each part takes the parts before it as plain values and returns a value.
// Nothing here reads a clock, the environment or the disk; the same job gives
// the same plan.
package calc
