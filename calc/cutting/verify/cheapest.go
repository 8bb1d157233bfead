package verify

import (
	"cmp"
	"fmt"
	"slices"

	"pierbook/calc/cutting"
	"pierbook/calc/measure"
)

// mostStates is how many sets of pieces still to cut [Cheapest] goes through.
const mostStates = 60_000

// Cheapest returns the least cost and the fewest sticks bought at that cost, by a
// second method that has nothing of the search in it: what is cheapest for a set
// of pieces is the least over the ways to cut the next stick, plus what is
// cheapest for the pieces left. It is false when the sets are too many to go
// through, or when there is no plan.
//
//	cheapest(pieces) = min over stock and ways of price + cheapest(pieces − way)
//
// Every stick on hand comes first, cut in any way; each stick bought yields the
// longest piece left.
func Cheapest(p cutting.Problem) (cost int64, sticks int, ok bool) {
	c := &cheapest{problem: p, known: map[string]total{}}
	for _, piece := range p.Pieces {
		c.add(piece)
	}
	slices.SortFunc(c.pieces, func(a, b cutting.Piece) int { return cmp.Compare(b.Length, a.Length) })
	for _, s := range p.OnHand {
		for range s.Count {
			c.hand = append(c.hand, s.Length)
		}
	}
	state := state{}
	for _, piece := range c.pieces {
		state.left = append(state.left, piece.Count)
	}
	for _, s := range p.Stock {
		state.yard = append(state.yard, s.Sticks)
	}
	best := c.of(state)
	return best.cost, best.sticks, !best.none && len(c.known) <= mostStates
}

type cheapest struct {
	problem cutting.Problem
	pieces  []cutting.Piece
	hand    []measure.Length
	known   map[string]total
}

// state is what is left: pieces, sticks of each limited stock length, and from
// which stick on hand on.
type state struct {
	left, yard []int
	hand       int
}

type total struct {
	cost   int64
	sticks int
	none   bool
}

func (t total) less(other total) bool {
	if t.none || other.none {
		return !t.none
	}
	return cmp.Or(cmp.Compare(t.cost, other.cost), cmp.Compare(t.sticks, other.sticks)) < 0
}

func (c *cheapest) add(piece cutting.Piece) {
	if piece.Count == 0 {
		return
	}
	at := slices.IndexFunc(c.pieces, func(q cutting.Piece) bool { return q.Length == piece.Length })
	if at < 0 {
		c.pieces = append(c.pieces, piece)
		return
	}
	c.pieces[at].Count += piece.Count
}

func (c *cheapest) of(s state) total {
	first := slices.IndexFunc(s.left, func(n int) bool { return n > 0 })
	if first < 0 {
		return total{}
	}
	key := fmt.Sprint(s)
	if t, seen := c.known[key]; seen || len(c.known) > mostStates {
		return t
	}
	best := total{none: true}
	try := func(length measure.Length, must bool, price int64, bought int, next state) {
		c.ways(length, s.left, first, must, func(left []int) {
			next.left = left
			rest := c.of(next)
			rest.cost += price
			rest.sticks += bought
			if rest.less(best) {
				best = rest
			}
		})
	}
	if s.hand < len(c.hand) {
		try(c.hand[s.hand], false, 0, 0, state{yard: s.yard, hand: s.hand + 1})
	} else {
		for j, stock := range c.problem.Stock {
			next := state{yard: s.yard, hand: s.hand}
			if stock.Sticks > 0 {
				if s.yard[j] == 0 {
					continue
				}
				next.yard = slices.Clone(s.yard)
				next.yard[j]--
			}
			try(stock.Length, true, price(c.problem, stock.Length), 1, next)
		}
	}
	c.known[key] = best
	return best
}

// ways goes through the ways to cut a stick as full as it goes, and calls do with
// the pieces left after each.
func (c *cheapest) ways(length measure.Length, left []int, first int, must bool, do func(left []int)) {
	room := length + c.problem.Kerf
	if c.problem.Trim > 0 {
		room -= c.problem.Trim + c.problem.Kerf
	}
	left = slices.Clone(left)
	var fill func(i int, room measure.Length)
	fill = func(i int, room measure.Length) {
		if i == len(left) {
			for k, n := range left {
				if n > 0 && c.pieces[k].Length+c.problem.Kerf <= room {
					return // more goes in
				}
			}
			do(slices.Clone(left))
			return
		}
		had := left[i]
		for n := 0; n <= had && room >= 0; n++ {
			left[i] = had - n
			if !must || i != first || n > 0 {
				fill(i+1, room)
			}
			room -= c.pieces[i].Length + c.problem.Kerf
		}
		left[i] = had
	}
	fill(0, room)
}
