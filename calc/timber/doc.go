// Package timber says what sawn timber carries by the National Design
// Specification for Wood Construction (NDS), 2018 edition: reference values of
// species and grades, adjustment factors, and the checks of joists, beams, posts,
// their bearings and nails, each with its working. Load duration is asked here,
// of a combination of loads.
//
// The convention behind the published deck-beam tables is a second way of its own
// and never enters the first. Values known from memory alone carry a mark that
// follows them to wherever they are printed.
package timber
