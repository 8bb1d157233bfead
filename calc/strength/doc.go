// Package strength checks a laid-out frame as a whole: it takes the loads, what
// they do from statics, what a part can do from timber and support, and returns
// every check with its working, the load path, the anchorage that would be wanted
// and curves for the drawings.
//
// Quantities are in SI inside; tables keep the units of their source and say so
// in their headings.
//
// What it leaves to others: the adopted local code, the soil as found, the
// capacity of connectors, anchors and blocks (their makers), the building that
// stands on the platform, earthquake, flood, decay, and everything above 36 in
// of block and post (a licensed engineer).
package strength
