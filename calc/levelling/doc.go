// Package levelling reduces the level book: rod readings taken from set-ups of
// a level become the heights of the points read.
//
// It works from the sights of the job and the heights of its bench marks.
// Heights are on the datum in which the bench mark has the height that the job
// gives it, up is positive. Readings are whole nanometres and stay exact; a
// height is rounded to the nanometre once.
//
// The book is reduced by height of instrument, then every loop is held against
// its limit, the allowance for one set-up times the root of the set-ups, the
// form in which site practice gives it (5 mm √N in university course slides on
// levelling; twice √2 times the error of one reading, derived). A loop beyond it
// refuses the book, and the single readings whose usual slip would mend it are
// named. Inside it the misclosure is shared out by set-ups; where points were
// read from more than one set-up the book is adjusted by least squares instead,
// see [Network]. The last step is the check of the sums, see [Arithmetic].
//
// Apart from the book it holds what is known of the instrument: its checks on
// two pegs, at a wall and at the ends of a tube, the error that its class allows
// at a distance, and where to stand for it to matter least. The readings of one
// day on seats or on a floor hang on the bench mark by [Day].
//
// What the heights mean for the ground, the floor and the holes is left to the
// packages that come after.
package levelling
