package check

import (
	"fmt"
	"math"
	"strings"

	"pierbook/calc/measure"
)

// Fastening is so many nails or screws at one place, and the steel they hold.
type Fastening struct {
	What    string
	Count   int
	One     measure.Force // reference value of one
	Symbol  string        // of that value: W, Z
	Factors []Factor      // all but load duration
	Steel   measure.Force // allowable of the steel, on which load duration does not go; 0 where there is none to check
	Slope   measure.Ratio // share of the pull that acts upright, 0 for all of it
	Clause  string
	Memory  bool
}

// Holds returns what the fastening holds under loads of a duration:
// n·Z·CD·(the other factors), at most what the steel does.
func (f Fastening) Holds(duration measure.Ratio) measure.Force {
	held := f.One * measure.Force(f.Count) * measure.Force(duration)
	for _, factor := range f.Factors {
		held *= measure.Force(factor.Value)
	}
	if f.Steel > 0 {
		held = min(held, f.Steel)
	}
	if f.Slope > 0 {
		held *= measure.Force(f.Slope)
	}
	return measure.Force(math.Max(0, float64(held)))
}

// Working writes what it holds as one line.
func (f Fastening) Working(t Words, duration measure.Ratio) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: n·%s·CD", f.What, f.Symbol)
	for _, factor := range f.Factors {
		b.WriteString("·" + factor.Symbol)
	}
	fmt.Fprintf(&b, " = %d × %s × %s", f.Count, t.Force(float64(f.One)), t.Factor(duration))
	for _, factor := range f.Factors {
		b.WriteString(" × " + t.Factor(factor.Value))
	}
	if f.Steel > 0 {
		fmt.Fprintf(&b, ", at most %s of steel", t.Force(float64(f.Steel)))
	}
	if f.Slope > 0 {
		fmt.Fprintf(&b, ", × %s for its slope", t.Factor(f.Slope))
	}
	fmt.Fprintf(&b, " = %s", t.Force(float64(f.Holds(duration))))
	return b.String()
}
