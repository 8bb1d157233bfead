package timber

import (
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
	"pierbook/calc/trade"
)

// OnPost checks Fc⊥ of each ply over each post. Over a splice each end has
// half of the post. A beam wider than the post bears on the post's width alone.
func (m Member) OnPost(b *statics.Bar, combos []loads.Combination, post job.Section) check.Finding {
	v := m.Values
	contact := min(m.Section.Across(), post.Depth).Metres() / float64(m.Section.Plies)
	w := worstAt{ratio: -1}
	var cb measure.Ratio
	var bearing measure.Length
	for n, combo := range combos {
		e := b.Under(combos, n)
		for i := range b.Gauge.Run.Supports {
			r, lb, factor := overPost(b, e, i, post.Width)
			if w.try(combo, i, r, float64(v.BearingAcross)*float64(factor)*contact*lb.Metres()) {
				cb, bearing = factor, lb
			}
		}
	}
	result := check.Check{ID: b.ID + ".bearing", What: "bearing of " + b.What + " on the post", Demand: measure.Force(w.demand), Capacity: measure.Force(w.capacity), Ratio: measure.Ratio(w.ratio),
		Combination: w.combo.Name, Area: cb, Clause: "NDS 2018 3.10.2, 3.10.4", Memory: v.Memory}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("R = %s on pier %d (%s)", t.Force(w.demand), w.station+1, w.combo.Name),
			fmt.Sprintf("bearing = %s wide × %s long", t.Metres(contact), t.Length(bearing)),
			t.Product("F'c⊥", v.Reference.BearingAcross, "Fc⊥", v.BearingAcross*measure.Stress(cb), check.Factor{Symbol: "CM", Value: v.AcrossWet}, check.Factor{Symbol: "Cb", Value: cb}),
			fmt.Sprintf("R/(b·lb·F'c⊥) = %s", t.Ratio(w.ratio)),
		}
	}}
}

// overPost returns the greatest reaction of one end of a ply on a post, the
// length it bears on, and Cb: over a splice each side by itself.
func overPost(b *statics.Bar, e statics.Envelope, support int, post measure.Length) (r float64, lb measure.Length, cb measure.Ratio) {
	if b.RunsOver(support) {
		start, end := b.Ends()
		at := b.Gauge.Run.Supports[support]
		toEnd := measure.FromMetres(min(at-start, end-at)) - post/2
		overlap := min(at+post.Metres()/2, end) - max(at-post.Metres()/2, start)
		return e.Most.Reactions[support], measure.FromMetres(overlap), BearingFactor(post, toEnd)
	}
	return b.End(e, support), post / 2, 1
}

// OnBeams checks Fc⊥ where a joist lies on a beam, and the least bearing.
// Between beams it hangs in hangers, whose capacity is their maker's.
func (m Member) OnBeams(b *statics.Bar, combos []loads.Combination, seats []statics.Seat, least measure.Length, hung bool) check.Finding {
	w := worstAt{ratio: -1}
	v := m.Values
	for n, combo := range combos {
		e := b.Under(combos, n)
		for i, seat := range seats {
			w.try(combo, i, b.End(e, i), float64(v.BearingAcross)*b.Width*seat.Long.Metres())
		}
	}
	short, lb := false, seats[w.station].Long
	for _, seat := range seats {
		if ratio := least.Metres() / seat.Long.Metres(); ratio > 1 && ratio > w.ratio {
			w.ratio, short, lb = ratio, true, seat.Long
		}
	}
	result := check.Check{ID: "joist.bearing", What: "bearing of " + b.What + " on the beam", Demand: measure.Force(w.demand), Capacity: measure.Force(w.capacity), Ratio: measure.Ratio(w.ratio),
		Combination: w.combo.Name, Area: 1, Clause: "NDS 2018 3.10.2; " + trade.BearingLeast.Source(), Memory: v.Memory}
	if short {
		result.Demand, result.Capacity = least, lb
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		lines := []string{
			fmt.Sprintf("R = %s at line %s (%s)", t.Force(w.demand), seats[w.station].Line, w.combo.Name),
			fmt.Sprintf("bearing = %s wide × %s long", t.Metres(b.Width), t.Length(lb)),
			t.Product("F'c⊥", v.Reference.BearingAcross, "Fc⊥", v.BearingAcross, check.Factor{Symbol: "CM", Value: v.AcrossWet}, check.Factor{Symbol: "Cb", Value: 1}),
			fmt.Sprintf("R/(b·lb·F'c⊥) = %s; least bearing %s", t.Ratio(w.ratio), t.Length(least)),
		}
		if hung {
			lines = append(lines, "the joists hang between the beams: a hanger for R at each end, by its maker's table")
		}
		return lines
	}}
}
