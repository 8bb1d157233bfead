package check

import (
	"math"
	"slices"

	"pierbook/calc/measure"
)

// Finding is a check with the words that explain it, made only when wanted. One
// without a key says that there is nothing to check.
type Finding struct {
	Check   Check
	Explain func(Words) []string
}

// Findings gathers the findings of one frame.
type Findings struct {
	Checks []Check
	Failed bool // one of them fails
	Words  Words
	Quiet  bool // a frame on trial: ratios alone, no working
	Hasty  bool // a search: nothing more is looked at once a check fails
}

// Enough tells a search that the frame is out: what would follow cannot change it.
func (l *Findings) Enough() bool { return l.Hasty && l.Failed }

// Add keeps findings. In a quiet list only their ratios count.
func (l *Findings) Add(found ...Finding) {
	for _, f := range found {
		if f.Check.ID == "" {
			continue
		}
		if math.IsNaN(float64(f.Check.Ratio)) {
			panic("check: no ratio for " + f.Check.ID)
		}
		l.Failed = l.Failed || f.Check.Fails()
		if !l.Quiet {
			f.Check.Working = f.Explain(l.Words)
		}
		l.Checks = append(l.Checks, f.Check)
	}
}

// AddWorst keeps the finding with the greatest ratio of so many.
func (l *Findings) AddWorst(count int, of func(i int) Finding) {
	if l.Enough() {
		return
	}
	var worst Finding
	for i := range count {
		f := of(i)
		if f.Check.ID != "" && (worst.Check.ID == "" || f.Check.Ratio > worst.Check.Ratio) {
			worst = f
		}
	}
	l.Add(worst)
}

// Restart forgets what was found and keeps the room for it.
func (l *Findings) Restart() { l.Checks, l.Failed = l.Checks[:0], false }

// Greatest returns the check with the greatest ratio among those that the drawn
// frame must hold by itself, and whether there is one.
func Greatest(checks []Check) (Check, bool) {
	worst, found := -1, false
	for i := range checks {
		c := &checks[i]
		if c.Needs != "" && !c.Holds() {
			continue
		}
		if !found || c.Ratio > checks[worst].Ratio {
			worst, found = i, true
		}
	}
	if !found {
		return Check{}, false
	}
	return checks[worst], true
}

// Failing returns how many checks fail.
func Failing(checks []Check) int {
	n := 0
	for i := range checks {
		if checks[i].Fails() {
			n++
		}
	}
	return n
}

// Find returns the check with the id and whether there is one.
func Find(checks []Check, id string) (Check, bool) {
	at := slices.IndexFunc(checks, func(c Check) bool { return c.ID == id })
	if at < 0 {
		return Check{}, false
	}
	return checks[at], true
}

// RatioOf is demand over capacity, a large number when there is none.
func RatioOf(demand, capacity float64) measure.Ratio {
	if demand <= 0 {
		return 0
	}
	return measure.Ratio(demand / math.Max(capacity, demand/99))
}
