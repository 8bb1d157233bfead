package strength

import (
	"fmt"

	"pierbook/calc/measure"
)

// shortTerm are the loads that come and go, alone and together, for deflection.
var shortTerm = []Combination{
	{"L", 1, [caseCount]float64{liveCase: 1}},
	{"S", 1, [caseCount]float64{snowCase: 1}},
	{"Lr", 1, [caseCount]float64{roofCase: 1}},
	{"0.75L + 0.75S", 1, [caseCount]float64{liveCase: .75, snowCase: .75}},
}

// overhangsFrom is the length from which an overhang's own deflection matters.
const overhangsFrom = 0.15 // m, 6 in; common practice, no source

// creep returns Kcr: 1.5 for seasoned timber, 2.0 in wet service. NDS 2018 3.5.2;
// the wet value is from memory.
func (s *subject) creep() float64 {
	if s.member.Service.Wet {
		return 2
	}
	return 1.5
}

// liveDeflection checks the deflection under the loads that come and go.
func liveDeflection(c *checker, s *subject) finding {
	return s.deflection(c, "live_deflection", "deflection under live load of ", c.rules.LiveLimit, 0)
}

// totalDeflection checks it with the lasting loads, which creep.
//
//	ΔT = Kcr·Δ(lasting) + Δ(short)
func totalDeflection(c *checker, s *subject) finding {
	return s.deflection(c, "total_deflection", "lasting and live deflection of ", c.rules.TotalLimit, s.creep())
}

func (s *subject) deflection(c *checker, id, what string, limit int, lasting float64) finding {
	stiffness := float64(s.member.Values.Elastic) * s.inertia()
	w := worstAt{ratio: -1}
	for _, combo := range shortTerm {
		if !c.anyPresent(combo) {
			continue
		}
		factors := combo.factors
		factors[deadCase], factors[buildingCase] = lasting, lasting
		e := s.combined(factors)
		for i, st := range s.gauge.Stations {
			allowed := s.gauge.Parts[st.Part].Long / float64(limit)
			if s.gauge.Overhang(st.Part) {
				if s.gauge.Parts[st.Part].Long < overhangsFrom {
					continue
				}
				allowed *= 2 // 2a over the limit
			}
			w.try(combo, i, max(e.Most.Sag[i], -e.Least.Sag[i])/stiffness, allowed)
		}
	}
	if w.ratio < 0 {
		return finding{}
	}
	check := Check{ID: s.id + "." + id, What: what + s.what, Demand: Deflection(w.demand), Capacity: Deflection(w.capacity),
		Ratio: measure.Ratio(w.ratio), Combination: w.combo.Name, Clause: fmt.Sprintf("IRC 2021 R301.7 (L/%d); NDS 2018 3.5", limit), Memory: s.member.Values.Memory || lasting == 2}
	return finding{check, func(t words) []string { return s.deflectionWords(t, w, limit, lasting) }}
}

func (c *checker) anyPresent(combo Combination) bool {
	for kind, f := range combo.factors {
		if f != 0 && !c.loads.present[kind] {
			return false
		}
	}
	return true
}

func (s *subject) deflectionWords(t words, w worstAt, limit int, lasting float64) []string {
	v, part := s.member.Values, s.gauge.Stations[w.station].Part
	long := s.gauge.Parts[part].Long
	rule := fmt.Sprintf("allowed L/%d = %s/%d = %s", limit, t.metres(long), limit, t.small(w.capacity))
	if s.gauge.Overhang(part) {
		rule = fmt.Sprintf("allowed 2a/%d = 2 × %s/%d = %s", limit, t.metres(long), limit, t.small(w.capacity))
	}
	loads := w.combo.Name
	if lasting > 0 {
		loads = fmt.Sprintf("%.1f·D + %s", lasting, loads)
	}
	return []string{
		t.product("E'", v.Reference.Elastic, "E", v.Elastic, namedFactor{"CM", v.ElasticWet}, namedFactor{"Ci", v.ElasticIncising}),
		fmt.Sprintf("I = b·d³/12 = %s × (%s)³/12 = %s", t.power(s.width, 1), t.power(s.depth, 1), t.power(s.inertia(), 4)),
		fmt.Sprintf("Δ = %s at %s (%s, patterned)", t.small(w.demand), t.metres(s.gauge.Stations[w.station].X), loads),
		rule,
		fmt.Sprintf("ratio = %s", t.ratio(w.ratio)),
	}
}
