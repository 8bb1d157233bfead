package calc

import (
	"fmt"
	"strconv"
	"strings"

	"pierbook/calc/check"
	"pierbook/calc/crew"
	"pierbook/calc/earthwork"
	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
	"pierbook/calc/order"
	"pierbook/calc/setout"
	"pierbook/calc/strength"
	"pierbook/calc/terrain"
	"pierbook/calc/yard"
)

// Mend is a change of a job whose heights clash, worked through like the job
// itself: every window of the piers, every check, the order and the hours.
type Mend struct {
	Words string // "longest post 2′ 8 1/2″ instead of 24″"
	Write string // the line to write in the job file, or empty
	Costs string // what the whole job comes to with it, empty where it mends nothing
	Lacks string // why it mends nothing by itself, or empty
	Then  string // what is to be seen to afterwards, or empty
}

// Mends holds for a change with which the job can be built.
func (m Mend) Mends() bool { return m.Lacks == "" }

// Said tells the change, what to write for it, and what it comes to or lacks.
func (m Mend) Said() string {
	said := m.Words
	if m.Write != "" {
		said += " (" + m.Write + ")"
	}
	for _, more := range []string{m.Costs, m.Lacks, m.Then} {
		if more != "" {
			said += "; " + more
		}
	}
	return said
}

// MendSet is what was tried where the heights clash: what mends first, then what
// does not and why.
func (p *Plan) MendSet() figure.Set {
	set := figure.Set{Name: "mends", Key: "mend", Fields: []figure.Field{
		{Key: "does", Means: "change of the job: %", Formula: "tried with every window and every check", From: []string{"clash.amount"}},
		{Key: "write", Means: "what to write in the job file for it: %", Formula: "key and value"},
		{Key: "alone", Means: "whether it mends the heights alone: %", Formula: "no clash and no failing check with it"},
		{Key: "costs", Means: "what the job comes to with it, or what it lacks: %", Formula: "the whole job worked through with it"},
	}}
	for i, m := range p.Mends {
		alone, then := "yes", m.Costs
		if !m.Mends() {
			alone, then = "no", m.Lacks
		} else if m.Then != "" {
			then += "; " + m.Then
		}
		number := strconv.Itoa(i + 1)
		set.Row(number, number, measure.Word(m.Words), measure.Word(m.Write), measure.Word(alone), measure.Word(then))
	}
	return set
}

// ClashSentence says what clashes and how much of what was tried mends it, or "".
func (p *Plan) ClashSentence() string {
	if p.Heights.Clash == nil {
		return ""
	}
	said, with := p.Heights.Clash.Sentence(p.Style)+". ", "with every check and window"
	if p.Strength.Failing() > 0 {
		with = "with every window, and no check failing that does not fail without it"
	}
	var mend []string
	for _, m := range p.Mends {
		if m.Mends() {
			mend = append(mend, m.Said())
		}
	}
	switch len(mend) {
	case 0:
		return said + "Nothing that was tried mends it alone: probe again beside it, move the pier or the plan, or ask an engineer."
	case 1:
		return said + "This alone mends it, " + with + ": " + mend[0] + "."
	}
	return said + "Any one of these mends it, " + with + ": " + strings.Join(mend, ". Or: ") + "."
}

// mendCount says how many of the ways that were tried mend the heights alone.
func (p *Plan) mendCount() string {
	n := 0
	for _, m := range p.Mends {
		if m.Mends() {
			n++
		}
	}
	if n == 0 {
		return "Nothing that was tried mends it alone; the sheet on the height of the floor says what was."
	}
	return fmt.Sprintf("The sheet on the height of the floor has %s that would mend it.", measure.Counted(n, "change"))
}

// trial is a changed job as far as it has been worked through.
type trial struct {
	*Plan
	lacks string // why it cannot be built, or empty
}

// laidOut lays a changed job out, takes the ground as given or else from its
// readings, and works out the heights.
func laidOut(j *job.Job, lie *terrain.Lie, ground *terrain.Ground) trial {
	t := trial{Plan: &Plan{Job: j, Style: j.Style()}}
	f, faults := frame.Skeleton(j) // the floor on it is laid for those that mend
	if f == nil || !faults.Empty() {
		return t.lacking(faults)
	}
	t.Frame = f
	if lie == nil {
		if t.Book, faults = levelling.Reduce(j); faults.Empty() {
			t.Ground, faults = terrain.Read(j, f, t.Book)
		}
	} else {
		there, ok := ground.Elsewhere(j, f, *lie)
		if !ok {
			t.lacks = "no ground is known there"
			return t
		}
		t.Ground = there
	}
	if faults.Empty() {
		t.Heights, faults = heights.Work(j, f, t.Ground)
	}
	switch {
	case !faults.Empty():
		return t.lacking(faults)
	case t.Heights.Clash != nil:
		t.lacks = "the heights still clash by " + t.Heights.Clash.Amount.Print(t.Style)
	case len(t.Heights.FarOut()) > 0:
		t.lacks = "the ground at " + strings.Join(t.Heights.FarOut(), ", ") + " would have to be read first"
	}
	return t
}

func (t trial) lacking(faults fault.List) trial {
	t.lacks = "it cannot be laid out"
	if all := faults.Sorted(); len(all) > 0 {
		t.lacks = all[0].Wrong
	}
	return t
}

// checked runs every check of a trial whose heights are met. Checks that fail
// whatever the heights are not held against it.
func (t trial) checked(before *strength.Strength) trial {
	if t.lacks != "" {
		return t
	}
	t.Earthwork = earthwork.Work(t.Job, t.Frame, t.Ground, t.Heights.Piers)
	s, faults := strength.Work(strength.Input{Job: t.Job, Frame: t.Frame, Heights: t.heights()})
	if !faults.Empty() {
		return t.lacking(faults)
	}
	t.Strength = s
	failed := map[string]bool{}
	for _, c := range before.Checks {
		if c.Fails() {
			failed[check.KindOf(c.ID)] = true
		}
	}
	var fails []string
	for _, c := range s.Checks {
		if c.Fails() && !failed[check.KindOf(c.ID)] {
			fails = append(fails, fmt.Sprintf("%s (%s of %s allowed)", c.What, c.Demand.Print(t.Style), c.Capacity.Print(t.Style)))
		}
	}
	switch len(fails) {
	case 0:
	case 1:
		t.lacks = "a check fails then: " + fails[0]
	default:
		t.lacks = fmt.Sprintf("%d checks fail then, first: %s", len(fails), fails[0])
	}
	return t
}

// costs works out what the whole job comes to: money as far as prices are known,
// hours of one person, stone and soil.
func (t trial) costs() string {
	j := t.Job
	var faults fault.List
	if t.Frame, faults = frame.Lay(j); !faults.Empty() {
		return "not costed"
	}
	if t.SetOut, faults = setout.Work(j, t.Frame); !faults.Empty() {
		return "not costed"
	}
	t.Cuts, t.Sheets = yard.Plan(j, t.Frame, t.Heights), yard.PlanSheets(j)
	if trouble := t.CutTrouble(); trouble != "" {
		return "not costed: " + trouble
	}
	t.Order = order.Take(order.Gather(order.Parts{Job: j, Frame: t.Frame, Heights: t.Heights, Earthwork: t.Earthwork, SetOut: t.SetOut, Strength: t.Strength, Tall: t.heights(), Cuts: t.Cuts, Sheets: t.Sheets}))
	work := crew.Plan(t.work(), j.Crew.People, j.Crew.Rates, j.Measured.Hours)
	parts := []string{work.Total.Least.Print(t.Style) + " to " + work.Total.Most.Print(t.Style) + " of one person", t.Earthwork.Stone.Order.Print(t.Style) + " of stone", t.Earthwork.Spoil.Loose.Print(t.Style) + " of loose soil"}
	var posts measure.Length
	for _, post := range t.Heights.Posts {
		posts += post.Length()
	}
	parts = append(parts, posts.Print(t.Style)+" of post")
	switch {
	case t.Order.Cost > 0 && t.Order.Blank > 0:
		parts = append([]string{t.Order.Cost.Print(t.Style) + " as far as priced"}, parts...)
	case t.Order.Cost > 0:
		parts = append([]string{t.Order.Cost.Print(t.Style)}, parts...)
	}
	return "the job comes to " + strings.Join(parts, ", ")
}
