// Package yard works out which stick and which sheet of the yard gives which
// piece, and how many of them are to be bought: from the frame, the posts that
// the ground asks for, what the yard sells and what is in hand.
//
// Plans are made by package cutting and are proven best where that is said.
// Where ground is estimated, posts are bought with an allowance that is enough
// nine times in ten. Prices are the job's; a length without one is counted by
// its run.
package yard
