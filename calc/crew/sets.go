package crew

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Sets returns the steps, the stretches of work on each day, and the lines for the
// shop's file, with the figures of each that only tables ask for. The first day
// is that of the job's start, where it has one.
func (w Weekend) Sets(starts string, style measure.Style) []figure.Set {
	return []figure.Set{w.stepSet(), w.daySet(starts), w.rateSet(style)}
}

// tableOfSteps is where the words of a step are from.
const tableOfSteps = "the table of the steps"

func (w Weekend) stepSet() figure.Set {
	set := figure.Set{Name: "steps", Key: "crew", Known: []string{"hours", "actual"}, Fields: []figure.Field{
		{Key: "from", Means: "where the hours are from: %", Formula: "the shop's own where it has them, else the estimate"},
		{Key: "title", Means: "name of the step: %", Formula: tableOfSteps},
		{Key: "hands", Means: "people who can work together: %", Formula: tableOfSteps},
		{Key: "overnight", Means: "whether and how it may be left overnight: %", Formula: tableOfSteps},
		{Key: "wait", Means: "may be left overnight: %", Formula: "yes, where the table of the steps begins with it"},
		{Key: "hold", Means: "hold point at the end: %", Formula: tableOfSteps},
	}}
	for _, s := range w.Steps {
		from := measure.Word("estimate")
		if s.Own {
			from = "the shop"
		}
		wait := measure.Word("no")
		if s.MayWait() {
			wait = "yes"
		}
		printed := func(word string) figure.Said { return figure.Said{Quantity: measure.Word(word), Source: s.Source} }
		set.Row(s.Name, s.Title, from, printed(s.Title), figure.Said{Quantity: measure.Count(s.People), Source: s.Source}, printed(s.Overnight), wait, printed(s.Hold))
	}
	return set
}

// daySet is the stretches of work day by day, each day ended by how it is left.
func (w Weekend) daySet(starts string) figure.Set {
	set := figure.Set{Name: "days", Key: "day", Fields: []figure.Field{
		{Key: "day", Means: "day of: %", Formula: "counted from the first"},
		{Key: "start", Means: "hours from the start of the day to: %", Formula: "the middle of each range over the people at it", From: []string{"crew.people"}},
		{Key: "end", Means: "hours from the start of the day to the end of: %", Formula: "the middle of each range over the people at it", From: []string{"crew.people"}},
		{Key: "hold", Means: "hold point at the end of: %", Formula: "that of the step, where it ends on the day"},
	}}
	for i, day := range w.Days {
		name := measure.Word(DayName(starts, i))
		for k, part := range day.Parts {
			hold := "goes on next day"
			if part.Ends {
				hold = part.Hold
			}
			set.Row(fmt.Sprintf("%d.%d", i+1, k+1), part.Title, name, clock(part.Start), clock(part.End), measure.Word(hold))
		}
		overnight, _ := day.Left(w.Steps)
		set.Row(fmt.Sprintf("%d.night", i+1), "Left overnight", name, figure.Nothing, figure.Nothing, measure.Word(overnight))
	}
	return set
}

// clock says hours and minutes to the quarter.
func clock(h measure.Hours) measure.Word {
	quarters := int(float64(h)*4 + 0.5)
	return measure.Word(fmt.Sprintf("%d:%02d", quarters/4, quarters%4*15))
}

// DayName names a day of the work, counted from 0: "Sat 15 May", or "Day 1" when
// no start is given.
func DayName(starts string, i int) string {
	day, err := time.Parse(time.DateOnly, starts)
	if err != nil {
		return fmt.Sprintf("Day %d", i+1)
	}
	return day.AddDate(0, 0, i).Format("Mon 2 Jan")
}

// rateSet offers the hours taken as lines for the shop's file, blanks at their
// start kept.
func (w Weekend) rateSet(style measure.Style) figure.Set {
	set := figure.Set{Name: "own-rates", Key: "rate", Fields: []figure.Field{
		{Key: "estimate", Means: "hours estimated: %", Formula: "Σ amount × rate, from a practised hand's to a first-timer's"},
		{Key: "taken", Means: "hours taken: %", Formula: "as written down"},
	}}
	var done []Estimate
	for _, s := range w.Steps {
		if s.Actual > 0 {
			done = append(done, s)
		}
	}
	const heads = 2 // lines above those of the steps
	for i, line := range strings.FieldsFunc(w.Rates(), func(c rune) bool { return c == '\n' }) {
		trimmed := strings.TrimLeft(line, " ")
		name := strings.Repeat("\u00a0", len(line)-len(trimmed)) + trimmed
		estimate, taken := figure.Nothing, figure.Nothing
		if i >= heads {
			estimate, taken = measure.Word(done[i-heads].Estimated.Print()), measure.Word(done[i-heads].Actual.Print(style))
		}
		set.Row(strconv.Itoa(i+1), name, estimate, taken)
	}
	return set
}
