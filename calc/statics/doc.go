// Package statics tells what loads do to members that run on over supports:
// shear, moment, deflection and reactions at many places along them, under loads
// that are always there and under loads that may be there or not.
//
// A run is prepared once as a gauge: its stations, and what a unit load on each
// of its parts does there. Envelopes then hold the most and the least of all
// patterns of loading. On top of these the floor's loads are carried down: from
// the floor to the joists and the beam lines, from the lines to the piers, one
// envelope for each kind of load. Nothing in it knows of timber.
//
// Lengths inside are in metres, loads in newtons and newtons per metre,
// deflections times EI.
package statics
