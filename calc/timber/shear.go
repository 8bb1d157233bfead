package timber

import (
	"fmt"
	"math"
	"slices"

	"pierbook/calc/check"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// Shear checks fv ≤ F'v. Where a member lies on its supports and is loaded from
// above, uniform load within a depth of a support is left out and a concentrated
// one at x from it counts by x/d (NDS 2018 3.4.3.1). Where joists hang on a
// beam's side nothing is left out.
func (m Member) Shear(b *statics.Bar, combos []loads.Combination) check.Finding {
	v := m.Values
	w := worstAt{ratio: -1}
	var places []shearPlace
	for part := range b.Gauge.Parts {
		places = shearPlaces(b, places, part)
	}
	for n, combo := range combos {
		e := b.Under(combos, n)
		capacity := float64(v.Shear) * float64(DurationOf(combo)) * b.Width * b.Depth / 1.5
		for i := range places {
			w.try(combo, places[i].shown, places[i].of(e.Most.Shear), capacity)
			w.try(combo, places[i].shown, places[i].of(e.Least.Shear), capacity)
		}
	}
	if w.ratio < 0 {
		return check.Finding{}
	}
	clause, where := "NDS 2018 3.4.2, 3.4.3.1", "a depth from the support"
	if b.SideLoaded {
		clause, where = "NDS 2018 3.4.2", "at the support, for the joists hang on the beam's side"
	}
	result := check.Check{ID: b.ID + ".shear", What: "shear of " + b.What, Demand: measure.Force(w.demand), Capacity: measure.Force(w.capacity),
		Ratio: measure.Ratio(w.ratio), Combination: w.combo.Name, Duration: measure.Ratio(DurationOf(w.combo)), Clause: clause, Memory: v.Memory}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("V = %s, %s, at %s (%s)", t.Force(w.demand), where, t.Metres(b.Gauge.Stations[w.station].X), w.combo.Name),
			fmt.Sprintf("fv = 1.5·V/(b·d) = 1.5 × %s/(%s × %s) = %s", t.Force(w.demand), t.Power(b.Width, 1), t.Power(b.Depth, 1), t.Timber(measure.Stress(1.5*w.demand/(b.Width*b.Depth)))),
			t.Product("F'v", v.Reference.Shear, "Fv", v.Shear*measure.Stress(DurationOf(w.combo)), check.Factor{Symbol: "CD", Value: measure.Ratio(DurationOf(w.combo))},
				check.Factor{Symbol: "CM", Value: v.ShearWet}, check.Factor{Symbol: "Ci", Value: v.Incising}),
			fmt.Sprintf("fv/F'v = %s", t.Ratio(w.ratio)),
		}
	}}
}

// shearPlace is a place between two stations, with the concentrated loads that
// stand between it and its support.
type shearPlace struct {
	shown   int // station that the words name
	station int
	onward  float64 // share of the way to the next station, past it when above 1
	turn    float64 // 1 when the support is on the left, −1 on the right
	jumps   []jump
}

// jump is a step of the shear just before a station, and the share of it that counts.
type jump struct {
	station int
	share   float64
}

// of returns the size of the shear at a place: with and without the concentrated
// loads, whichever is greater.
func (p *shearPlace) of(values []float64) float64 {
	v := values[p.station]
	if p.onward > 0 {
		v = v*(1-p.onward) + values[p.station+1]*p.onward
	}
	with := v
	for _, j := range p.jumps {
		with += p.turn * (values[j.station-1] - values[j.station]) * j.share
	}
	return max(math.Abs(v), math.Abs(with))
}

// shearPlaces adds the places in a part where its shear is looked at: a depth
// away from each support, in a short part as far as it goes, or, when joists hang
// on the side, at the support.
func shearPlaces(b *statics.Bar, places []shearPlace, part int) []shearPlace {
	p := b.Gauge.Parts[part]
	supports := b.Gauge.Run.Supports
	left, right := p.From >= supports[0]-1e-12, p.From+p.Long <= supports[len(supports)-1]+1e-12
	first, last := b.Gauge.EndsOf(part)
	reach := min(b.Depth, p.Long)
	if left && right {
		reach = min(b.Depth, p.Long/2)
	}
	switch {
	case left && b.SideLoaded:
		places = append(places, shearPlace{shown: first, station: first})
	case left:
		places = append(places, placeAt(b, part, p.From+reach, p.From, 1))
	}
	switch {
	case right && b.SideLoaded: // [statics.Beside] the support
		places = append(places, shearPlace{shown: last, station: last - 1})
	case right:
		places = append(places, placeAt(b, part, p.From+p.Long-reach, p.From+p.Long, -1))
	}
	return places
}

// loadAt tells stations over which a concentrated load may stand.
func loadAt(b *statics.Bar, part, station int) bool {
	g := b.Gauge
	_, last := g.EndsOf(part)
	return station == last && g.Overhang(part) || slices.Contains(g.Marks, g.Stations[station].X)
}

// placeAt returns the place at x of a part whose support stands at the given
// end. Of a load P at a < d the support would see P·(a/d)·(1 − a/L), and the shear
// at x is short of it by that much and P·a/L; from an overhang it sees P·a/d.
func placeAt(b *statics.Bar, part int, x, support, turn float64) shearPlace {
	g := b.Gauge
	first, last := g.EndsOf(part)
	at := shearPlace{shown: last, station: last, turn: turn}
	for i := first; i < last; i++ {
		if from, to := g.Stations[i].X, g.Stations[i+1].X; x < to {
			at.shown, at.station, at.onward = i, i, max(0, (x-from)/(to-from))
			if loadAt(b, part, i+1) { // a station tells the shear past its load: go on from before it
				at.onward = 0
				if i > first && !loadAt(b, part, i) {
					before := g.Stations[i-1].X
					at.station, at.onward = i-1, (x-before)/(from-before)
				}
			}
			break
		}
	}
	if len(g.Marks) == 0 && !g.Overhang(part) {
		return at
	}
	for i := first + 1; i <= last; i++ {
		away := math.Abs(g.Stations[i].X - support)
		if away < 1e-9 || away > math.Abs(x-support)+1e-9 || i < last && !slices.Contains(g.Marks, g.Stations[i].X) {
			continue
		}
		share := min(1, away/b.Depth)
		if !g.Overhang(part) {
			share += (1 - share) * away / g.Parts[part].Long
		}
		at.jumps = append(at.jumps, jump{i, share})
	}
	return at
}
