// Package earthwork adds up what the holes take and give: the stone of the beds
// and beside the blocks, in layers and in loads, and the soil that is left over,
// in the bank, loose and trodden down.
//
// It works from the holes that package heights has chosen and from the stone and
// the soil of the job. A hole is a square with straight sides. [Work] runs in
// this order: the stone of all holes, the spoil, how high it fills the low side
// of the ground under the frame, and the odds that the stone ordered is enough
// where only some of the holes were probed.
//
// Volumes come from sections and grids by the formulas beside them; the odds
// from Student's t, see [Sample]. Whether the soil may carry the bed is left to
// the support checks and to the code official.
package earthwork
