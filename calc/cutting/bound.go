package cutting

import "math"

// quickBound returns the best of the bounds that need no relaxation. For one
// length of stick in any number they come from dual feasible functions: with
// such a function f, the f of all pieces divided by the f of a stick bounds the
// number of sticks, and the f are duals in whole numbers.
//
// For each threshold a, f(x) is the room for x above room − a, 0 below a, and
// x between (S. Martello and P. Toth, Knapsack Problems, 1990); for each whole
// number n, f(x) is x·n when x·(n+1)/room is whole and ⌊x·(n+1)/room⌋·room
// otherwise, of n·room (S.P. Fekete and J. Schepers, 2001). Both from memory.
func (t *task) quickBound() certificate {
	best := t.byLength()
	if len(t.stocks) != 1 || t.stocks[0].most < unlimited {
		return best
	}
	room := t.stocks[0].room
	try := func(scale int64, f func(take int64) int64) {
		sum := int64(0)
		for _, k := range t.pieces {
			sum += f(k.uses) * int64(k.need)
		}
		if bound := ceilDivide(sum, scale) * t.weight[0]; bound > best.bound {
			best = certificate{bound: bound, exact: sum * t.weight[0], scale: scale}
			for _, k := range t.pieces {
				best.dual = append(best.dual, f(k.uses)*t.weight[0])
			}
			best.yields = []int64{scale * t.weight[0]}
		}
	}
	try(room, func(x int64) int64 { return x })
	for _, k := range t.pieces {
		a := min(k.uses, room-k.uses+1)
		if 2*a > room || a < 1 {
			continue
		}
		try(room, func(x int64) int64 { return threshold(x, a, room) })
	}
	for n := int64(1); n <= 12 && room < math.MaxInt32; n++ {
		try(n*room, func(x int64) int64 { return rounded(x, n, room) })
	}
	return best
}

// byLength returns the bound by the cheapest stick for its length: each piece is
// worth what its length costs there. Sticks on hand are worth their length.
func (t *task) byLength() certificate {
	c := certificate{scale: t.scaling()}
	rate := int64(math.MaxInt64)
	for j, s := range t.stocks {
		if s.bought {
			rate = min(rate, t.weight[j]*c.scale/s.room)
		}
	}
	if rate == math.MaxInt64 {
		rate = 0 // nothing can be bought
	}
	for _, k := range t.pieces {
		c.dual = append(c.dual, k.uses*rate)
		c.exact += k.uses * rate * int64(k.need)
	}
	for j, s := range t.stocks {
		c.yields = append(c.yields, t.weight[j]*c.scale)
		if !s.bought {
			c.exact -= s.room * rate * min(int64(s.most), t.mostSticks(j))
		}
	}
	if c.exact < 0 {
		clear(c.dual)
		c.exact = 0
	}
	c.bound = ceilDivide(c.exact, c.scale)
	return c
}

func threshold(x, a, room int64) int64 {
	switch {
	case x > room-a:
		return room
	case x < a:
		return 0
	default:
		return x
	}
}

func rounded(x, n, room int64) int64 {
	if x*(n+1)%room == 0 {
		return x * n
	}
	return x * (n + 1) / room * room
}

// start returns a plan by quick rules, the best of several.
func (t *task) start() *layout {
	need := make([]int, len(t.pieces))
	for i, k := range t.pieces {
		need[i] = k.need
	}
	var best *layout
	offer := func(l *layout) {
		if l == nil || !t.fits(l) {
			return
		}
		if settled := t.settle(l); settled.weighs(t.weight) < l.weighs(t.weight) {
			l = settled
		}
		if best == nil || l.weighs(t.weight) < best.weighs(t.weight) {
			best = l
		}
	}
	offer(t.complete(need, make([]int, len(t.stocks))))
	for j, s := range t.stocks {
		if s.bought {
			offer(t.firstFit(j))
		}
	}
	return best
}

// firstFit lays every piece, longest first, on the first stick of one stock length
// that has room.
func (t *task) firstFit(j int) *layout {
	room := t.stocks[j].room
	if t.pieces[0].uses > room {
		return nil
	}
	var left []int64
	var counts [][]int32
	for i, k := range t.pieces {
		at := 0
		for range k.need {
			for at < len(left) && left[at] < k.uses {
				at++
			}
			if at == len(left) {
				left = append(left, room)
				counts = append(counts, make([]int32, len(t.pieces)))
			}
			left[at] -= k.uses
			counts[at][i]++
		}
	}
	l := &layout{}
	for _, count := range counts {
		var parts []part
		for i, n := range count {
			if n > 0 {
				parts = append(parts, part{int32(i), n})
			}
		}
		l.add(t.stick(j, parts), 1)
	}
	return l
}
