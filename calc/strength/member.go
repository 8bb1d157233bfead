package strength

import (
	"fmt"
	"math"

	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// subject is one continuous member under check: a joist, or one ply of a beam.
type subject struct {
	id, what string
	member   Member
	gauge    *statics.Gauge
	cases    [caseCount]statics.Envelope
	width    float64 // of the ply or joist, m
	depth    float64
	braced   float64 // width that resists buckling sideways: all plies together, m
	held     string  // what holds the compression edge

	sideLoaded bool // joists hang on its side
	sums       []statics.Envelope
}

// worstAt is where and under what a ratio was greatest.
type worstAt struct {
	ratio, demand, capacity float64
	combo                   Combination
	station                 int
}

func (s *subject) inertia() float64 { return s.width * s.depth * s.depth * s.depth / 12 }
func (s *subject) modulus() float64 { return s.width * s.depth * s.depth / 6 }

// combined returns what a combination does, or, with factors of one's own, a sum.
func (s *subject) combined(factors [caseCount]float64) statics.Envelope {
	e := s.gauge.Empty()
	for kind, f := range factors {
		if f != 0 && s.cases[kind].Most.Shear != nil {
			e.Include(s.cases[kind], f)
		}
	}
	return e
}

// under returns what the i-th of the combinations does, worked out once.
func (s *subject) under(combos []Combination, i int) statics.Envelope {
	if s.sums == nil {
		s.sums = make([]statics.Envelope, len(combos))
	}
	if s.sums[i].Most.Shear == nil {
		s.sums[i] = s.combined(combos[i].factors)
	}
	return s.sums[i]
}

// longest returns the longest part that is no overhang, and the longest overhang.
func (s *subject) longest() (span, overhang float64) {
	for i, p := range s.gauge.Parts {
		if s.gauge.Overhang(i) {
			overhang = max(overhang, p.Long)
		} else {
			span = max(span, p.Long)
		}
	}
	return span, overhang
}

// finding is a check with the words that explain it, made only when wanted.
type finding struct {
	check   Check
	explain func(words) []string
}

// add keeps a finding. In a quiet run only its ratio counts.
func (c *checker) add(f finding) {
	if math.IsNaN(float64(f.check.Ratio)) {
		panic("strength: no ratio for " + f.check.ID)
	}
	c.failed = c.failed || f.check.Fails()
	if !c.quiet {
		f.check.Working = f.explain(c.words)
	}
	c.checks = append(c.checks, f.check)
}

// addWorst keeps the finding with the greatest ratio of several subjects.
func (c *checker) addWorst(subjects []subject, of func(*checker, *subject) finding) {
	if c.hasty && c.failed {
		return
	}
	var worst finding
	for i := range subjects {
		f := of(c, &subjects[i])
		if f.check.ID != "" && (worst.check.ID == "" || f.check.Ratio > worst.check.Ratio) {
			worst = f
		}
	}
	if worst.check.ID != "" {
		c.add(worst)
	}
}

// bending checks fb ≤ F'b in sagging and hogging. The upper edge is held by what
// lies on it; the lower edge of a hogging stretch is taken as free over a
// quarter of the longest span, or the overhang.
func bending(c *checker, s *subject) finding {
	v, d, b := s.member.Values, measure.FromMetres(s.depth), measure.FromMetres(s.braced)
	span, overhang := s.longest()
	free := measure.FromMetres(max(span/4, overhang))
	w := worstAt{ratio: -1}
	var hoggingFactor measure.Ratio
	for n, combo := range c.combos {
		e := s.under(c.combos, n)
		allowed := float64(v.Bending) * float64(combo.Duration)
		cl := BeamFactor(v.ElasticMin, measure.Stress(allowed), free, d, b)
		for i := range s.gauge.Stations {
			w.try(combo, i, e.Most.Moment[i], allowed*s.modulus())
			if w.try(combo, i, -e.Least.Moment[i], allowed*s.modulus()*float64(cl)) {
				hoggingFactor = cl
			} else if w.station == i && w.combo.Name == combo.Name {
				hoggingFactor = 0
			}
		}
	}
	check := Check{ID: s.id + ".bending", What: "bending of " + s.what, Demand: measure.Moment(w.demand), Capacity: measure.Moment(w.capacity),
		Ratio: measure.Ratio(w.ratio), Combination: w.combo.Name, Duration: w.combo.Duration, Stability: hoggingFactor, Clause: "NDS 2018 3.3.1, 4.3", Memory: v.Memory}
	if hoggingFactor == 0 {
		check.Stability = 1
	}
	return finding{check, func(t words) []string { return s.bendingWords(t, w, hoggingFactor) }}
}

// try keeps a demand when its ratio is the greatest yet, and says whether it did.
func (w *worstAt) try(combo Combination, station int, demand, capacity float64) bool {
	if capacity <= 0 {
		capacity = math.SmallestNonzeroFloat32
	}
	ratio := demand / capacity
	if ratio <= w.ratio {
		return false
	}
	*w = worstAt{ratio, demand, capacity, combo, station}
	return true
}

func (s *subject) bendingWords(t words, w worstAt, hogging measure.Ratio) []string {
	v := s.member.Values
	factors := v.bendingFactors(w.combo.Duration)
	sense, cl := "sagging", measure.Ratio(1)
	if hogging > 0 {
		sense, cl = "hogging", hogging
	}
	factors = append(factors, namedFactor{"CL", cl})
	allowed := v.Bending * measure.Stress(w.combo.Duration) * measure.Stress(cl)
	fb := measure.Stress(w.demand / s.modulus())
	return []string{
		fmt.Sprintf("M = %s, %s, at %s (%s)", t.moment(w.demand), sense, t.metres(s.gauge.Stations[w.station].X), w.combo.Name),
		fmt.Sprintf("S = b·d²/6 = %s × (%s)²/6 = %s", t.power(s.width, 1), t.power(s.depth, 1), t.power(s.modulus(), 3)),
		fmt.Sprintf("fb = M/S = %s", t.timber(fb)),
		t.product("F'b", v.Reference.Bending, "Fb", allowed, factors...),
		fmt.Sprintf("fb/F'b = %s", t.ratio(w.ratio)),
		"Fb: " + v.origin(),
	}
}

// bendingFactors lists the factors on Fb in the order of NDS Table 4.3.1.
func (v Adjusted) bendingFactors(d Duration) []namedFactor {
	return []namedFactor{{"CD", measure.Ratio(d)}, {"CM", v.BendingWet}, {"CF", v.BendingSize}, {"Ci", v.Incising}, {"Cr", v.Repetitive}}
}

// origin tells where the reference values come from.
func (v Adjusted) origin() string {
	text := v.Source
	if v.Class != GivenWith {
		text = v.Species + " " + v.Grade + ", " + text
	}
	if v.Memory {
		text += " (from memory, unconfirmed)"
	}
	return text
}
