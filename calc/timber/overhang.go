package timber

import (
	"fmt"
	"math"

	"pierbook/calc/check"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// JoistShape checks the slenderness of a joist and, unless it hangs between the
// beams, how far it stands out past the outer one.
func (m Member) JoistShape(b *statics.Bar, hung bool) []check.Finding {
	if hung {
		return []check.Finding{slenderness(b)}
	}
	return []check.Finding{slenderness(b), m.joistOverhang(b)}
}

// BeamShape checks the slenderness of a beam and how far it stands out past its
// outer piers.
func (m Member) BeamShape(b *statics.Bar) []check.Finding {
	return []check.Finding{slenderness(b), beamOverhang(b)}
}

// slenderness checks depth over width by the rule of NDS 2018 4.4.1: up to 2:1 free,
// 4:1 with the ends held, 5:1 with one edge held, 6:1 with bridging besides.
func slenderness(b *statics.Bar) check.Finding {
	nominal := func(m float64) float64 { return math.Ceil(m/0.0254 - 1e-9) }
	ratio := nominal(b.Depth) / nominal(b.Braced)
	needs := ""
	if ratio > 5 {
		needs = "bridging or blocking at most 8 ft apart"
	}
	held, allowed := "held along its upper edge by "+b.Held+", ends held", 5.0
	result := check.Check{ID: b.ID + ".stability", What: "slenderness of " + b.What, Demand: measure.Ratio(ratio), Capacity: measure.Ratio(allowed), Ratio: measure.Ratio(ratio / allowed),
		Clause: "NDS 2018 4.4.1; the rows for 5 to 7 are from memory", Memory: ratio > 4, Needs: needs}
	if ratio > 6 {
		result.Needs = ""
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		lines := []string{fmt.Sprintf("nominal depth over width = %.0f/%.0f = %s; allowed %s (%s)", nominal(b.Depth), nominal(b.Braced), t.Ratio(ratio), t.Ratio(allowed), held)}
		if needs != "" {
			lines = append(lines, "above 5 and up to 6: "+needs)
		}
		return lines
	}}
}

// joistOverhang checks joists that stand out past the outer beam.
//
//	a ≤ L/4   and   a·(L + a) ≤ 3·E'·I/(180·220 lb)
//
// The rule behind the cantilevers of IRC 2018 R507.6, of which it gives 33 of 36.
func (m Member) joistOverhang(b *statics.Bar) check.Finding {
	parts := b.Gauge.Parts
	var worst, over, back, allowed float64
	for i, p := range parts {
		if !b.Gauge.Overhang(i) || p.Long < overhangsFrom {
			continue
		}
		span := b.Beside(i)
		a := min(span/4, m.overhangByStiffness(b, span))
		if p.Long/a > worst {
			worst, over, back, allowed = p.Long/a, p.Long, span, a
		}
	}
	if worst == 0 {
		return check.Finding{}
	}
	result := check.Check{ID: "joist.overhang", What: "overhang of the joists past the outer beam", Demand: measure.FromMetres(over), Capacity: measure.FromMetres(allowed), Ratio: measure.Ratio(worst),
		Clause: "IRC 2018 R507.6 (rule inferred from its table)"}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("L/4 = %s/4 = %s", t.Metres(back), t.Metres(back/4)),
			fmt.Sprintf("a·(L + a) = 3·E'·I/(180 × 220 lb) gives a = %s", t.Metres(m.overhangByStiffness(b, back))),
			fmt.Sprintf("a = %s, ratio %s", t.Metres(over), t.Ratio(worst)),
		}
	}}
}

// overhangByStiffness solves a·(L + a) = 3·E'·I/(180·P) for a, P = 220 lb.
func (m Member) overhangByStiffness(b *statics.Bar, span float64) float64 {
	k := 3 * float64(m.Values.Elastic) * b.Inertia() / (180 * 220 * float64(measure.PoundForce))
	return (-span + math.Sqrt(span*span+4*k)) / 2
}

// beamOverhang checks that a beam stands out past its last pier by no more than
// a quarter of the span beside it. IRC 2021 R507.5.
func beamOverhang(b *statics.Bar) check.Finding {
	parts := b.Gauge.Parts
	start, end := b.Ends()
	var worst, over, back float64
	for i, p := range parts {
		long := min(p.From+p.Long, end) - max(p.From, start)
		if !b.Gauge.Overhang(i) || long < overhangsFrom {
			continue
		}
		span := b.Beside(i)
		if ratio := long / (span / 4); ratio > worst {
			worst, over, back = ratio, long, span
		}
	}
	if worst == 0 {
		return check.Finding{}
	}
	result := check.Check{ID: b.ID + ".overhang", What: "overhang of " + b.What, Demand: measure.FromMetres(over), Capacity: measure.FromMetres(back / 4),
		Ratio: measure.Ratio(worst), Clause: "IRC 2021 R507.5"}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{fmt.Sprintf("a = %s; L/4 = %s/4 = %s; ratio %s", t.Metres(over), t.Metres(back), t.Metres(back/4), t.Ratio(worst))}
	}}
}
