package strength

import (
	"pierbook/calc/measure"

	"pierbook/calc/statics"
)

// Passes checks a frame that is only on trial: it returns the greatest ratio of
// its checks and whether none of them fails. Unlike [Work] it writes no working,
// draws no curves and seeks no remedies for a frame that fails; of such a frame
// the ratio is no more than that of a check which fails.
func Passes(in Input) (worst measure.Ratio, passes bool) {
	c := newChecker(in, statics.NewGauges())
	c.quiet, c.hasty = true, true
	if !c.prepare() || !c.carry() {
		return 0, false
	}
	c.all()
	worst, _ = c.greatest()
	return worst, !c.failed && c.faults.Empty()
}
