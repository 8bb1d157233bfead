package timber

import (
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// Interaction returns the ratio of a post under compression fc and bending fb
// about one axis, with FcE of that axis.
//
//	(fc/F'c)² + fb/(F'b·(1 − fc/FcE)) ≤ 1
//
// It is 99 when fc reaches FcE. NDS 2018 3.9.2, equation 3.9-3.
func Interaction(fc, allowedCompression, fb, allowedBending, critical measure.Stress) measure.Ratio {
	if fc >= critical {
		return 99
	}
	c := fc / allowedCompression
	return measure.Ratio(c*c + fb/(allowedBending*(1-fc/critical)))
}

// OffCentre checks a post whose load stands off its axis: the beam on the cap,
// or the post on the block. The bending is load times eccentricity, taken along the
// whole post.
func (m Member) OffCentre(p *statics.PierLoad, combos []loads.Combination, e measure.Length) check.Finding {
	s, v := m.Section, m.Values
	area, d := float64(s.Width.Times(s.Depth)), min(s.Width, s.Depth)
	modulus := area * d.Metres() / 6
	slender := measure.Ratio(p.Height.Post.Metres() / d.Metres())
	best := worstAt{ratio: -1}
	for _, combo := range combos {
		star := v.Compression * measure.Stress(DurationOf(combo))
		cp, critical := ColumnFactor(v.ElasticMin, star, slender)
		load := float64(p.Under(combo))
		ratio := Interaction(measure.Stress(load/area), star*measure.Stress(cp), measure.Stress(load*e.Metres()/modulus), v.Bending*measure.Stress(DurationOf(combo)), critical)
		best.try(combo, 0, float64(ratio), 1)
	}
	result := check.Check{ID: "post." + p.Name + ".off_centre", What: "post at " + p.Name + " with its load off centre", Demand: measure.Ratio(best.ratio),
		Capacity: measure.Ratio(1), Ratio: measure.Ratio(best.ratio),
		Combination: best.combo.Name, Clause: "NDS 2018 3.9.2", Memory: v.Memory}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		load := float64(p.Under(best.combo))
		return []string{
			fmt.Sprintf("P = %s (%s), e = %s", t.Force(load), best.combo.Name, t.Length(e)),
			fmt.Sprintf("fc = P/A = %s; fb = P·e/S = %s", t.Timber(measure.Stress(load/area)), t.Timber(measure.Stress(load*e.Metres()/modulus))),
			fmt.Sprintf("(fc/F'c)² + fb/(F'b·(1 − fc/FcE)) = %s", t.Ratio(best.ratio)),
		}
	}}
}
