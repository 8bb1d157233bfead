package heights

import (
	"cmp"
	"slices"

	"pierbook/calc/measure"
)

// NextReading is a pier that was not read, and what reading it may change.
type NextReading struct {
	Pier  string
	Error measure.Length // standard error of the estimate
	Asks  measure.Length // lowest floor the pier allows, by its estimate
	Rest  Demand         // the place of all others that keeps the floor up most
	Moves measure.Length // expected move of the lowest floor, either way, once it is read
	Digs  measure.Length // expected change of its hole at the floor chosen; 0 without a floor

	dig, leastDig measure.Length // what lets the shortest post fit, and what all else asks for
}

// ReadNext returns the estimated piers, the one first whose uncertainty moves
// the floor most; where none can move it, the one whose hole it changes most.
// With d the floor it asks for, s its error and M what the rest of the site asks
// for, the expected move is
//
//	E |max(M, d + s Z) − max(M, d)|        Z standard normal
//
// It is nothing where d lies several errors under M, although the post there may
// well come out short in a hole as planned: the hole is then dug deeper. The
// expected change of the hole is the same expression of the dig that the
// shortest post asks for and the least dig. One more reading there is worth more
// than any refinement of the surface.
func (h *Heights) ReadNext() []NextReading {
	if h.places == nil {
		return nil
	}
	demands := h.terms.demands(h.places, h.ground.Inside())
	var list []NextReading
	for i, p := range h.Piers {
		if p.Level.Read {
			continue
		}
		n := NextReading{Pier: p.Name, Error: p.Level.Error, Asks: h.demandOf(i), Rest: demands[0]}
		if n.Rest.Name == p.Name && len(demands) > 1 {
			n.Rest = demands[1]
		}
		n.Moves = expectedMove(n.Asks, n.Rest.Floor, n.Error)
		if h.Floor != nil && h.places[i].seat == nil {
			n.hole(h, i)
		}
		list = append(list, n)
	}
	slices.SortStableFunc(list, func(a, b NextReading) int {
		return cmp.Or(cmp.Compare(b.Moves, a.Moves), cmp.Compare(b.Digs, a.Digs), cmp.Compare(b.Error, a.Error))
	})
	return list
}

// hole works out by how much a reading may change the hole, see [Bounds.hole].
func (n *NextReading) hole(h *Heights, i int) {
	b := h.terms.bounds(h.places[i])
	postTops := h.terms.tops(h.Floor.Height, h.places[i].buildUp)
	n.dig = b.Ground + b.SeatHeight - (postTops - h.terms.Shortest) + b.StoneLeast
	n.leastDig = max(b.DigLeast, b.CoverLeast+b.StoneLeast)
	n.Digs = expectedMove(n.dig, n.leastDig, n.Error)
}

// expectedMove works out the expectation in closed form, with a = (M − d) / s:
//
//	d ≤ M:  s (φ(a) − a (1 − Φ(a)))
//	d > M:  s (2 φ(0) − φ(a)) + (d − M) Φ(a)
func expectedMove(demand, rest, spread measure.Length) measure.Length {
	if spread <= 0 {
		return 0
	}
	a := float64(rest-demand) / float64(spread)
	if demand <= rest {
		return spread.Scale(density(a) - a*below(-a))
	}
	return spread.Scale(2*density(0)-density(a)) + (demand - rest).Scale(below(a))
}
