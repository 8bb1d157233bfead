// Package terrain makes a surface of the heights that a level book gives: how
// high the ground lies at each pier, read or estimated, and between them.
//
// The ground between the readings is a thin-plate spline through all of them
// (J. Duchon, 1977; the test function and node sets are R. Franke's, Mathematics
// of Computation 38, 1982). How good an estimate is comes from leaving out each
// reading in turn. Beyond the readings less and less can be said, see
// [Ground.Beyond].
//
// [Read] runs in this order: the spots and the piers that were read, the surface
// through them, the estimates. What a floor over that ground meets, the drops
// beside it and the humps under it, is asked for once the floor is known. What
// the floor, the holes and the posts should be is left to package heights.
//
// All heights are on the datum in which the bench mark has the height that the
// job gives it, up is positive; x runs along the beam lines, y across them.
package terrain
