package strength

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Remedy is one change of the frame that mends a failing check.
type Remedy struct {
	Change string // "frame.beams.lines: 4"
	Words  string // "one more beam line"
	Cost   string // against the frame as it stands: "$42.00 more"
	Mends  bool   // no check fails with it
	Worst  measure.Ratio

	key   string
	cost  float64
	fails map[string]bool // kinds of check that still fail
}

// change is one thing that could be done.
type change struct {
	key, value, words string
	job               *job.Job
}

// mend tries the changes next to the frame as it stands and writes those that
// help beside each failing check; those that mend everything stand in Remedies,
// cheapest first. When none does by itself, the cheapest frame that passes does.
func (s *Strength) mend(in Input) {
	base, _ := pricesOf(in.Job).of(in.Frame)
	var tried []Remedy
	for _, c := range changes(in) {
		if r, ok := try(in, c, base); ok {
			tried = append(tried, r)
		}
	}
	slices.SortStableFunc(tried, func(a, b Remedy) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.Change, b.Change)) })
	s.Remedies = helping(tried, func(r Remedy) bool { return r.Mends })
	for i := range s.Checks {
		c := &s.Checks[i]
		if !c.Fails() {
			continue
		}
		c.Remedies = helping(tried, func(r Remedy) bool { return !r.fails[kindOf(c.ID)] })
	}
	if len(s.Remedies) == 0 {
		s.Remedies = anew(in, base)
	}
}

// helping returns the least change of each key that helps, cheapest first.
func helping(tried []Remedy, helps func(Remedy) bool) []Remedy {
	var kept []Remedy
	for _, r := range tried {
		if helps(r) && !slices.ContainsFunc(kept, func(k Remedy) bool { return k.key == r.key }) {
			kept = append(kept, r)
		}
	}
	return kept
}

// kindOf is a check without the name of its member: beam.bending, pier.soil.
func kindOf(id string) string {
	parts := strings.Split(id, ".")
	return parts[0] + "." + parts[len(parts)-1]
}

// further is how many steps of each kind of change are tried.
const further = 3

// changes lists deeper sizes, closer joists, more lines, piers and plies.
func changes(in Input) []change {
	j, w := in.Job, in.Job.Frame
	var all []change
	alter := func(key, value, words string, do func(*job.FrameWish)) {
		copied := *j
		do(&copied.Frame)
		all = append(all, change{key, value, words, &copied})
	}
	sizes := openSizes(j)
	for _, next := range deeper(sizes, in.Frame.Sections.Joist) {
		alter("frame.joists.size", next.Size, "deeper joists", func(f *job.FrameWish) {
			if f.Rims.Size == w.Joists.Size {
				f.Rims = deepened(f.Rims, next)
			}
			f.Joists.Section = deepened(f.Joists.Section, next)
		})
	}
	for _, next := range closer(j) {
		alter("frame.joists.spacing", next.String(), "joists closer together", func(f *job.FrameWish) { f.Joists.Spacing = next })
	}
	lines, perLine := len(in.Frame.Lines), in.Frame.PerLine(0)
	for n := 1; n <= further; n++ {
		alter("frame.beams.lines", fmt.Sprint(lines+n), "more beam lines", func(f *job.FrameWish) { f.Beams.Lines = lines + n })
		alter("frame.piers.per_line", fmt.Sprint(perLine+n), "more piers under each line", func(f *job.FrameWish) { f.Piers.PerLine, f.Piers.Spacing = perLine+n, 0 })
		if w.Beams.Width < 3*measure.Inch && w.Beams.Plies+n <= mostPlies {
			alter("frame.beams.plies", fmt.Sprint(w.Beams.Plies+n), "more plies", func(f *job.FrameWish) { f.Beams.Plies += n })
		}
	}
	for _, next := range deeper(sizes, in.Frame.Sections.Beam) {
		alter("frame.beams.size", next.Size, "deeper beams", func(f *job.FrameWish) { f.Beams.Section = deepened(f.Beams.Section, next) })
	}
	return all
}

// deeper returns the next deeper sizes of the same width.
func deeper(sizes []job.Section, s job.Section) []job.Section {
	var next []job.Section
	for _, size := range sizes { // rising
		if size.Width == s.Width && size.Depth > s.Depth && len(next) < further {
			next = append(next, size)
		}
	}
	return next
}

func deepened(s, next job.Section) job.Section {
	s.Size, s.Depth = next.Size, next.Depth
	return s
}

// closer returns the next closer usual spacings.
func closer(j *job.Job) []measure.Length {
	spacings := imperialSpacings
	if j.Units == measure.Metric {
		spacings = metricSpacings
	}
	var next []measure.Length
	for i := len(spacings) - 1; i >= 0; i-- {
		if spacings[i] < j.Frame.Joists.Spacing {
			next = append(next, spacings[i])
		}
	}
	return next
}

// try lays a change out and checks it.
func try(in Input, c change, base Cost) (Remedy, bool) {
	f, faults := frame.Skeleton(c.job)
	if f == nil || !faults.Empty() {
		return Remedy{}, false
	}
	cost, ok := pricesOf(c.job).of(f)
	if !ok {
		cost = Cost{}
	}
	k := newChecker(Input{Job: c.job, Frame: f, Heights: movedHeights(in, f), Patches: in.Patches, Walls: in.Walls, Rules: in.Rules}, newGauges())
	k.quiet = true
	if !k.prepare() || !k.carry() {
		return Remedy{}, false
	}
	k.all()
	r := Remedy{key: c.key, Change: c.key + ": " + c.value, Words: c.words, Mends: !k.failed, fails: map[string]bool{}, cost: cost.size() - base.size(), Cost: "not priced"}
	if ok {
		r.Cost = cost.Less(base, in.Job.Style())
	}
	r.Worst, _ = k.greatest()
	for _, check := range k.checks {
		if check.Fails() {
			r.fails[kindOf(check.ID)] = true
		}
	}
	return r, true
}

// movedHeights returns heights for a changed frame: as they were where no pier
// moves, else the tallest post and the thinnest stone at every pier.
func movedHeights(in Input, f *frame.Frame) map[string]Height {
	if len(in.Heights) == 0 {
		return nil
	}
	if len(f.Piers) == len(in.Frame.Piers) && len(f.Lines) == len(in.Frame.Lines) {
		return in.Heights
	}
	var worst Height
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
	moved := map[string]Height{}
	for _, p := range f.Piers {
		moved[p.Name] = worst
	}
	return moved
}

// anew returns the cheapest frame that passes when every size is chosen anew.
func anew(in Input, base Cost) []Remedy {
	free := *in.Job
	w := &free.Frame
	w.Joists.Section = job.Section{Pick: true, Timber: w.Joists.Timber}
	w.Beams.Section = job.Section{Pick: true, Timber: w.Beams.Timber}
	w.Rims = job.Section{Pick: true, Timber: w.Rims.Timber}
	w.Joists.Spacing, w.Beams.Lines, w.Piers.PerLine, w.Piers.Spacing = 0, 0, 0, 0
	in.Job = &free
	s := newSearch(in)
	found := s.cheapest(1)
	if len(found) == 0 {
		return nil
	}
	c := found[0]
	return []Remedy{{Change: c.Name(free.Style()), Words: "every size chosen anew, posts at the longest allowed", Cost: c.Cost.Less(base, free.Style()), Mends: true, Worst: c.Worst}}
}
