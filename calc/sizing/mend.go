package sizing

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"pierbook/calc/check"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/statics"
	"pierbook/calc/strength"
)

// trial is a change of the frame that was laid out and checked.
type trial struct {
	check.Remedy
	key   string
	cost  float64
	fails map[string]bool // kinds of check that still fail
	after strength.Input  // what the checks are worked from with the change

	price, besides string // in words: of timber and piers, and what the list of prices cannot tell
}

// Mend tries the changes next to a failing frame as it stands and writes those
// that help beside each failing check; those that mend everything stand in
// Remedies, cheapest first. When none does by itself, the cheapest frame that
// passes stands there, where one does, with a row of changes that mend all
// together and with the changes that mend a part. A frame that holds is left as
// it is.
func Mend(s *strength.Strength, in strength.Input) {
	if s.Failing() == 0 {
		return
	}
	tried := neighbours(in)
	for i := range s.Checks {
		if c := &s.Checks[i]; c.Fails() {
			c.Remedies = remedies(helping(tried, func(r trial) bool { return !r.fails[check.KindOf(c.ID)] }))
		}
	}
	s.Remedies = remedies(waysOut(s.Checks, in, tried))
}

// neighbours tries the changes next to a frame, cheapest first.
func neighbours(in strength.Input) []trial {
	base, _ := pricesOf(in.Job).of(in.Frame)
	var tried []trial
	for _, c := range changes(in) {
		if r, ok := try(in, c, base); ok {
			tried = append(tried, r)
		}
	}
	slices.SortStableFunc(tried, func(a, b trial) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.Change, b.Change)) })
	return tried
}

// waysOut returns what mends everything, and where no change does by itself, what
// mends all together or a part.
func waysOut(checks []check.Check, in strength.Input, tried []trial) []trial {
	if alone := helping(tried, func(r trial) bool { return r.Mends }); len(alone) > 0 {
		return alone
	}
	base, _ := pricesOf(in.Job).of(in.Frame)
	return slices.Concat(together(tried, base), anew(in, base), partly(checks, tried))
}

func remedies(tried []trial) []check.Remedy {
	var all []check.Remedy
	for i := range tried {
		all = append(all, tried[i].Remedy)
	}
	return all
}

// partly returns the changes that mend some kind of check and spoil none, the
// least change of each key, cheapest first.
func partly(checks []check.Check, tried []trial) []trial {
	failing := map[string]bool{}
	for _, c := range checks {
		if c.Fails() {
			failing[check.KindOf(c.ID)] = true
		}
	}
	for i := range tried {
		r := &tried[i]
		for _, kind := range slices.Sorted(maps.Keys(failing)) {
			if !r.fails[kind] {
				r.Helps = append(r.Helps, strings.NewReplacer(".", ": ", "_", " ").Replace(kind))
			}
		}
	}
	kept := helping(byFailing(tried), func(r trial) bool {
		for kind := range r.fails {
			if !failing[kind] {
				return false
			}
		}
		return len(r.Helps) > 0
	})
	slices.SortStableFunc(kept, func(a, b trial) int { return cmp.Compare(a.cost, b.cost) })
	return kept
}

// byFailing puts what leaves the fewest kinds of check failing first, then the
// lower ratio, then the cheaper.
func byFailing(tried []trial) []trial {
	sorted := slices.Clone(tried)
	slices.SortStableFunc(sorted, func(a, b trial) int {
		return cmp.Or(cmp.Compare(len(a.fails), len(b.fails)), cmp.Compare(a.Worst, b.Worst), cmp.Compare(a.cost, b.cost))
	})
	return sorted
}

// mostTogether is how many changes are put together before giving up.
const mostTogether = 4

// together takes the change that leaves the least failing, and on top of it the
// next, until nothing fails. It is one way out, not the cheapest of all.
func together(tried []trial, base Cost) []trial {
	var did, words, costs []string
	for len(tried) > 0 && len(did) < mostTogether {
		best := byFailing(tried)[0]
		did, words = append(did, best.Change), append(words, best.Words)
		if best.besides != "" && !slices.Contains(costs, best.besides) {
			costs = append(costs, best.besides)
		}
		if best.Mends {
			if best.price != nothingMore || len(costs) == 0 {
				costs = append([]string{best.price}, costs...)
			}
			best.Change, best.Words, best.Cost = strings.Join(did, "; "), strings.Join(words, ", and "), strings.Join(costs, "; ")
			return []trial{best}
		}
		before := len(best.fails)
		tried = nil
		for _, c := range changes(best.after) {
			if r, ok := try(best.after, c, base); ok && len(r.fails) < before {
				tried = append(tried, r)
			}
		}
	}
	return nil
}

// helping returns the least change of each key that helps, cheapest first.
func helping(tried []trial, helps func(trial) bool) []trial {
	var kept []trial
	for _, r := range tried {
		if helps(r) && !slices.ContainsFunc(kept, func(k trial) bool { return k.key == r.key }) {
			kept = append(kept, r)
		}
	}
	return kept
}

// try lays a change out and checks it.
func try(in strength.Input, c change, base Cost) (trial, bool) {
	f, faults := frame.Skeleton(c.job)
	if f == nil || !faults.Empty() {
		return trial{}, false
	}
	cost, ok := pricesOf(c.job).of(f)
	if !ok {
		cost = Cost{}
	}
	after := strength.Input{Job: c.job, Frame: f, Heights: heightsFor(in, f, c), Patches: in.Patches, Walls: in.Walls, Rules: in.Rules}
	t := strength.NewTrial(after, statics.NewGauges(), strength.RatiosOnly)
	if !t.Run() {
		return trial{}, false
	}
	r := trial{Remedy: check.Remedy{Change: c.key + ": " + c.value, Words: c.words, Mends: !t.Failed, Cost: "not priced"}, key: c.key, fails: map[string]bool{},
		after: after, cost: cost.size() - base.size() + c.rank}
	if ok {
		r.Cost = cost.Less(base, in.Job.Style())
	}
	r.price, r.besides = r.Cost, c.cost
	if c.cost != "" {
		r.Cost = c.cost
	}
	greatest, _ := check.Greatest(t.Checks)
	r.Worst = greatest.Ratio
	for _, result := range t.Checks {
		if result.Fails() {
			r.fails[check.KindOf(result.ID)] = true
		}
	}
	return r, true
}

// heightsFor returns heights for a changed frame: as they were where no pier
// moves, else the tallest post and the thinnest stone at every pier. The bed is
// at least as thick as the change asks for.
func heightsFor(in strength.Input, f *frame.Frame, c change) map[string]statics.Height {
	if len(in.Heights) == 0 {
		return nil
	}
	heights := in.Heights
	if c.moves || len(f.Piers) != len(in.Frame.Piers) || len(f.Lines) != len(in.Frame.Lines) {
		heights = movedHeights(in, f)
	}
	if c.key != "stone.least" {
		return heights
	}
	thicker := map[string]statics.Height{}
	for pier, h := range heights {
		h.Stone = max(h.Stone, c.job.Stone.Least)
		thicker[pier] = h
	}
	return thicker
}

// movedHeights returns the tallest post and the thinnest stone for every pier.
func movedHeights(in strength.Input, f *frame.Frame) map[string]statics.Height {
	var worst statics.Height
	first := true
	for _, p := range in.Frame.Piers {
		h, ok := in.Heights[p.Name]
		if !ok {
			continue
		}
		if first {
			worst, first = h, false
		}
		worst.Post, worst.Stone = max(worst.Post, h.Post), min(worst.Stone, h.Stone)
	}
	moved := map[string]statics.Height{}
	for _, p := range f.Piers {
		moved[p.Name] = worst
	}
	return moved
}

// anew returns the cheapest frame that passes when every size is chosen anew.
func anew(in strength.Input, base Cost) []trial {
	free := *in.Job
	w := &free.Frame
	w.Joists.Section = job.Section{Pick: true, Timber: w.Joists.Timber}
	w.Beams.Section = job.Section{Pick: true, Timber: w.Beams.Timber}
	w.Rims = job.Section{Pick: true, Timber: w.Rims.Timber}
	w.Joists.Spacing, w.Beams.Lines, w.Piers.PerLine, w.Piers.Spacing = 0, 0, 0, 0
	given := in
	in.Job = &free
	s := newSearch(in)
	found := s.cheapest(1)
	if len(found) == 0 {
		return nil
	}
	c := found[0]
	r, ok := try(given, change{key: "anew", words: "every size chosen anew", job: c.with(&free)}, base)
	if !ok || !r.Mends { // at the heights as they are
		return nil
	}
	r.Change, r.Cost = c.Name(free.Style()), c.Cost.Less(base, free.Style())
	return []trial{r}
}
