package strength

import (
	"slices"

	"pierbook/calc/check"
	"pierbook/calc/fault"
	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
	"pierbook/calc/support"
)

// Strength is all that was worked out about loads and what carries them.
type Strength struct {
	Loads        []loads.Load
	Combinations []loads.Combination
	First        []FirstLoad        // by pier: the load by tributary area
	Piers        []statics.PierLoad // by pier: continuous reactions, the greatest of all combinations
	Checks       []check.Check      // failing first
	Conventions  []check.Check      // the deck-table convention, apart from the others
	Balance      []Balance          // by load case: loads applied and reactions
	WorstPier    string
	Path         []check.Stage   // surface to soil at the worst pier
	Ties         []support.Tie   // what lifts and pushes at each pier
	Straps       Straps          // that hold the posts to their blocks
	Knees        support.Knees   // of tall posts
	Wind         *loads.WindLoad // nil when no wind or no building was given
	Joist, Beam  *Curves         // of the governing joist and beam line
	Remedies     []check.Remedy  // changes that mend a failing frame, cheapest first
	Rules        check.Rules
	Remarks      []check.Remark // what the checks do not settle, under one of three words

	style    measure.Style
	job      *job.Job
	members  []named
	support  Support
	symbols  []string
	duration func(loads.Combination) measure.Ratio
}

// Straps are what holds a post to its block at every pier: a strap under the block.
type Straps struct {
	Nails  int  // in each end
	ToBeam bool // it runs on up to the beam, with as many nails there
}

// named is a kind of member under the name that keys and checks have for it.
type named struct {
	name string
	Member
}

func (s *Strength) member(name string) Member {
	at := slices.IndexFunc(s.members, func(n named) bool { return n.name == name })
	return s.members[at].Member
}

// Work checks a laid-out frame. It reports a fault for what cannot be worked at
// all: unknown timber, a section without values, no soil, a wall off the
// platform. A check that fails is a result, not a fault.
func Work(in Input) (*Strength, fault.List) {
	t := NewTrial(in, statics.NewGauges(), InFull)
	if !t.Run() {
		return nil, t.Faults
	}
	return t.result(), t.Faults
}

// Worst returns the check with the greatest ratio among those that the drawn
// frame must hold by itself, and whether there is one.
func (s *Strength) Worst() (check.Check, bool) { return check.Greatest(s.Checks) }

// Failing returns how many checks fail.
func (s *Strength) Failing() int {
	n := check.Failing(s.Checks)
	for _, r := range s.Remarks {
		if r.Standing == check.Fails {
			n++
		}
	}
	return n
}

// ByOthers returns the works by others without which checks do not hold, each once.
func (s *Strength) ByOthers() []string {
	var needs []string
	for _, c := range s.Checks {
		if !c.Holds() && c.Needs != "" && !slices.Contains(needs, c.Needs) {
			needs = append(needs, c.Needs)
		}
	}
	return needs
}

// Find returns the check with the id and whether there is one.
func (s *Strength) Find(id string) (check.Check, bool) { return check.Find(s.Checks, id) }

// Values returns the design values of joists, beams and posts, each with the
// factors of its worst check.
func (s *Strength) Values() []check.DesignValue {
	var all []check.DesignValue
	for _, m := range s.members {
		all = append(all, m.DesignValues(s.Checks)...)
	}
	return all
}
