package timber

import (
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// Column checks a post as a pinned column: fc ≤ F'c = Fc*·CP.
func (m Member) Column(p *statics.PierLoad, combos []loads.Combination) check.Finding {
	s, v := m.Section, m.Values
	area, d := float64(s.Width.Times(s.Depth)), min(s.Width, s.Depth)
	slender := measure.Ratio(p.Height.Post.Metres() / d.Metres())
	best := worstAt{ratio: -1}
	var cp measure.Ratio
	for _, combo := range combos {
		star := v.Compression * measure.Stress(DurationOf(combo))
		factor, _ := ColumnFactor(v.ElasticMin, star, slender)
		if best.try(combo, 0, float64(p.Under(combo)), float64(star)*float64(factor)*area) {
			cp = factor
		}
	}
	if slender > 50 {
		best.ratio = max(best.ratio, float64(slender)/50)
	}
	result := check.Check{ID: "post." + p.Name + ".column", What: "post at " + p.Name + " as a column", Demand: measure.Force(best.demand),
		Capacity: measure.Force(best.capacity), Ratio: measure.Ratio(best.ratio),
		Combination: best.combo.Name, Duration: measure.Ratio(DurationOf(best.combo)), Stability: cp, Clause: "NDS 2018 3.6, 3.7.1", Memory: v.Memory}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		star := v.Compression * measure.Stress(DurationOf(best.combo))
		_, critical := ColumnFactor(v.ElasticMin, star, slender)
		return []string{
			fmt.Sprintf("P = %s (%s)", t.Force(best.demand), best.combo.Name),
			fmt.Sprintf("le/d = %s/%s = %s", t.Length(p.Height.Post), t.Length(d), t.Ratio(float64(slender))),
			t.Product("Fc*", v.Reference.Compression, "Fc", star, check.Factor{Symbol: "CD", Value: measure.Ratio(DurationOf(best.combo))},
				check.Factor{Symbol: "CM", Value: v.CompressionWet}, check.Factor{Symbol: "CF", Value: v.CompressionSize}, check.Factor{Symbol: "Ci", Value: v.Incising}),
			t.Product("Emin'", v.Reference.ElasticMin, "Emin", v.ElasticMin, check.Factor{Symbol: "CM", Value: v.ElasticWet}, check.Factor{Symbol: "Ci", Value: v.ElasticIncising}),
			fmt.Sprintf("FcE = 0.822·Emin'/(le/d)² = %s; c = 0.8; CP = %.3f", t.Timber(critical), float64(cp)),
			fmt.Sprintf("P' = Fc*·CP·A = %s × %.3f × %s = %s; ratio %s", t.Timber(star), float64(cp), t.Power(area, 2), t.Force(best.capacity), t.Ratio(best.ratio)),
		}
	}}
}

// OnSeat checks the end grain of the post on the block's seat: fc ≤ Fc*.
func (m Member) OnSeat(p *statics.PierLoad, combos []loads.Combination, seat measure.Length) check.Finding {
	s, v := m.Section, m.Values
	wide, deep := s.Width, s.Depth
	if seat > 0 {
		wide, deep = min(wide, seat), min(deep, seat)
	}
	area := wide.Times(deep)
	best := worstAt{ratio: -1}
	for _, combo := range combos {
		best.try(combo, 0, float64(p.Under(combo)), float64(v.Compression)*float64(DurationOf(combo))*float64(area))
	}
	result := check.Check{ID: "post." + p.Name + ".bearing", What: "end of the post at " + p.Name + " on the block", Demand: measure.Force(best.demand),
		Capacity: measure.Force(best.capacity), Ratio: measure.Ratio(best.ratio),
		Combination: best.combo.Name, Clause: "NDS 2018 3.10.1", Memory: v.Memory}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("P = %s (%s) on %s × %s", t.Force(best.demand), best.combo.Name, t.Length(wide), t.Length(deep)),
			fmt.Sprintf("Fc*·A = %s × %s = %s; ratio %s", t.Timber(v.Compression*measure.Stress(DurationOf(best.combo))), t.Power(float64(area), 2), t.Force(best.capacity), t.Ratio(best.ratio)),
		}
	}}
}
