package strength

import (
	"cmp"
	"slices"

	"pierbook/calc/measure"
)

// Check is one comparison of what is asked of a part with what it can do.
type Check struct {
	ID               string // key check.ID.ratio: joist.bending, beam.B.shear, pier.A1.soil
	What             string
	Demand, Capacity measure.Quantity
	Ratio            measure.Ratio // demand over capacity
	Combination      string        // of loads, empty where none applies
	Duration         Duration      // CD of that combination, 0 where none enters
	Stability        measure.Ratio // CL or CP, 0 where neither enters
	Area             measure.Ratio // Cb, 0 where it does not enter
	Clause           string        // with its edition
	Memory           bool          // a value or clause in it is from memory
	Working          []string      // line by line: symbols, numbers, units
	// Needs is work by others without which the check does not hold: an anchorage,
	// a brace. A check that needs something does not fail.
	Needs    string
	Remedies []Remedy // changes of the frame under which it holds; for a failing check
}

// slack lets a ratio of one pass in spite of the last bits of its arithmetic.
const slack = 1 + 1e-9

// Holds says whether the part can do what is asked, as drawn.
func (c Check) Holds() bool { return c.Ratio <= slack }

// Fails says whether the part cannot, and nothing by others would mend it.
func (c Check) Fails() bool { return !c.Holds() && c.Needs == "" }

// sortChecks puts failing checks first, then those that need work by others,
// then by falling ratio.
func sortChecks(checks []Check) {
	rank := func(c Check) int {
		switch {
		case c.Fails():
			return 0
		case !c.Holds():
			return 1
		}
		return 2
	}
	slices.SortStableFunc(checks, func(a, b Check) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(b.Ratio, a.Ratio), cmp.Compare(a.ID, b.ID))
	})
}

// Worst returns the check with the greatest ratio among those that the drawn
// frame must hold by itself, and whether there is one.
func (s *Strength) Worst() (Check, bool) {
	var worst Check
	found := false
	for _, c := range s.Checks {
		if c.Needs != "" && !c.Holds() {
			continue
		}
		if !found || c.Ratio > worst.Ratio {
			worst, found = c, true
		}
	}
	return worst, found
}

// Failing returns how many checks fail.
func (s *Strength) Failing() int {
	n := 0
	for _, c := range s.Checks {
		if c.Fails() {
			n++
		}
	}
	return n
}

// Find returns the check with the id and whether there is one.
func (s *Strength) Find(id string) (Check, bool) {
	for _, c := range s.Checks {
		if c.ID == id {
			return c, true
		}
	}
	return Check{}, false
}
