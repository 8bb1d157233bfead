package sizing

import (
	"pierbook/calc/check"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
	"pierbook/calc/strength"
)

// Passes checks a frame that is only on trial: it returns the greatest ratio of
// its checks and whether none of them fails. Unlike [Work] it writes no working,
// draws no curves and seeks no remedies for a frame that fails; of such a frame
// the ratio is no more than that of a check which fails.
func Passes(in strength.Input) (worst measure.Ratio, passes bool) {
	t := strength.NewTrial(in, statics.NewGauges(), strength.UntilOneFails)
	if !t.Run() {
		return 0, false
	}
	greatest, _ := check.Greatest(t.Checks)
	return greatest.Ratio, !t.Failed && t.Faults.Empty()
}
