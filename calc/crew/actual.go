package crew

import (
	"fmt"
	"strings"

	"pierbook/calc/measure"
)

// Pace returns how the hours written down on site compare with the middle of
// their estimates, and whether any were written down.
//
//	pace = Σ taken / Σ middle
func (w Weekend) Pace() (measure.Ratio, bool) {
	taken, middle := w.done()
	if taken <= 0 || middle <= 0 {
		return 0, false
	}
	return measure.Ratio(taken / middle), true
}

// done adds up the hours taken and the middle of the estimates of the same steps.
func (w Weekend) done() (taken, middle measure.Hours) {
	for _, e := range w.Steps {
		if e.Actual > 0 {
			taken += e.Actual
			middle += e.Estimated.Middle()
		}
	}
	return taken, middle
}

func (w Weekend) paceWorking() string {
	taken, middle := w.done()
	return fmt.Sprintf("%.3g h / %.3g h", float64(taken), float64(middle))
}

// Rates returns the hours taken as lines for the shop's file, ready to paste, or
// "" when none were written down. They are the hours of a platform of this size.
func (w Weekend) Rates() string {
	var b strings.Builder
	for _, e := range w.Steps {
		if e.Actual > 0 {
			fmt.Fprintf(&b, "    %s: %g h\n", e.Name, float64(e.Actual))
		}
	}
	if b.Len() == 0 {
		return ""
	}
	return "crew:\n  rates:\n" + b.String()
}
