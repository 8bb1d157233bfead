package savings

import (
	"fmt"
	"strings"

	"pierbook/calc/cutting"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/order"
	"pierbook/calc/yard"
)

// Saving is what a change takes less of: posts, stone, cloth and digging are not
// counted.
type Saving struct {
	Money  measure.Money // 0 unless priced
	Priced bool          // every stick, sheet, block and cap has a price
	Timber measure.Volume
	Sheets int
	Piers  int
}

// Some holds when money is saved. Where a price is not known, things of different
// kinds cannot be weighed against each other: there it holds when there is less of
// something and more of nothing.
func (s Saving) Some() bool {
	if s.Priced {
		return s.Money > 0.005
	}
	const speck = 1e-6
	worse := s.Piers < 0 || s.Sheets < 0 || s.Timber < -speck
	return !worse && (s.Piers > 0 || s.Sheets > 0 || s.Timber > speck)
}

// Print returns what is saved in words.
func (s Saving) Print(style measure.Style) string {
	var words string
	add := func(format string, values ...any) {
		if words != "" {
			words += ", "
		}
		words += fmt.Sprintf(format, values...)
	}
	if s.Priced {
		add("%s", s.Money.Print(style))
	}
	if s.Timber > 1e-6 {
		add("%s of timber", s.Timber.Print(style))
	} else if s.Timber < -1e-6 {
		add("but %s more timber", (-s.Timber).Print(style))
	}
	switch {
	case s.Sheets == 1:
		add("1 sheet")
	case s.Sheets > 1:
		add("%d sheets", s.Sheets)
	}
	switch {
	case s.Piers > 0:
		add("%d piers", s.Piers)
	case s.Piers < 0:
		add("but %d more piers", -s.Piers)
	}
	return words
}

// bulk returns the timber bought by a plan.
func bulk(s job.Section, r *cutting.Result) measure.Volume {
	var total measure.Volume
	for _, stick := range r.Sticks {
		if stick.Bought {
			total += s.Width.Times(s.Depth).Deep(stick.Length)
		}
	}
	return total
}

// ledger is what a frame takes, without posts, stone, cloth and digging.
type ledger struct {
	money         measure.Money
	priced        bool
	timber        measure.Volume
	sheets, piers int
	lines         []string // keys of the lines of the order
}

// stickLedger is what the sticks of one section take.
func stickLedger(s job.Section, r *cutting.Result) ledger {
	return ledger{money: measure.Money(float64(r.Cost) / 100), priced: !r.ByLength, timber: bulk(s, r)}
}

func (l ledger) less(other ledger) Saving {
	saving := Saving{Priced: l.priced && other.priced, Timber: l.timber - other.timber, Sheets: l.sheets - other.sheets, Piers: l.piers - other.piers}
	if saving.Priced {
		saving.Money = l.money - other.money
	}
	return saving
}

// trials adds frames up. Sections whose pieces are cut alike in several frames
// are planned once.
type trials map[string]*cutting.Result

// cutKey tells the pieces of a section from others.
func cutKey(c yard.Cut) string {
	var b strings.Builder
	b.WriteString(c.Section.Size)
	for _, piece := range c.Pieces {
		fmt.Fprintf(&b, " %d×%d", piece.Count, piece.Length)
	}
	return b.String()
}

// plan cuts a section at the least cost, nil when it cannot be cut.
func (t trials) plan(j *job.Job, c *yard.Cut) *cutting.Result {
	key := cutKey(*c)
	problem := c.Problem(j)
	if known, ok := t[key]; ok {
		return known
	}
	problem.Goals, problem.Budget = cutting.LeastCost, trialBudget
	var plan *cutting.Result
	if result, err := cutting.Plan(problem); err == nil {
		plan = &result
	}
	t[key] = plan
	return plan
}

// ledger adds up what a frame takes, its sticks at the least cost; not ok when
// they cannot be cut at all.
func (t trials) ledger(j *job.Job, f *frame.Frame) (l ledger, ok bool) {
	l = ledger{priced: true, sheets: f.Surface.Sheets, piers: len(f.Piers)}
	in := order.Input{Job: j, Frame: f}
	for _, c := range yard.List(j, f, nil) {
		if c.Result = t.plan(j, &c); c.Result == nil {
			return ledger{}, false
		}
		l.timber += bulk(c.Section, c.Result)
		in.Sticks = append(in.Sticks, order.SticksOf(c, j.Style())...)
	}
	for _, line := range order.FrameLines(in) {
		cost, known := line.Cost()
		l.money += cost
		l.priced = l.priced && known
		l.lines = append(l.lines, line.Key)
	}
	return l, true
}
