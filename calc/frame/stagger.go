package frame

import (
	"cmp"
	"math/bits"
	"slices"

	"pierbook/calc/measure"
)

// stagger chooses for every line and ply one of the options, at least cost. The
// answer holds, line by line, the index of the option of each ply.
func stagger(options []option, plies, lines int) [][]int {
	return alternate(lineWays(options, plies), lines)
}

// lineWay is one way of joining all plies of a line.
type lineWay struct {
	plies  []int  // the option of each ply
	joints uint64 // stops with a joint in any ply
	count  int    // joints
	bought measure.Length
	spread measure.Length
}

// compare orders ways, the best first.
func (w lineWay) compare(o lineWay) int {
	return cmp.Or(cmp.Compare(w.count, o.count), cmp.Compare(w.bought, o.bought), cmp.Compare(w.spread, o.spread))
}

// jointSets returns the stops of every option, one bit each.
func jointSets(options []option) []uint64 {
	sets := make([]uint64, len(options))
	for i, o := range options {
		for _, stop := range o.joints {
			sets[i] |= 1 << stop
		}
	}
	return sets
}

// leastShared returns the fewest joints that two options have over one stop. Two
// plies side by side share so many at least, and a beam whose plies take turns in
// such a pair shares no more between any two.
func leastShared(sets []uint64) int {
	least := bits.OnesCount64(sets[0])
	for i, a := range sets {
		for _, b := range sets[i:] {
			least = min(least, bits.OnesCount64(a&b))
		}
	}
	return least
}

// lineWays returns the ways of joining the plies of one line that share the
// fewest joints between neighbours and of these have the fewest joints, the best
// for each set of joints. What other lines do depends on that set alone, so
// nothing better is lost.
func lineWays(options []option, plies int) []lineWay {
	sets := jointSets(options)
	least := leastShared(sets)
	ways := make([]lineWay, len(options))
	for i, o := range options {
		ways[i] = lineWay{plies: []int{i}, joints: sets[i], count: len(o.joints), bought: o.bought, spread: o.spread}
	}
	for range plies - 1 {
		ways = addPly(ways, options, sets, least)
	}
	return bestOfEachSet(ways)
}

// addPly lays one more ply against every way. Two ways that end in the same
// option with the same joints differ for nothing that follows but their cost.
func addPly(ways []lineWay, options []option, sets []uint64, least int) []lineWay {
	type state struct {
		joints uint64
		last   int
	}
	index := make(map[state]int, len(ways))
	var next []lineWay
	for _, w := range ways {
		last := w.plies[len(w.plies)-1]
		for i, o := range options {
			if bits.OnesCount64(sets[last]&sets[i]) > least {
				continue
			}
			longer := lineWay{joints: w.joints | sets[i], count: w.count + len(o.joints), bought: w.bought + o.bought, spread: w.spread + o.spread}
			key := state{longer.joints, i}
			at, seen := index[key]
			if !seen {
				at = len(next)
				index[key] = at
				next = append(next, lineWay{})
			} else if longer.compare(next[at]) >= 0 {
				continue
			}
			longer.plies = append(slices.Clone(w.plies), i)
			next[at] = longer
		}
	}
	// Keeps the search small where a beam has very many supports.
	slices.SortStableFunc(next, lineWay.compare)
	return next[:min(len(next), mostOptions)]
}

func bestOfEachSet(ways []lineWay) []lineWay {
	slices.SortStableFunc(ways, lineWay.compare)
	var kept []lineWay
	for _, w := range ways {
		if w.count != ways[0].count {
			break
		}
		if !slices.ContainsFunc(kept, func(k lineWay) bool { return k.joints == w.joints }) {
			kept = append(kept, w)
		}
	}
	return kept
}

// lineCost is what alternate keeps least, in this order.
type lineCost struct {
	shared         int // joints that neighbouring lines have over piers of one number
	bought, spread measure.Length
}

func (c lineCost) compare(o lineCost) int {
	return cmp.Or(cmp.Compare(c.shared, o.shared), cmp.Compare(c.bought, o.bought), cmp.Compare(c.spread, o.spread))
}

// alternate gives every line a way, so that neighbours share the fewest joints.
// It works from the last line back: best(i, w) = own(w) + least over v of
// shared(w, v) + best(i+1, v).
func alternate(ways []lineWay, lines int) [][]int {
	n := len(ways)
	costs := make([]lineCost, n)
	follow := make([]int, n*lines)
	for i := lines - 1; i >= 0; i-- {
		before := make([]lineCost, n)
		for a, w := range ways {
			best, at := lineCost{}, 0
			if i < lines-1 {
				best, at = cheapestAfter(ways, costs, a)
			}
			best.bought += w.bought
			best.spread += w.spread
			before[a], follow[i*n+a] = best, at
		}
		costs = before
	}
	at := 0
	for a := range costs {
		if costs[a].compare(costs[at]) < 0 {
			at = a
		}
	}
	chosen := make([][]int, lines)
	for i := range chosen {
		chosen[i] = ways[at].plies
		at = follow[i*n+at]
	}
	return chosen
}

func cheapestAfter(ways []lineWay, costs []lineCost, a int) (lineCost, int) {
	var best lineCost
	at := -1
	for b, v := range ways {
		c := costs[b]
		c.shared += bits.OnesCount64(ways[a].joints & v.joints)
		if at < 0 || c.compare(best) < 0 {
			best, at = c, b
		}
	}
	return best, at
}
