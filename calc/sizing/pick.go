package sizing

import (
	"cmp"
	"fmt"
	"slices"

	"pierbook/calc/check"
	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/strength"
)

// Picked is the outcome of a search: the job with the sizes written in, what
// was chosen, the next three that would do, and how far the search went.
type Picked struct {
	Job        *job.Job
	Chosen     Choice
	RunnersUp  []Choice // at most three, by rising cost
	Decides    []string // by runner-up: what it costs more and what it changes
	Considered int      // frames within the bounds
	Checked    int      // of them worked through; the rest cost more, or a bound ruled them out
	Open       []string // the keys that were chosen
	Proof      string   // why nothing cheaper does
}

// Pick chooses what a job leaves open: the size and spacing of the joists, the
// size and plies of the beams, the number of lines and of piers in each. Frame
// and heights of the input are not used: posts are checked at the longest
// allowed. It returns nil when nothing is open, and a fault when no frame within
// the bounds passes.
//
// Every frame within the bounds is put in the order of its cost and the first
// that passes every check is chosen, so nothing cheaper passes. What
// a check has said of a floor or a beam is not asked again, see
// [search.knownToFail].
func Pick(in strength.Input) (*Picked, fault.List) {
	open := openKeys(in.Job)
	if len(open) == 0 {
		return nil, fault.List{}
	}
	s := newSearch(in)
	found := s.cheapest(4)
	if len(found) == 0 {
		var faults fault.List
		faults.Join(s.faults)
		if faults.Empty() {
			faults.Add(fault.Fault{At: in.Job.At(open[0]), Path: open[0], Wrong: fmt.Sprintf("none of %d frames within the bounds passes every check", s.considered),
				Remedy: "lower the loads, take a better grade or block, or give the sizes to see which checks fail"})
		}
		return nil, faults
	}
	p := &Picked{Job: found[0].with(in.Job), Chosen: found[0], RunnersUp: found[1:], Considered: s.considered, Checked: s.checked, Open: open}
	style := in.Job.Style()
	for _, r := range p.RunnersUp {
		p.Decides = append(p.Decides, decides(found[0], r, style))
	}
	p.Proof = fmt.Sprintf("%d frames within the bounds, in the order of their cost; each that costs less than the one chosen fails a check, or stands on a floor or beam that did", s.considered)
	return p, fault.List{}
}

// openKeys returns the keys of a job that are left to the program.
func openKeys(j *job.Job) []string {
	w := j.Frame
	var open []string
	for _, k := range []struct {
		path string
		open bool
	}{{"frame.joists.size", w.Joists.Pick}, {"frame.joists.spacing", w.Joists.Spacing == 0}, {"frame.beams.size", w.Beams.Pick},
		{"frame.beams.lines", w.Beams.Lines == 0}, {"frame.piers.per_line", w.Piers.PerLine == 0 && w.Piers.Spacing == 0}} {
		if k.open {
			open = append(open, k.path)
		}
	}
	return open
}

// Name says what a choice is: "2x6 at 16 in on 3 lines of 4x6, 5 piers each".
func (c Choice) Name(s measure.Style) string {
	return fmt.Sprintf("%s at %s on %d lines of %s, %d piers each", check.SectionName(c.Joist), c.Spacing.Print(s), c.Lines, check.SectionName(c.Beam), c.Cost.Piers/c.Lines)
}

func decides(chosen, other Choice, s measure.Style) string {
	return fmt.Sprintf("%s: %s; greatest ratio %s (%s) against %s (%s)", other.Name(s), other.Cost.Less(chosen.Cost, s),
		other.Worst.Print(s), other.Governs, chosen.Worst.Print(s), chosen.Governs)
}

// each calls do with every combination; joist and spacing number those two.
func (b bounded) each(do func(joist, spacing int, c Choice)) {
	for i, joist := range b.joists {
		for k, spacing := range b.spacings {
			for _, beam := range b.beams {
				for _, lines := range b.lines {
					for _, perLine := range b.piers {
						do(i, k, Choice{Joist: joist, Spacing: spacing, Beam: beam, Lines: lines, PerLine: perLine})
					}
				}
			}
		}
	}
}

// enumerate lists every frame within the bounds by rising cost; equal costs by
// fewer piers, fewer lines, then the sizes' order. The length of the joists
// depends on joist and spacing alone, or between beams also on those.
func (s *search) enumerate(b bounded) {
	p := pricesOf(s.in.Job)
	b.joists = s.withValues(b.joists, "frame.joists", s.in.Job.Frame.Joists.Timber)
	b.beams = s.withValues(b.beams, "frame.beams", s.in.Job.Frame.Beams.Timber)
	lengths := map[[3]int]measure.Length{}
	between := s.in.Job.Frame.Joists.Sit == "between_beams"
	widest := widestOf(b.beams)
	s.choices = make([]Choice, 0, len(b.joists)*len(b.spacings)*len(b.beams)*len(b.lines)*len(b.piers))
	b.each(func(joist, spacing int, c Choice) {
		s.considered++
		key, probe := [3]int{joist, spacing}, c
		if between {
			key[2] = c.Lines*1000 + int(c.Beam.Across()/measure.Millimetre)
		} else {
			probe.Beam = widest
		}
		long, known := lengths[key]
		if !known {
			long = s.joistLength(probe)
			lengths[key] = long
		}
		if long > 0 && s.price(p, &c, long) {
			s.choices = append(s.choices, c)
		}
	})
	s.order = make([]int, len(s.choices))
	for i := range s.order {
		s.order[i] = i
	}
	slices.SortFunc(s.order, func(i, j int) int {
		a, b := &s.choices[i], &s.choices[j]
		return cmp.Or(cmp.Compare(a.Cost.size(), b.Cost.size()), cmp.Compare(a.Cost.Piers, b.Cost.Piers), cmp.Compare(a.Lines, b.Lines), cmp.Compare(i, j))
	})
}

// price works a choice's cost out from lengths alone, as [prices.of] does from the frame.
func (s *search) price(p prices, c *Choice, joists measure.Length) bool {
	j := s.in.Job
	rim := j.Frame.Rims
	if rim.Pick {
		rim = c.Joist
	}
	rims := 2 * j.Platform.Length
	if j.Frame.Joists.Sit == "between_beams" && j.Frame.Beams.Inset == 0 {
		rims = 0
	}
	beams := (j.Platform.Length - 2*j.Frame.Beams.SetBack) * measure.Length(c.Lines*c.Beam.Plies)
	piers := c.Lines * s.perLine(c)
	var ok bool
	c.Cost, ok = p.sum(frame.Sections{Joist: c.Joist, Rim: rim, Beam: c.Beam}, joists, rims, beams, piers)
	return ok
}

// widestOf returns the widest section: joists that end on any beam end on it.
func widestOf(beams []job.Section) job.Section {
	var widest job.Section
	for _, b := range beams {
		if b.Across() > widest.Across() {
			widest = b
		}
	}
	return widest
}

// perLine returns how many piers a line of a choice has, also where the greatest
// spacing sets it.
func (s *search) perLine(c *Choice) int {
	if c.PerLine > 0 {
		return c.PerLine
	}
	f := s.in.Job.Frame
	first, last := f.Posts.Width/2, f.Posts.Width/2
	if f.Piers.First != nil {
		first = *f.Piers.First
	}
	if f.Piers.Last != nil {
		last = *f.Piers.Last
	}
	reach, spacing := s.in.Job.Platform.Length-2*f.Beams.SetBack-first-last, f.Piers.Spacing
	return int((reach+spacing-1)/spacing) + 1
}

// joistLength returns the length of all joists of a choice, from a frame laid
// out with it; 0 when it cannot be laid out.
func (s *search) joistLength(c Choice) measure.Length {
	probe := c
	probe.PerLine = max(2, int(s.in.Job.Platform.Length/(4*measure.Foot))+1)
	f, _ := frame.Skeleton(probe.with(s.in.Job))
	if f == nil {
		probe.PerLine = c.PerLine
		if f, _ = frame.Skeleton(probe.with(s.in.Job)); f == nil {
			return 0
		}
	}
	var long measure.Length
	for _, j := range f.Joists {
		long += j.Long()
	}
	return long
}

// withValues leaves the sections out that the standard holds no values for; with
// none left the first look-up's fault is kept. Own is the member's own timber.
func (s *search) withValues(sections []job.Section, path string, own *job.Timber) []job.Section {
	var kept []job.Section
	var first fault.List
	for _, section := range sections {
		section.Timber = own
		missing := strength.Missing(s.in.Job, section, path)
		section.Timber = nil
		if missing.Empty() {
			section.Plies = max(1, section.Plies)
			kept = append(kept, section)
		} else if first.Empty() {
			first = missing
		}
	}
	if len(kept) == 0 {
		s.faults.Join(first)
	}
	return kept
}
