package cutting

import "math"

// mostLeft returns a length that no offcut passes at the cost and the number of
// sticks found: what all sticks bought and on hand measure together, less all
// the pieces. The longest that so many sticks can measure for so much is bounded
// by the concave hull of the stock over its price,
//
//	Σ length ≤ n · hull(cost / n)
//
// since any mix of n sticks lies under it.
func (s *solver) mostLeft() int64 {
	if s.sticks == 0 {
		return 0
	}
	rooms := int64(math.Floor(float64(s.sticks)*s.hull(float64(s.cost)/float64(s.sticks)) + 1e-6))
	for _, stock := range s.stocks {
		if !stock.bought {
			rooms += stock.room * int64(stock.most)
		}
	}
	for _, k := range s.pieces {
		rooms -= k.uses * int64(k.need)
	}
	return rooms - s.kerf
}

// hull returns the greatest mean length of sticks whose mean price is given: the
// best of one stock length at that price or of two on either side of it.
func (s *solver) hull(price float64) float64 {
	best := 0.0
	for _, a := range s.stocks {
		if !a.bought {
			continue
		}
		at, room := float64(a.price), float64(a.room)
		if at == price {
			best = max(best, room)
		}
		for _, b := range s.stocks {
			to := float64(b.price)
			if b.bought && at < price && price < to {
				best = max(best, room+(float64(b.room)-room)*(price-at)/(to-at))
			}
		}
	}
	return best
}
