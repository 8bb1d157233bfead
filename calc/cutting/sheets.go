package cutting

import (
	"fmt"

	"pierbook/calc/measure"
)

// SheetProblem is rectangular parts to be cut from sheets of one size, each cut
// straight from edge to edge of what is being cut.
type SheetProblem struct {
	Length, Width measure.Length // of a sheet; the grain runs along the length
	Kerf          measure.Length
	Parts         []SheetPart
}

// SheetPart is one part. Its length lies along the grain of the sheet unless it
// may turn.
type SheetPart struct {
	Name          string
	Length, Width measure.Length
	Turns         bool // the part has no grain to keep to
}

// Dozen is the largest number of parts for which the fewest sheets are proven.
const Dozen = 12

// SheetResult is a plan for sheets.
type SheetResult struct {
	Sheets []Sheet
	Bound  int  // fewest sheets that could do
	Proven bool // the plan has no more sheets than that
}

// Sheet is one sheet with its parts.
type Sheet struct {
	Placed []Placed
}

// Placed is a part on a sheet: its near corner from the corner of the sheet,
// along the length and across, and its sides as they lie.
type Placed struct {
	Name          string
	X, Y          measure.Length
	Length, Width measure.Length
	Turned        bool
}

// rectangle is a part with one kerf added each way, as its sheet has one added,
// since the last cut may fall off the edge.
type rectangle struct {
	SheetPart
	length, width int64
}

// PlanSheets lays the parts on as few sheets as it can, by straight cuts from
// edge to edge alone. Up to [Dozen] parts the number is proven: every way of
// joining parts into larger rectangles is gone through. Beyond that the best of
// several quick rules stands beside a bound by area in scales that count long and
// wide parts for more, and the gap is told.
func PlanSheets(p SheetProblem) (SheetResult, error) {
	length, width := int64(p.Length+p.Kerf), int64(p.Width+p.Kerf)
	var parts []rectangle
	for _, part := range p.Parts {
		r := rectangle{part, int64(part.Length + p.Kerf), int64(part.Width + p.Kerf)}
		fits := r.length <= length && r.width <= width || r.Turns && r.width <= length && r.length <= width
		if part.Length <= 0 || part.Width <= 0 || !fits {
			return SheetResult{}, fmt.Errorf("cutting: part %q of %d by %d nm does not go on a sheet of %d by %d", part.Name, part.Length, part.Width, p.Length, p.Width)
		}
		parts = append(parts, r)
	}
	bound := sheetBound(parts, length, width)
	result := SheetResult{Sheets: quickSheets(parts, length, width), Bound: bound}
	if len(result.Sheets) > bound && len(parts) <= Dozen {
		result.Sheets = exactSheets(parts, length, width)
		result.Bound = len(result.Sheets)
	}
	result.Proven = result.Bound == len(result.Sheets)
	return result, nil
}
