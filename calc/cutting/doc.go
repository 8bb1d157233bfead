// Package cutting works out how to cut all the pieces of one section from
// sticks of several lengths, and parts of sheets from sheets: which to buy,
// which piece comes from which stick, and how good the plan is proven to be.
//
// Pieces, stock lengths with their prices, sticks on hand, the kerf and the end
// trim come from the frame, the yard and what was measured. Lengths are exact
// and prices whole hundredths, so every bound is worked out in whole numbers.
//
// A piece takes its length and one kerf from a stick, and the stick has one
// kerf more than its length, since the last cut may fall off the end. The goals
// rule in order: least cost, fewest sticks bought, longest single offcut,
// fewest different patterns; each is held at its best value while the next is
// sought. Limits count steps of work, never seconds, so that the same
// problem always gives the same plan; all of it takes some five seconds at most,
// and what is open then has its bound and gap.
//
// Method: quick rules and dual feasible functions; then the pattern relaxation
// with exact pricing (Gilmore and Gomory 1961, 1963); the duals rounded to whole
// numbers prove a bound; the gap between that and the best plan at hand limits
// the patterns that can still matter, which are listed and searched to the end.
// By rounds with that, the combinations of sticks that have room for the pieces
// and could be better are closed one by one. Last, a few of the ways of cutting at
// a time are made one fewer, and small jobs are searched whole for fewer of them.
// Sources are named beside each part; those from memory say so.
//
// Nothing here judges whether a piece is strong enough, or whether a stick is
// sound: a length with a split end or a bad knot is for the builder to set
// aside, and the plan to be worked out again.
package cutting
