// Package ground turns the heights of a level book into the heights a builder
// works to: the surface of the ground, the height of the floor,
// the hole, the stone and the post at each pier, and what comes back from the
// site once the work has begun.
//
// All heights are on the datum in which the bench mark has the height that the
// job gives it, up is positive. Depths and lengths are positive. Whatever is
// exact stays exact: readings are whole nanometres, and a result is rounded to
// the nanometre once.
//
// The ground between the readings is a thin-plate
// spline through all of them (J. Duchon, 1977; the test function and node sets
// are R. Franke's, Mathematics of Computation 38, 1982).
//
// For pier i with ground g and firm depth f, the floor F, the build-up t and
// the seat height h of the block:
//
//	top of post = F − t
//	seat b      = g − D + c + h                  D dig, c compacted stone
//	post        = F − t − b
//	D ≥ max(least dig, f, c + embed)             D ≤ deepest dig; never below rock or water
//	least stone ≤ c ≤ most stone
//	g + above ground ≤ b                         stone top ≤ g − embed
//	shortest ≤ post ≤ longest
//	F − t ≥ g + clear                            at every pier and every spot read inside the frame
//
// Whether the soil may carry the bed, how deep frost goes and whether a shallow
// bed on rock will serve is left to the code official or an engineer; the
// package only keeps to the limits it is given.
package ground
