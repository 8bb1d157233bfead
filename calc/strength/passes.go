package strength

import "pierbook/calc/measure"

// Passes checks a frame that is only on trial: it returns the greatest ratio of
// its checks and whether none of them fails. Unlike [Work] it seeks no remedies
// for a frame that fails.
func Passes(in Input) (worst measure.Ratio, passes bool) {
	c := newChecker(in, newGauges())
	if !c.prepare() || !c.carry() {
		return 0, false
	}
	c.all()
	s := c.result()
	if check, some := s.Worst(); some {
		worst = check.Ratio
	}
	return worst, s.Failing() == 0 && c.faults.Empty()
}
