// Package setout works out how the platform is set out and kept square: the
// two rectangles (the frame's outside faces, which the strings mark, and the
// centres of the corner piers) with their sides and diagonals and how near is
// near enough, the largest 3-4-5 triangle that fits, how far and which way to
// rack a frame whose diagonals differ, where batter boards stand clear of the
// digging, and what six measured lengths say about the corners.
//
// Lengths are exact where the geometry is; uncertainties are one standard
// deviation of a tape reading unless said otherwise. The tolerances are the
// trade's, named beside each; what an inspector accepts is for the inspector
// to say.
package setout
