// Package strength works out what the platform has to carry and whether every
// member, pier and patch of ground can carry it.
//
// It takes the job, the frame and, once they are known, the heights at the
// piers, and returns loads, reactions, checks with their working, the load
// path, the anchorage that would be wanted and curves for the drawings.
//
// Method: allowable stress design by the National Design Specification for
// Wood Construction (NDS), 2018 edition, with loads and combinations by
// ASCE 7-16 section 2.4. Joists and beams run on between splices and carry
// patterned live load. The convention behind the published deck-beam tables is
// a second check with a name of its own and never enters the first.
//
// Quantities are in SI inside; tables keep the units of their source and say
// so in their headings. Values known from memory alone carry a mark that
// follows them to wherever they are printed.
//
// What it leaves to others: the adopted local code, the soil as found, the
// capacity of connectors, anchors and blocks (their makers), the building that
// stands on the platform, earthquake, flood, decay, and everything above 36 in
// of block and post (a licensed engineer).
package strength
