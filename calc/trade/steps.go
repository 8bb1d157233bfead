package trade

import (
	"fmt"
	"regexp"
)

// Step is one step of the work, as its sheet, the plan of the days and the table
// of the hours name it.
type Step struct {
	Name      string // of its page: "dig"
	Title     string
	People    int    // who can work at it together
	Overnight string // whether the work may be left overnight after it, and how
	Hold      string // the hold point at its end
	Source    string
}

// MayWait holds when the work may be left overnight after the step.
func (s Step) MayWait() bool { return beginsWithYes.MatchString(s.Overnight) }

var (
	beginsWithYes = regexp.MustCompile(`^yes\b`)
	yesOrNo       = regexp.MustCompile(`^(yes|no)\b`)
)

func readSteps(rows []row) []Step {
	list := make([]Step, len(rows))
	for i, r := range rows {
		list[i] = Step{r.text("step"), r.text("title"), r.whole("people"), r.text("overnight"), r.text("hold"), r.text("source")}
		if !yesOrNo.MatchString(list[i].Overnight) {
			panic(fmt.Sprintf("%sovernight is %q, which begins with neither yes nor no", r.at, list[i].Overnight))
		}
	}
	return list
}

// Steps returns the steps of the work in order.
func Steps() []Step { return facts().steps }

// StepNames returns their names in order.
func StepNames() []string { return names(Steps(), func(s Step) string { return s.Name }) }
