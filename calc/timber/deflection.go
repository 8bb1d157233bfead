package timber

import (
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// overhangsFrom is the length from which an overhang's own deflection matters.
const overhangsFrom = 0.15 // m, 6 in; common practice, no source

// creep returns Kcr: 1.5 for seasoned timber, 2.0 in wet service. NDS 2018 3.5.2;
// the wet value is from memory.
func (m Member) creep() float64 {
	if m.Service.Wet {
		return 2
	}
	return 1.5
}

// LiveDeflection checks the deflection under the loads that come and go.
func (m Member) LiveDeflection(b *statics.Bar, present [loads.CaseCount]bool, limit int) check.Finding {
	return m.deflection(b, present, "live_deflection", "deflection under live load of ", limit, 0)
}

// TotalDeflection checks it with the lasting loads, which creep.
//
//	ΔT = Kcr·Δ(lasting) + Δ(short)
func (m Member) TotalDeflection(b *statics.Bar, present [loads.CaseCount]bool, limit int) check.Finding {
	return m.deflection(b, present, "total_deflection", "lasting and live deflection of ", limit, m.creep())
}

func (m Member) deflection(b *statics.Bar, present [loads.CaseCount]bool, id, what string, limit int, lasting float64) check.Finding {
	stiffness := float64(m.Values.Elastic) * b.Inertia()
	w := worstAt{ratio: -1}
	for _, combo := range loads.ShortTerm {
		if !combo.Within(present) {
			continue
		}
		factors := combo.Factors
		factors[loads.DeadCase], factors[loads.BuildingCase] = lasting, lasting
		e := b.Sum(factors)
		for i, st := range b.Gauge.Stations {
			allowed := b.Gauge.Parts[st.Stretch].Long / float64(limit)
			if b.Gauge.Overhang(st.Stretch) {
				if b.Gauge.Parts[st.Stretch].Long < overhangsFrom {
					continue
				}
				allowed *= 2 // 2a over the limit
			}
			w.try(combo, i, max(e.Most.Sag[i], -e.Least.Sag[i])/stiffness, allowed)
		}
	}
	if w.ratio < 0 {
		return check.Finding{}
	}
	result := check.Check{ID: b.ID + "." + id, What: what + b.What, Demand: check.Deflection(w.demand), Capacity: check.Deflection(w.capacity),
		Ratio: measure.Ratio(w.ratio), Combination: w.combo.Name, Clause: fmt.Sprintf("IRC 2021 R301.7 (L/%d); NDS 2018 3.5", limit), Memory: m.Values.Memory || lasting == 2}
	return check.Finding{Check: result, Explain: func(t check.Words) []string { return m.deflectionWords(b, t, w, limit, lasting) }}
}

func (m Member) deflectionWords(b *statics.Bar, t check.Words, w worstAt, limit int, lasting float64) []string {
	v, part := m.Values, b.Gauge.Stations[w.station].Stretch
	long := b.Gauge.Parts[part].Long
	rule := fmt.Sprintf("allowed L/%d = %s/%d = %s", limit, t.Metres(long), limit, t.Small(w.capacity))
	if b.Gauge.Overhang(part) {
		rule = fmt.Sprintf("allowed 2a/%d = 2 × %s/%d = %s", limit, t.Metres(long), limit, t.Small(w.capacity))
	}
	loads := w.combo.Name
	if lasting > 0 {
		loads = fmt.Sprintf("%.1f·D + %s", lasting, loads)
	}
	return []string{
		t.Product("E'", v.Reference.Elastic, "E", v.Elastic, check.Factor{Symbol: "CM", Value: v.ElasticWet}, check.Factor{Symbol: "Ci", Value: v.ElasticIncising}),
		fmt.Sprintf("I = b·d³/12 = %s × (%s)³/12 = %s", t.Power(b.Width, 1), t.Power(b.Depth, 1), t.Power(b.Inertia(), 4)),
		fmt.Sprintf("Δ = %s at %s (%s, patterned)", t.Small(w.demand), t.Metres(b.Gauge.Stations[w.station].X), loads),
		rule,
		fmt.Sprintf("ratio = %s", t.Ratio(w.ratio)),
	}
}
