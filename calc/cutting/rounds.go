package cutting

import (
	"math"
	"slices"
)

// firstBudget is how many steps the search of a list has before combinations of
// sticks are tried at all, and in the first round with them.
const firstBudget = 10_000_000

// stepsOfPattern is how much budget there must be for each pattern listed.
const stepsOfPattern = 3_000

// inRounds works on combinations of sticks and on the whole in rounds of a
// growing budget, so that an easy way out is found first by whichever has one.
// run begins anew each time, with the best plan known by then.
func (s *search) inRounds(run func() bool) bool {
	c := &combining{search: s}
	for budget := int64(firstBudget); !s.over() && budget < s.limit; budget *= 4 {
		if c.listed() && c.close(budget) || s.within(budget, run) || s.done() {
			return true
		}
	}
	return false
}

// combining decides combinations of sticks one by one.
type combining struct {
	*search
	known bool          // the combinations are few enough to be gone through
	open  []combination // not decided yet
	ruled []combination // none of these yields all the pieces
	worth *prices       // by the length that pieces fill
}

// listed lists the combinations once they are few enough. With one stock length
// there is nothing to choose.
func (c *combining) listed() bool {
	if !c.known && len(c.stocks) > 1 {
		c.open, c.known = c.combinations()
	}
	return c.known
}

// close works on each combination that is open and returns true when none is
// left. One that is covered by another without a plan has none either.
func (c *combining) close(budget int64) bool {
	last := c.used + budget
	var open []combination
	for _, k := range c.open {
		if k.weight > c.target || slices.ContainsFunc(c.ruled, func(r combination) bool { return r.covers(&k, c.task) }) {
			continue
		}
		if c.used > last || c.over() {
			open = append(open, k)
			continue
		}
		best := c.best
		closed := c.yieldsAll(&k, budget)
		switch {
		case c.done():
			return true
		case c.best != best && k.weight > c.target: // a plan better than k could give
		case closed:
			c.ruled = append(c.ruled, k)
		default:
			open = append(open, k)
		}
	}
	c.open = slices.DeleteFunc(open, func(k combination) bool { return k.weight > c.target })
	return len(c.open) == 0
}

// yieldsAll searches for a plan on just the sticks of a combination, among the
// patterns that waste no more than it has to spare. It returns whether the search
// was closed.
func (c *combining) yieldsAll(k *combination, budget int64) bool {
	if c.worth == nil {
		c.worth = c.lengths()
	}
	list, ok := c.list(c.worth, k.waste, int(min(budget/stepsOfPattern, longList)))
	if !ok {
		return false
	}
	m := c.fresh(k)
	if m == nil {
		return true
	}
	return c.within(budget/4, newListed(c.search, m, list, math.MinInt64/4).run) || c.done()
}

// lengths are prices by which a stick is worth what pieces fill of it, so that
// what a pattern falls short of is its waste.
func (t *task) lengths() *prices {
	p := &prices{scale: 1, yields: t.fullest()}
	for _, k := range t.pieces {
		p.dual = append(p.dual, k.uses)
	}
	return p
}

// fresh returns a master that takes the sticks of the combination, or none when
// that leaves no plan.
func (c *combining) fresh(k *combination) *master {
	m := newMaster(c.task)
	var bands []band
	for j, n := range k.sticks {
		bands = append(bands, band{m.stockRow(j), n, n})
	}
	if !m.narrow(bands) && m.ruledOut() {
		return nil
	}
	return m
}
