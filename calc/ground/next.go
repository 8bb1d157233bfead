package ground

import (
	"cmp"
	"slices"

	"pierbook/calc/measure"
)

// NextReading is a pier that was not read, and what reading it may change.
type NextReading struct {
	Pier  string
	Error measure.Length // standard error of the estimate
	Moves measure.Length // expected move of the lowest floor, either way, once it is read
}

// ReadNext returns the estimated piers, the one first whose uncertainty moves
// the floor most. With d the floor it asks for, s its error and M what the rest
// of the site asks for, the expected move is
//
//	E |max(M, d + s Z) − max(M, d)|        Z standard normal
//
// One more reading there is worth more than any refinement of the surface.
func (g *Ground) ReadNext() []NextReading {
	if g.places == nil {
		return nil
	}
	demands := g.terms.demands(g.places, g.insideSpots())
	var list []NextReading
	for i, p := range g.Piers {
		if p.Level.Read {
			continue
		}
		rest := demands[0]
		if rest.Name == p.Name && len(demands) > 1 {
			rest = demands[1]
		}
		list = append(list, NextReading{Pier: p.Name, Error: p.Level.Error,
			Moves: expectedMove(g.demandOf(i), rest.Floor, p.Level.Error)})
	}
	slices.SortStableFunc(list, func(a, b NextReading) int {
		return cmp.Or(cmp.Compare(b.Moves, a.Moves), cmp.Compare(b.Error, a.Error))
	})
	return list
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
