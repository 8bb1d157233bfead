package verify

import (
	"fmt"
	"maps"
	"math"
	"math/big"
	"slices"

	"pierbook/calc/cutting"
	"pierbook/calc/measure"
)

// certificate checks the whole-number proof of the least cost, without which no
// bound on a cost above nothing is taken. For every kind of stick it works out the
// most that the pieces of one can be worth, and takes off the bound whatever that
// is beyond the price, for as many sticks as there can be.
//
// A plan proven by its duals must cost what they prove. A closed search claims
// more than they do, and that is not checked here: see [Cheapest].
func certificate(p cutting.Problem, r cutting.Result) error {
	if len(r.Proofs) == 0 {
		return nil
	}
	proof, c := r.Proofs[0], r.Proofs[0].Certificate
	if c == nil {
		if proof.Reached == cutting.ByCount && proof.Bound == 0 {
			return nil
		}
		return fmt.Errorf("certificate: none, yet no plan is said to cost less than %d", proof.Bound)
	}
	if c.Scale <= 0 || c.Coin <= 0 {
		return fmt.Errorf("certificate: a scale of %d and a coin of %d", c.Scale, c.Coin)
	}
	proved, err := proves(p, c)
	switch {
	case err != nil:
		return err
	case proved < c.Bound || proved > r.Cost:
		return fmt.Errorf("certificate: proves %d, says %d, cost %d", proved, c.Bound, r.Cost)
	case proof.Reached == cutting.ByDuals && proved < proof.Bound:
		return fmt.Errorf("certificate: proves %d, but %d is said to be proven by it", proved, proof.Bound)
	case !proof.Proven && proved < proof.Bound:
		return fmt.Errorf("certificate: proves %d, but %d is said of a search that was not closed", proved, proof.Bound)
	}
	return nil
}

// proves returns the bound on the cost that follows from the values.
func proves(p cutting.Problem, c *cutting.Certificate) (int64, error) {
	worth := map[measure.Length]int64{}
	for _, v := range c.Values {
		if _, twice := worth[v.Length]; v.Worth < 0 || v.Worth > math.MaxInt64/mostPieces || twice {
			return 0, fmt.Errorf("certificate: a piece of %d nm is worth %d", v.Length, v.Worth)
		}
		worth[v.Length] = v.Worth
	}
	bound, count := new(big.Int), int64(0)
	add := func(times, each int64) { bound.Add(bound, new(big.Int).Mul(big.NewInt(times), big.NewInt(each))) }
	for _, piece := range p.Pieces {
		add(int64(piece.Count), worth[piece.Length])
		count += int64(piece.Count)
	}
	if count > mostPieces {
		return 0, fmt.Errorf("certificate: %d pieces are too many to add up", count)
	}
	for _, s := range p.Stock {
		each := price(p, s.Length)
		if needless(p, s.Length, each) {
			continue
		}
		if each%c.Coin != 0 {
			return 0, fmt.Errorf("certificate: a price of %d is not whole in a coin of %d", each, c.Coin)
		}
		// excess = what a stick can yield − price ÷ coin × scale
		excess := new(big.Int).Mul(big.NewInt(each/c.Coin), big.NewInt(c.Scale))
		excess.Sub(big.NewInt(most(p, s.Length, worth)), excess)
		if excess.Sign() > 0 {
			bound.Sub(bound, excess.Mul(excess, big.NewInt(mostOf(s, count))))
		}
	}
	for _, s := range p.OnHand {
		add(-int64(s.Count), most(p, s.Length, worth))
	}
	whole, rest := new(big.Int).QuoRem(bound, big.NewInt(c.Scale), new(big.Int))
	if rest.Sign() > 0 {
		whole.Add(whole, big.NewInt(1))
	}
	whole.Mul(whole, big.NewInt(c.Coin))
	if !whole.IsInt64() {
		return 0, fmt.Errorf("certificate: proves %s, which is no cost", whole)
	}
	return whole.Int64(), nil
}

// needless tells of a stock length that no plan needs: no piece fits it, or one as
// long or longer, of which there are enough, costs no more.
func needless(p cutting.Problem, length measure.Length, each int64) bool {
	usable := length
	if p.Trim > 0 {
		usable -= p.Trim + p.Kerf
	}
	fits := slices.ContainsFunc(p.Pieces, func(piece cutting.Piece) bool { return piece.Count > 0 && piece.Length <= usable })
	return !fits || slices.ContainsFunc(p.Stock, func(s cutting.Stock) bool {
		return s.Sticks == 0 && s.Length > length && price(p, s.Length) <= each
	})
}

// mostOf is how many sticks of a stock length any plan can take.
func mostOf(s cutting.Stock, pieces int64) int64 {
	if s.Sticks > 0 {
		return min(int64(s.Sticks), pieces)
	}
	return pieces
}

// mostPieces is how many pieces a plan may have for what one stick yields to be
// added up without passing the end of the whole numbers.
const mostPieces = 1 << 16

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
