package verify

import (
	"fmt"
	"maps"
	"slices"

	"pierbook/calc/cutting"
	"pierbook/calc/measure"
)

// certificate checks the whole-number proof of the least cost. For every kind
// of stick it works out the most that the pieces of one can be worth, and takes
// off the bound whatever that is beyond the price, for as many sticks as there
// can be.
func certificate(p cutting.Problem, r cutting.Result) error {
	if len(r.Proofs) == 0 || r.Proofs[0].Certificate == nil {
		return nil
	}
	proof, c := r.Proofs[0], r.Proofs[0].Certificate
	worth := map[measure.Length]int64{}
	for _, v := range c.Values {
		if v.Worth < 0 {
			return fmt.Errorf("certificate: a piece of %d nm is worth %d", v.Length, v.Worth)
		}
		worth[v.Length] = v.Worth
	}
	bound, count := int64(0), int64(0)
	for _, piece := range p.Pieces {
		bound += worth[piece.Length] * int64(piece.Count)
		count += int64(piece.Count)
	}
	for _, s := range p.Stock {
		excess := most(p, s.Length, worth) - price(p, s.Length)/c.Coin*c.Scale
		bound -= max(0, excess) * count
	}
	for _, s := range p.OnHand {
		bound -= most(p, s.Length, worth) * int64(s.Count)
	}
	proved := (bound + c.Scale - 1) / c.Scale * c.Coin
	if proved < c.Bound || proved > r.Cost {
		return fmt.Errorf("certificate: proves %d, says %d, cost %d", proved, c.Bound, r.Cost)
	}
	if proof.Proven && proof.Reached == cutting.ByDuals && proved != proof.Bound {
		return fmt.Errorf("certificate: proves %d, but %d is said to be proven by it", proved, proof.Bound)
	}
	return nil
}

// most returns the most that the pieces of one stick can be worth: all the sums
// that pieces can take are gone through, each with the most it can be worth.
func most(p cutting.Problem, length measure.Length, worth map[measure.Length]int64) int64 {
	room := length + p.Kerf
	if p.Trim > 0 {
		room -= p.Trim + p.Kerf
	}
	wanted := map[measure.Length]int{}
	for _, piece := range p.Pieces {
		wanted[piece.Length] += piece.Count
	}
	best := map[measure.Length]int64{0: 0}
	for _, l := range slices.Sorted(maps.Keys(wanted)) {
		if worth[l] == 0 {
			continue
		}
		grown := maps.Clone(best)
		for used, value := range best {
			for n := 1; n <= wanted[l]; n++ {
				used, value = used+l+p.Kerf, value+worth[l]
				if used > room {
					break
				}
				if had, ok := grown[used]; !ok || value > had {
					grown[used] = value
				}
			}
		}
		best = grown
	}
	return slices.Max(slices.Collect(maps.Values(best)))
}
