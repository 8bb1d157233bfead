// Package trade holds the facts of the trade, each in one place: tolerances and
// limits, nails and how joints are nailed, floor panels and boards, soils,
// species of timber, the loads of uses, and the steps
// of the work.
//
// The facts stand in text files under tables, a row for each, with a source.
// The heading of a file names its columns; a bar between two blanks parts the
// cells; a single hyphen is an empty cell; an indented row belongs to the row
// over it. Where a size is rounded to another one in the other system both are
// written, and the job's system decides which is used.
//
// Everything else takes a fact from here: the defaults and the words of a job
// file, the checks, the order, the drawings and the pages. A row is added or
// changed in its file and nowhere else.
package trade
