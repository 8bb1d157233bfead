package cutting

import (
	"cmp"
	"math"
	"slices"
)

// combination is how many sticks of each stock length a plan takes. Where prices go by
// the length, or nearly so, few combinations between the bound and the best
// plan have room for all the pieces, and each asks only whether the pieces can
// be packed into given sticks with hardly any waste.
type combination struct {
	sticks []int
	weight int64
	waste  int64 // room of the sticks, as far as pieces can fill it, less what the pieces take
}

// Limits on the combinations listed.
const (
	mostCombinations = 2_000
	fillingTable     = 2_000_000 // entries
	combinationSteps = 400_000
)

// combiner lists the combinations within the target and the limits.
type combiner struct {
	*task
	fills  []int64 // the most that pieces can fill of a stick of each stock length
	order  []int   // stock lengths to choose from, those with the most room for their weight last
	sticks []int
	found  []combination
	steps  int
}

// combinations lists every combination of sticks that has room for the pieces
// within the target and the limits, those with the most room to spare first,
// and is false when they are too many to go through.
func (t *task) combinations() ([]combination, bool) {
	c := &combiner{task: t, fills: t.fullest(), sticks: make([]int, len(t.stocks)), steps: combinationSteps}
	if c.fills == nil {
		return nil, false
	}
	left := int64(0)
	for _, k := range t.pieces {
		left += k.uses * int64(k.need)
	}
	for j, s := range t.stocks {
		switch {
		case t.free(j):
			c.sticks[j] = s.most
			left -= int64(s.most) * c.fills[j]
		case t.weight[j] <= 0:
			return nil, false
		default:
			c.order = append(c.order, j)
		}
	}
	slices.SortFunc(c.order, func(a, b int) int {
		return cmp.Compare(float64(c.fills[a])/float64(t.weight[a]), float64(c.fills[b])/float64(t.weight[b]))
	})
	if !c.choose(0, left, 0) {
		return nil, false
	}
	slices.SortStableFunc(c.found, func(a, b combination) int {
		return cmp.Or(cmp.Compare(b.waste, a.waste), cmp.Compare(a.weight, b.weight))
	})
	return c.found, true
}

// free sticks cost nothing and count in no limit, so every combination takes them.
func (t *task) free(j int) bool {
	for _, l := range t.limits {
		if l.coefficient[j] != 0 {
			return false
		}
	}
	return t.weight[j] == 0 && t.stocks[j].most < unlimited
}

// choose goes through the numbers of sticks of the stock lengths from place at on. It
// is false when there are too many.
func (c *combiner) choose(at int, left, weight int64) bool {
	c.steps--
	c.use(10)
	if c.steps <= 0 || len(c.found) > mostCombinations {
		return false
	}
	if at == len(c.order) {
		if left <= 0 && c.allowed() {
			c.found = append(c.found, combination{slices.Clone(c.sticks), weight, -left})
		}
		return true
	}
	j := c.order[at]
	best := c.order[len(c.order)-1]
	for n := 0; n <= c.stocks[j].most && weight <= c.target; n++ {
		c.sticks[j] = n
		spare := float64(c.target-weight) * float64(c.fills[best]) / float64(c.weight[best])
		if float64(left) <= spare+1e-6*math.Abs(spare) || at == len(c.order)-1 {
			if !c.choose(at+1, left, weight) {
				return false
			}
		}
		left -= c.fills[j]
		weight += c.weight[j]
	}
	c.sticks[j] = 0
	return true
}

// allowed tries the limits on all the sticks together, which the choice by weight
// leaves out.
func (c *combiner) allowed() bool {
	for _, l := range c.limits {
		sum := int64(0)
		for j, n := range c.sticks {
			sum += l.coefficient[j] * int64(n)
		}
		if sum > l.most {
			return false
		}
	}
	return true
}

// covers spares the search of b where a has no plan, since every plan for the
// sticks of b is one for those of a:
// counted from the longest stick down, a has at least as many of each length or
// longer ones.
func (a *combination) covers(b *combination, t *task) bool {
	for _, bought := range []bool{false, true} {
		more := 0
		for j := len(a.sticks) - 1; j >= 0; j-- {
			if t.stocks[j].bought == bought {
				if more += a.sticks[j] - b.sticks[j]; more < 0 {
					return false
				}
			}
		}
	}
	return true
}

// fullest returns the most that pieces can fill of a stick of each stock length, or
// nil when that cannot be told in a table.
func (t *task) fullest() []int64 {
	best := t.fillings()
	if best == nil {
		return nil
	}
	fills := make([]int64, len(t.stocks))
	for j, s := range t.stocks {
		fills[j] = int64(best[0][s.room])
		if t.reserve >= 0 && !t.holds[j] {
			fills[j] = min(fills[j], s.room)
		}
	}
	return fills
}

// fillings works out, for each piece and room, the most that the pieces from
// there on can fill of the room.
func (t *task) fillings() [][]int32 {
	room, n := t.widest(), len(t.pieces)
	if int64(n+1)*(room+1) > fillingTable {
		return nil
	}
	best := make([][]int32, n+1)
	best[n] = make([]int32, room+1)
	for i := n - 1; i >= 0; i-- {
		k := t.pieces[i]
		row := slices.Clone(best[i+1])
		for left, bundle := min(int64(k.need), room/k.uses), int64(1); left > 0; bundle *= 2 {
			bundle = min(bundle, left)
			left -= bundle
			take := bundle * k.uses
			t.use(int(room))
			for c := room; c >= take; c-- {
				row[c] = max(row[c], row[c-take]+int32(take))
			}
		}
		best[i] = row
	}
	return best
}
