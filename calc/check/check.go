package check

import (
	"cmp"
	"slices"
	"strings"

	"pierbook/calc/measure"
)

// Check is one comparison of what is asked of a part with what it can do.
type Check struct {
	ID               string // key check.ID.ratio: joist.bending, beam.B.shear, pier.A1.soil
	What             string
	Demand, Capacity measure.Quantity
	Ratio            measure.Ratio // demand over capacity
	Combination      string        // of loads, empty where none applies
	Duration         measure.Ratio // CD of that combination, 0 where none enters
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

// Slack lets a ratio of one pass in spite of the last bits of its arithmetic.
const Slack = 1 + 1e-9

// Holds tells parts that can do what is asked, as drawn.
func (c Check) Holds() bool { return c.Ratio <= Slack }

// Fails tells parts that cannot, and that nothing by others would mend.
func (c Check) Fails() bool { return !c.Holds() && c.Needs == "" }

// Sort puts failing checks first, then those that need work by others,
// then by falling ratio.
func Sort(checks []Check) {
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

// Remedy is one change of the frame that mends a failing check.
type Remedy struct {
	Change string   // "frame.beams.lines: 4"
	Words  string   // "one more beam line"
	Cost   string   // against the frame as it stands: "$42.00 more"
	Mends  bool     // no check fails with it
	Helps  []string // the kinds of check that it mends, when it does not mend all
	Worst  measure.Ratio
}

// KindOf returns the key of a check without the name of its member: beam.bending, pier.soil.
func KindOf(id string) string {
	parts := strings.Split(id, ".")
	return parts[0] + "." + parts[len(parts)-1]
}

// Repeated splits the id of a check that is made at many places, such as
// pier.B3.soil, into its family, place and kind.
func (c Check) Repeated() (family, place, kind string, many bool) {
	parts := strings.SplitN(c.ID, ".", 3)
	if len(parts) == 3 && slices.Contains([]string{"pier", "post", "beam"}, parts[0]) {
		return parts[0], parts[1], parts[2], true
	}
	return "", "", "", false
}

// Verdict says in words what a check came to.
func (c Check) Verdict() string {
	switch {
	case c.Fails():
		return "FAILS"
	case c.Needs != "":
		return "by others: " + c.Needs
	default:
		return "passes"
	}
}
