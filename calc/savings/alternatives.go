package savings

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"pierbook/calc/cutting"
	"pierbook/calc/frame"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/order"
	"pierbook/calc/sizing"
	"pierbook/calc/statics"
	"pierbook/calc/strength"
	"pierbook/calc/trade"
	"pierbook/calc/yard"
)

// Alternative is a change of the job that saves, said before anything is ordered.
type Alternative struct {
	Path, Write string // key of the job, and what to write there
	Saying      string // "3 piers under each line instead of 4"
	Saving      Saving
	Worst       measure.Ratio // greatest ratio of the checks
	Condition   string        // what it depends on, or empty

	before, after ledger // what the saving is the difference of
}

// Sentence tells the change, what it saves and what to write for it.
func (a Alternative) Sentence(style measure.Style) string {
	words := fmt.Sprintf("%s saves %s (%s: %s)", a.Saying, a.Saving.Print(style), a.Path, a.Write)
	if a.Condition != "" {
		words += "; " + a.Condition
	}
	return words
}

// proposal is a changed job on trial.
type proposal struct {
	path, write, saying string
	job                 *job.Job
}

// Base is what has been worked out of the job as it stands.
type Base struct {
	Job      *job.Job
	Frame    *frame.Frame
	Strength *strength.Strength
	Heights  map[string]statics.Height // of the piers, nil while they are not known
	Cuts     []yard.Cut
}

// Find tries a few changes of the job and returns those that save and pass every
// check, the greatest saving first. Nothing is offered once something is built.
func Find(p Base) []Alternative {
	if p.Job.Measured.Any() {
		return nil
	}
	tries := trials{}
	for _, c := range p.Cuts {
		tries[cutKey(c)] = c.Result
	}
	base, ok := tries.ledger(p.Job, p.Frame)
	if !ok {
		return nil
	}
	var found []Alternative
	for _, t := range slices.Concat(p.otherCounts(), p.otherSizes()) {
		if a, ok := p.try(t, tries, base); ok {
			found = append(found, a)
		}
	}
	found = append(found, p.otherStock()...)
	slices.SortStableFunc(found, func(a, b Alternative) int {
		return cmp.Or(cmp.Compare(b.Saving.Money, a.Saving.Money), cmp.Compare(b.Saving.Piers, a.Saving.Piers), cmp.Compare(b.Saving.Timber, a.Saving.Timber))
	})
	return found
}

// try lays a changed job out, and checks its strength only when it saves. Piers
// that were not there before are taken as tall as the tallest of the plan.
func (p Base) try(t proposal, tries trials, base ledger) (Alternative, bool) {
	laid, bad := frame.Lay(t.job)
	if !bad.Empty() {
		return Alternative{}, false
	}
	other, ok := tries.ledger(t.job, laid)
	saving := base.less(other)
	if !ok || !saving.Some() {
		return Alternative{}, false
	}
	worst, passes := sizing.Passes(strength.Input{Job: t.job, Frame: laid, Heights: p.tallest(laid)})
	if !passes {
		return Alternative{}, false
	}
	a := Alternative{Path: t.path, Write: t.write, Saying: t.saying, Saving: saving, Worst: worst, before: base, after: other}
	if p.Job.AnySights() {
		a.Condition = "piers move: read the ground there"
	}
	return a, true
}

// tallest returns the tallest height of the plan for every pier of another
// frame, nil when no heights are known.
func (p Base) tallest(f *frame.Frame) map[string]statics.Height {
	known := p.Heights
	if known == nil {
		return nil
	}
	var most statics.Height
	for _, h := range known {
		most = statics.Height{Post: max(most.Post, h.Post), Dig: max(most.Dig, h.Dig), Stone: max(most.Stone, h.Stone)}
	}
	heights := map[string]statics.Height{}
	for _, pier := range f.Piers {
		heights[pier.Name] = most
	}
	return heights
}

// otherCounts are one line or one pier under each line more or fewer.
func (p Base) otherCounts() []proposal {
	var tries []proposal
	lines, perLine := len(p.Frame.Lines), p.Frame.PerLine(0)
	for _, more := range []int{-1, 1} {
		if n := lines + more; n >= 2 {
			changed := *p.Job
			changed.Frame.Beams.Lines = n
			tries = append(tries, proposal{"frame.beams.lines", strconv.Itoa(n), fmt.Sprintf("%d beam lines instead of %d", n, lines), &changed})
		}
		if n := perLine + more; n >= 2 {
			changed := *p.Job
			changed.Frame.Piers.PerLine, changed.Frame.Piers.Spacing = n, 0
			tries = append(tries, proposal{"frame.piers.per_line", strconv.Itoa(n), fmt.Sprintf("%d piers under each line instead of %d", n, perLine), &changed})
		}
	}
	return tries
}

// otherSizes are lengths and widths a little smaller: where sheets or boards end
// whole, and where a joist or a beam comes from the next shorter stick.
func (p Base) otherSizes() []proposal {
	j, f := p.Job, p.Frame
	wish := j.Platform.Surface
	var widths, lengths []measure.Length
	if len(f.Surface.Panels) > 0 {
		lengths = append(lengths, wholePieces(f.Length, wish.FaceLength, wish.Gap))
		widths = append(widths, wholePieces(f.Width, wish.FaceWidth, wish.Gap))
	} else if wish.BoardWidth > 0 {
		widths = append(widths, wholePieces(f.Width, wish.BoardWidth, wish.Gap))
	}
	if len(f.Joists) > 0 && f.BuildUp.Joist > 0 {
		widths = append(widths, fromShorter(j, f.Sections.Joist, f.Width, f.Joists[0].Long())...)
	}
	lengths = append(lengths, fromShorter(j, f.Sections.Beam, f.Length, f.Lines[0].End-f.Lines[0].Start)...)
	var tries []proposal
	for _, w := range distinct(widths, f.Width, j) {
		changed := *j
		changed.Platform.Width = w
		tries = append(tries, proposal{"platform.width", w.Print(p.Job.Style()), fmt.Sprintf("a width of %s instead of %s", w.Print(p.Job.Style()), f.Width.Print(p.Job.Style())), &changed})
	}
	for _, l := range distinct(lengths, f.Length, j) {
		changed := *j
		changed.Platform.Length = l
		tries = append(tries, proposal{"platform.length", l.Print(p.Job.Style()), fmt.Sprintf("a length of %s instead of %s", l.Print(p.Job.Style()), f.Length.Print(p.Job.Style())), &changed})
	}
	return tries
}

// wholePieces returns the greatest size no longer than a side at which pieces
// with gaps between them end whole.
func wholePieces(side, piece, gap measure.Length) measure.Length {
	return (side+gap)/(piece+gap)*(piece+gap) - gap
}

// fromShorter returns the sizes of a side at which a member along it comes from
// a shorter stick.
func fromShorter(j *job.Job, s job.Section, side, member measure.Length) []measure.Length {
	var sizes []measure.Length
	for _, stock := range j.StockOf(s.Size) {
		if over := member - (stock.Length - j.Yard.EndTrim); over > 0 {
			sizes = append(sizes, side-over)
		}
	}
	return sizes
}

// distinct keeps each size once that is smaller than a side by no more than is
// given up for a saving, rounded down to the mark.
func distinct(sizes []measure.Length, side measure.Length, j *job.Job) []measure.Length {
	var kept []measure.Length
	for _, size := range sizes {
		size = size.RoundDownTo(j.Mark())
		if size > 0 && size < side && side-size <= trade.GivenUp.In(j.Units) {
			kept = append(kept, size)
		}
	}
	slices.Sort(kept)
	return slices.Compact(kept)
}

// otherStock tries common lengths that the yard does not list, at the price of
// its others by the run. Posts are left out: they are planned anew once the
// seats are read.
func (p Base) otherStock() []Alternative {
	var found []Alternative
	for i := range p.Cuts {
		c := &p.Cuts[i]
		listed, ok := p.Job.Yard.Stock[c.Section.Size]
		if !ok || c.Result == nil || slices.Contains(c.Uses, "posts") {
			continue
		}
		for _, more := range job.CommonLengths(p.Job.Units) {
			if slices.ContainsFunc(listed, func(s job.StockLength) bool { return s.Length == more.Length }) {
				continue
			}
			if a, ok := p.tryStock(c, more.Length); ok {
				found = append(found, a)
			}
		}
	}
	return found
}

// tryStock cuts a section once more with another stock length at hand.
func (p Base) tryStock(c *yard.Cut, length measure.Length) (Alternative, bool) {
	problem := c.Problem(p.Job)
	stock := cutting.Stock{Length: length}
	var run, cost float64
	for _, s := range problem.Stock {
		run, cost = run+s.Length.Metres(), cost+float64(s.Price)
		stock.Priced = s.Priced
	}
	stock.Price = int64(cost/run*length.Metres() + 0.5)
	problem.Stock = append(problem.Stock, stock)
	problem.Goals, problem.Budget = cutting.LeastCost, trialBudget
	result, err := cutting.Plan(problem)
	if err != nil || result.Cost >= c.Result.Cost {
		return Alternative{}, false
	}
	a := Alternative{Path: "yard.stock." + c.Section.Size, Write: length.Print(p.Job.Style()), Saying: fmt.Sprintf("sticks of %s in %s too, if the yard has them", c.Section.Size, length.Print(p.Job.Style()))}
	a.before, a.after = stickLedger(c.Section, c.Result), stickLedger(c.Section, &result)
	for _, b := range c.Bought() {
		a.before.lines = append(a.before.lines, order.Sticks{Section: c.Section, Long: b.Length}.Key())
	}
	a.Saving = a.before.less(a.after)
	if a.Saving.Priced {
		a.Condition = fmt.Sprintf("at about %s each, as its other lengths by the run", measure.Money(float64(stock.Price)/100).Print(p.Job.Style()))
	}
	if worst, ok := p.Strength.Worst(); ok { // the frame stays as it is
		a.Worst = worst.Ratio
	}
	return a, true
}

// trialBudget bounds the search of a plan on trial: it is a trial's cost that is
// wanted, not its proof.
const trialBudget = cutting.DefaultBudget / 50
