package strength

import (
	"fmt"

	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// beamSubjects returns the plies of a line to check, each kind once.
func (c *checker) beamSubjects(l *lineResult) []subject {
	line := c.frame.Lines[l.line]
	var subjects []subject
	for i := range l.plies {
		p := &l.plies[i]
		what := "beam " + line.Name
		if c.beam.Section.Plies > 1 {
			what = "a ply of beam " + line.Name
		}
		held := "the joists on it"
		if c.between() {
			held = "the joists beside it"
		}
		subjects = append(subjects, subject{id: "beam." + line.Name, what: what, member: c.beam, gauge: p.gauge, cases: p.cases, held: held,
			width: c.beam.Section.Width.Metres(), depth: c.beam.Section.Depth.Metres(), braced: c.beam.Section.Across().Metres(), sideLoaded: c.between()})
	}
	return subjects
}

// beamChecks checks every beam line.
func (c *checker) beamChecks() [][]subject {
	var all [][]subject
	for i := range c.lines {
		all = append(all, c.checkLine(&c.lines[i]))
	}
	return all
}

func (c *checker) checkLine(l *lineResult) []subject {
	subjects := c.beamSubjects(l)
	for _, of := range []func(*checker, *subject) finding{bending, shear, beamBearing, liveDeflection, totalDeflection} {
		c.addWorst(subjects, of)
	}
	c.slender(&subjects[0])
	c.beamOverhang(&subjects[0])
	return subjects
}

// beamBearing checks Fc⊥ of each ply over each post. Over a splice each end has
// half of the post. A beam wider than the post bears on the post's width alone.
func beamBearing(c *checker, s *subject) finding {
	v := s.member.Values
	post := c.frame.Sections.Post
	contact := min(c.beam.Section.Across(), post.Depth).Metres() / float64(c.beam.Section.Plies)
	w := worstAt{ratio: -1}
	var cb measure.Ratio
	var bearing measure.Length
	for n, combo := range c.combos {
		e := s.under(c.combos, n)
		for i := range s.gauge.Run.Supports {
			r, lb, factor := s.overPost(e, i, post.Width)
			if w.try(combo, i, r, float64(v.BearingAcross)*float64(factor)*contact*lb.Metres()) {
				cb, bearing = factor, lb
			}
		}
	}
	check := Check{ID: s.id + ".bearing", What: "bearing of " + s.what + " on the post", Demand: measure.Force(w.demand), Capacity: measure.Force(w.capacity), Ratio: measure.Ratio(w.ratio),
		Combination: w.combo.Name, Area: cb, Clause: "NDS 2018 3.10.2, 3.10.4", Memory: v.Memory}
	return finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("R = %s on pier %d (%s)", t.force(w.demand), w.station+1, w.combo.Name),
			fmt.Sprintf("bearing = %s wide × %s long", t.metres(contact), t.length(bearing)),
			t.product("F'c⊥", v.Reference.BearingAcross, "Fc⊥", v.BearingAcross*measure.Stress(cb), namedFactor{"CM", v.AcrossWet}, namedFactor{"Cb", cb}),
			fmt.Sprintf("R/(b·lb·F'c⊥) = %s", t.ratio(w.ratio)),
		}
	}}
}

// overPost returns the greatest reaction of one end of a ply on a post, the
// length it bears on, and Cb: over a splice each side by itself.
func (s *subject) overPost(e statics.Envelope, support int, post measure.Length) (r float64, lb measure.Length, cb measure.Ratio) {
	run := s.gauge.Run
	at := run.Supports[support]
	if !run.Hinges[support] || support == 0 || support == len(run.Supports)-1 {
		toEnd := measure.FromMetres(min(at-run.Start, run.End-at)) - post/2
		overlap := min(at+post.Metres()/2, run.End) - max(at-post.Metres()/2, run.Start)
		return e.Most.Reactions[support], measure.FromMetres(overlap), BearingFactor(post, toEnd)
	}
	return s.greaterEnd(e, support), post / 2, 1
}

// greaterEnd returns the greater of the two ends that meet over a support.
func (s *subject) greaterEnd(e statics.Envelope, support int) float64 {
	left, right := s.gauge.Beside(support)
	_, last := s.gauge.EndsOf(left)
	first, _ := s.gauge.EndsOf(right)
	return max(-e.Least.Shear[last], e.Most.Shear[first])
}

// beamOverhang checks that a beam stands out past its last pier by no more than
// a quarter of the span beside it. IRC 2021 R507.5.
func (c *checker) beamOverhang(s *subject) {
	parts := s.gauge.Parts
	var worst, over, back float64
	for i, p := range parts {
		if !s.gauge.Overhang(i) || p.Long < overhangsFrom {
			continue
		}
		span := parts[max(1, min(i, len(parts)-2))].Long
		if ratio := p.Long / (span / 4); ratio > worst {
			worst, over, back = ratio, p.Long, span
		}
	}
	if worst == 0 {
		return
	}
	check := Check{ID: s.id + ".overhang", What: "overhang of " + s.what, Demand: measure.FromMetres(over), Capacity: measure.FromMetres(back / 4), Ratio: measure.Ratio(worst), Clause: "IRC 2021 R507.5"}
	c.add(finding{check, func(t words) []string {
		return []string{fmt.Sprintf("a = %s; L/4 = %s/4 = %s; ratio %s", t.metres(over), t.metres(back), t.metres(back/4), t.ratio(worst))}
	}})
}
