// Package loads finds what acts on the platform: its own weight, the load of use,
// heavy things at a place, the building on it, snow and wind; and the
// combinations in which they act together, by ASCE 7-16 section 2.4.
//
// Loads stand on the floor, by area or along lines; where they go from there is
// for package statics, how long a timber bears them for package timber.
package loads
