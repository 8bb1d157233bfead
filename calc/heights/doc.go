// Package heights chooses the height of the floor and works out what it asks of
// each pier: the hole, the bed and the post, and what comes back from the site
// once the work has begun.
//
// It works from the ground of package terrain, the lengths of the job and the
// build-up of the frame. [Work] runs in this order: the holes as they were before
// anything was measured on them; the floor for the piers as they are now, with
// holes as dug, seats as set and beams as delivered, or else the clash that stands
// in its way with what would free it; the holes, the seats that were read, the
// posts and what to do about those already cut; how level the floor came out.
// What to read next, what a higher floor costs and what to do where the digging
// ends early are asked for afterwards and change nothing.
//
// All heights are on the datum in which the bench mark has the height that the
// job gives it, up is positive. Depths and lengths are positive. Whatever is
// exact stays exact: lengths are whole nanometres.
//
// A post's length has a name at each stage of its life, see [Post]: planned,
// expected with the holes as dug, to cut by the seat as read, and cut.
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
package heights
