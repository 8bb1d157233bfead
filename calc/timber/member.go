package timber

import (
	"fmt"
	"math"

	"pierbook/calc/check"
	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// Member is one kind of member with its adjusted design values.
type Member struct {
	Name    string
	Section job.Section
	Service Service
	Values  Adjusted
}

// worstAt is where and under what a ratio was greatest.
type worstAt struct {
	ratio, demand, capacity float64
	combo                   loads.Combination
	station                 int
}

// Bending checks fb ≤ F'b in sagging and hogging. The upper edge is held by what
// lies on it; the lower edge of a hogging stretch is taken as free over a
// quarter of the longest span, or the overhang.
func (m Member) Bending(b *statics.Bar, combos []loads.Combination) check.Finding {
	v, d, wide := m.Values, measure.FromMetres(b.Depth), measure.FromMetres(b.Braced)
	span, overhang := b.Longest()
	stretch, out := measure.FromMetres(span/4), measure.FromMetres(overhang)
	w := worstAt{ratio: -1}
	var hoggingFactor measure.Ratio
	for n, combo := range combos {
		e := b.Under(combos, n)
		allowed := float64(v.Bending) * float64(DurationOf(combo))
		cl := HoggingFactor(v.ElasticMin, measure.Stress(allowed), stretch, out, d, wide)
		for i := range b.Gauge.Stations {
			w.try(combo, i, e.Most.Moment[i], allowed*b.Modulus())
			if w.try(combo, i, -e.Least.Moment[i], allowed*b.Modulus()*float64(cl)) {
				hoggingFactor = cl
			} else if w.station == i && w.combo.Name == combo.Name {
				hoggingFactor = 0
			}
		}
	}
	result := check.Check{ID: b.ID + ".bending", What: "bending of " + b.What, Demand: measure.Moment(w.demand), Capacity: measure.Moment(w.capacity),
		Ratio: measure.Ratio(w.ratio), Combination: w.combo.Name, Duration: measure.Ratio(DurationOf(w.combo)), Stability: hoggingFactor, Clause: "NDS 2018 3.3.1, 4.3", Memory: v.Memory}
	if hoggingFactor == 0 {
		result.Stability = 1
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string { return m.bendingWords(b, t, w, hoggingFactor) }}
}

// try keeps a demand when its ratio is the greatest yet, and says whether it did.
func (w *worstAt) try(combo loads.Combination, station int, demand, capacity float64) bool {
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

func (m Member) bendingWords(b *statics.Bar, t check.Words, w worstAt, hogging measure.Ratio) []string {
	v := m.Values
	factors := v.BendingFactors(DurationOf(w.combo))
	sense, cl := "sagging", measure.Ratio(1)
	if hogging > 0 {
		sense, cl = "hogging", hogging
	}
	factors = append(factors, check.Factor{Symbol: "CL", Value: cl})
	allowed := v.Bending * measure.Stress(DurationOf(w.combo)) * measure.Stress(cl)
	fb := measure.Stress(w.demand / b.Modulus())
	return []string{
		fmt.Sprintf("M = %s, %s, at %s (%s)", t.Moment(w.demand), sense, t.Metres(b.Gauge.Stations[w.station].X), w.combo.Name),
		fmt.Sprintf("S = b·d²/6 = %s × (%s)²/6 = %s", t.Power(b.Width, 1), t.Power(b.Depth, 1), t.Power(b.Modulus(), 3)),
		fmt.Sprintf("fb = M/S = %s", t.Timber(fb)),
		t.Product("F'b", v.Reference.Bending, "Fb", allowed, factors...),
		fmt.Sprintf("fb/F'b = %s", t.Ratio(w.ratio)),
		"Fb: " + v.Origin(),
	}
}

// BendingFactors lists the factors on Fb in the order of NDS Table 4.3.1.
func (v Adjusted) BendingFactors(d Duration) []check.Factor {
	return []check.Factor{{Symbol: "CD", Value: measure.Ratio(d)}, {Symbol: "CM", Value: v.BendingWet}, {Symbol: "CF", Value: v.BendingSize},
		{Symbol: "Ci", Value: v.Incising}, {Symbol: "Cr", Value: v.Repetitive}}
}

// Origin tells where the reference values come from.
func (v Adjusted) Origin() string {
	text := v.Source
	if v.Class != GivenWith {
		text = v.Species + " " + v.Grade + ", " + text
	}
	if v.Memory {
		text += " (from memory, unconfirmed)"
	}
	return text
}

// Resists returns the sagging moment that the member bears under loads of normal
// duration, its stiffness E'·I, and the factor of creep on lasting loads.
func (m Member) Resists(b *statics.Bar) (moment measure.Moment, stiffness, creep float64) {
	return measure.Moment(float64(m.Values.Bending) * b.Modulus()), float64(m.Values.Elastic) * b.Inertia(), m.creep()
}
