package calc

import (
	"fmt"
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
	"pierbook/calc/savings"
	"pierbook/calc/setout"
	"pierbook/calc/sizing"
	"pierbook/calc/statics"
	"pierbook/calc/strength"
	"pierbook/calc/terrain"
	"pierbook/calc/yard"
)

// Plan is a job worked through.
type Plan struct {
	Job       *job.Job
	Style     measure.Style
	Frame     *frame.Frame
	Book      *levelling.Book // nil before the ground is read
	Ground    *terrain.Ground
	Heights   *heights.Heights
	Earthwork *earthwork.Earthwork
	Picked    *sizing.Picked // nil when the job left no size open
	Strength  *strength.Strength
	SetOut    *setout.SetOut
	Cuts      []yard.Cut
	Sheets    []yard.SheetPlan // of parts other than the floor
	Order     *order.Order
	Weekend   crew.Weekend
	Figures   *figure.Registry
	Last      *Issue        // the issue before this one, nil when there is none
	Program   string        // version of the program, as [Plan.MadeBy] was told
	Since     *figure.Since // what changed since then, nil without one; its sheets are for SinceLast to tell

	Mends []Mend // what was tried where the heights clash, nil when they do not

	tried []savings.Alternative
}

// Work runs a job through all parts and returns either a plan or the user's
// mistakes, never both: a plan worked from a mistake would be built from. Heights
// that cannot be met and checks that fail are no mistakes of this kind: they are
// in the plan, which is then marked as not for building.
func Work(j *job.Job) (*Plan, fault.List) {
	var faults fault.List
	picked, bad := sizing.Pick(strength.Input{Job: j})
	if !bad.Empty() {
		return nil, bad
	}
	if picked != nil {
		j = picked.Job
	}
	p := &Plan{Job: j, Style: j.Style(), Picked: picked, Figures: &figure.Registry{}}
	laid, bad := frame.Lay(j)
	if bad.Empty() {
		bad = j.CheckPiers(pierNames(laid))
	}
	if !bad.Empty() {
		return nil, bad
	}
	p.Frame = laid
	faults.Join(p.level())
	p.SetOut, bad = setout.Work(j, p.Frame)
	faults.Join(bad)
	faults.Join(unknownSteps(j))
	if !faults.Empty() {
		return nil, faults
	}
	tall := p.heights()
	asked := strength.Input{Job: j, Frame: p.Frame, Heights: tall, Steep: p.Ground.Steep(p.Frame)}
	p.Strength, bad = strength.Work(asked)
	if !bad.Empty() {
		return nil, bad
	}
	sizing.Mend(p.Strength, asked)
	p.Strength.Remarks = append(p.heightRemarks(), p.Strength.Remarks...)
	p.Cuts = yard.Plan(j, p.Frame, p.Heights)
	p.Sheets = yard.PlanSheets(j)
	p.Order = order.Take(order.Gather(order.Parts{Job: j, Frame: p.Frame, Heights: p.Heights, Earthwork: p.Earthwork, SetOut: p.SetOut, Strength: p.Strength, Tall: tall, Cuts: p.Cuts, Sheets: p.Sheets}))
	if bad := p.Order.UnknownGoods(j, p.Frame); !bad.Empty() {
		return nil, bad
	}
	p.Weekend = crew.Plan(p.work(), j.Crew.People, j.Crew.Rates, j.Measured.Hours)
	if len(j.Measured.Delivered) == 0 { // what has come is not saved any more
		p.tried = savings.Find(savings.Base{Job: j, Frame: p.Frame, Strength: p.Strength, Heights: tall, Cuts: p.Cuts})
	}
	p.Mends = p.mends()
	p.register()
	return p, fault.List{}
}

// heightRemarks are what the posts and the day's readings add to what the checks do
// not settle.
func (p *Plan) heightRemarks() []check.Remark {
	var list []check.Remark
	for _, words := range p.Heights.Unfitting(p.Style) {
		list = append(list, check.Remark{Standing: check.Fails, Words: words})
	}
	if words := p.Heights.DayMisread(p.Job); words != "" {
		list = append(list, check.Remark{Standing: check.NotCounted, Words: words})
	}
	return list
}

// level works from the readings to the holes. What is faulty leaves nothing for
// the parts after it.
func (p *Plan) level() fault.List {
	book, faults := levelling.Reduce(p.Job)
	p.Book = book
	if faults.Empty() {
		p.Ground, faults = terrain.Read(p.Job, p.Frame, book)
	}
	if faults.Empty() {
		p.Heights, faults = heights.Work(p.Job, p.Frame, p.Ground)
	}
	if faults.Empty() {
		p.Earthwork = earthwork.Work(p.Job, p.Frame, p.Ground, p.Heights.Piers)
	}
	return faults
}

// Alternatives returns changes that save and pass every check, the greatest
// saving first.
func (p *Plan) Alternatives() []savings.Alternative { return p.tried }

// heights returns how tall each pier stands, or nil before that is known. Where
// seats were read without a survey, dig and stone are taken at their least.
func (p *Plan) heights() map[string]statics.Height {
	heights := map[string]statics.Height{}
	for _, pier := range p.Heights.Piers {
		post, known := p.Heights.PostOf(pier.Name)
		if !known {
			return nil
		}
		h := statics.Height{Post: post, Dig: p.Job.Dig.Least, Stone: p.Job.Stone.Least}
		if pier.Hole != nil {
			h.Dig, h.Stone = pier.Hole.Dig, pier.Hole.Stone
		}
		heights[pier.Name] = h
	}
	return heights
}

// work counts what there is to do. Before the holes are known each is taken at
// the least dig and the least stone.
func (p *Plan) work() crew.Work {
	f := p.Frame
	w := crew.Work{Piers: len(f.Piers), Posts: len(f.Piers), Joists: len(f.Joists), Rims: len(f.Rims), Panels: len(f.Surface.Panels), Boards: len(f.Surface.Boards),
		Area: f.Length.Times(f.Width)}
	for _, setUp := range p.Job.Ground.SetUps {
		w.Readings += len(setUp)
	}
	if w.Readings == 0 {
		w.Readings = len(f.Piers) + 2
	}
	for _, line := range f.Lines {
		for _, ply := range line.Plies {
			w.BeamPieces += len(ply.Pieces)
			w.BeamRun += line.End - line.Start
		}
	}
	for _, j := range f.Joists {
		w.JoistRun += j.Long()
	}
	side := p.Job.Block.Base + 2*p.Job.Stone.Margin
	for _, pier := range p.Heights.Piers {
		dig, stone := max(p.Job.Dig.Least, p.Job.Stone.Least+p.Job.Stone.Embed), p.Job.Stone.Least
		if pier.Hole != nil {
			dig, stone = pier.Hole.Dig, pier.Hole.Stone
		}
		w.Dig += side.Times(side).Deep(dig)
		w.Stone += side.Times(side).Deep(stone)
	}
	if s := p.Earthwork.Stone; s != nil {
		w.Stone = s.Compacted // with what goes beside the blocks
	}
	if s := p.Earthwork.Spoil; s != nil {
		w.Dig += s.Cut
	}
	return w
}

// FarOut says which piers lie too far from the readings for their ground to be
// estimated, or "".
func (p *Plan) FarOut() string {
	names := p.Heights.FarOut()
	if len(names) == 0 {
		return ""
	}
	return "Read the ground at " + strings.Join(names, ", ") + " before anything is dug or cut: more than half a bay outside the readings it is a guess."
}

// CutTrouble says which timber no plan can be made for, so that it is not on the
// order either, or "".
func (p *Plan) CutTrouble() string {
	var troubles []string
	for _, c := range p.Cuts {
		if c.Trouble != "" {
			troubles = append(troubles, c.Trouble)
		}
	}
	if len(troubles) == 0 {
		return ""
	}
	return "Timber is missing from the order: " + strings.Join(troubles, "; ") + ". List more sticks or longer ones under yard.stock, or shorten what asks for them."
}

// Stop says why nothing may be built from this plan, or "".
func (p *Plan) Stop() string {
	switch failing := p.Strength.Failing(); {
	case p.Heights.Clash != nil:
		return "The heights cannot be met: " + p.Heights.Clash.Sentence(p.Style) + ". " + p.mendCount()
	case len(p.Heights.FarOut()) > 0:
		return p.FarOut()
	case p.CutTrouble() != "":
		return p.CutTrouble()
	case failing == 1:
		return "One check fails. The checks sheet names it first, with what would mend it."
	case failing > 1:
		return fmt.Sprintf("%d checks fail. The checks sheet names them first, with what would mend them.", failing)
	}
	return ""
}
