package cutting

import (
	"math"
	"slices"
)

// turn is how far each way of closing the search goes before the other has its
// turn.
type turn struct {
	nodes int // of the relaxation, and of the packing as many
	rise  int // of the relaxation from the bound upwards
	each  int // of the relaxation of one combination
	list  int // patterns that the relaxation of one combination may have
	steps int // of the packing of one
}

// firstTurn is how many relaxations come before everything else.
const firstTurn = 200

// turns widen as the search goes on, so that an easy way out is found first.
var turns = []turn{
	{150, 0, 40, 3_000, 5_000}, {600, 0, 100, 10_000, 50_000}, {2_400, 2_400, 400, 40_000, 400_000}, {9_600, 9_600, 5_000, longList, 2_000_000},
}

// stepsOfNode is how many steps of the packing count as one node.
const stepsOfNode = 1_000

// alternate lets the relaxation and the combinations of sticks take turns until
// one of them has closed the search. run begins anew each time, with the best
// plan known by then.
func (s *search) alternate(run func() bool) bool {
	c := &combining{search: s}
	for _, t := range turns {
		if c.ready() && (c.pack(t) || c.relax(t)) || s.quota(t.nodes, run) || s.rise(t.rise, run) {
			return true
		}
		if s.nodes >= s.limit {
			return false
		}
	}
	return s.rise(s.limit, run)
}

// ready lists the combinations once they are few enough.
func (c *combining) ready() bool {
	if c.packer != nil {
		return true
	}
	all, ok := c.combinations()
	if ok {
		c.open, c.packer = all, c.newPacker()
	}
	return ok
}

// quota runs with no more than so many nodes.
func (s *search) quota(nodes int, run func() bool) bool {
	limit := s.limit
	s.limit = min(limit, s.nodes+nodes)
	closed := run()
	s.limit = limit
	return closed || s.done()
}

// combining decides combinations of sticks one by one.
type combining struct {
	*search
	packer *packer
	open   []combination
	ruled  []combination // none of these packs
}

// pack tries to pack every combination that is open within the number of steps,
// and says whether none is left open.
func (c *combining) pack(t turn) bool {
	last := c.nodes + t.nodes
	return c.each(func(k *combination) (bool, bool) {
		if c.nodes > last {
			return false, false
		}
		steps := t.steps
		l, done := c.packer.pack(k, steps)
		c.nodes += (steps-c.packer.steps)/stepsOfNode + 1
		found := l != nil && c.offer(l)
		return found, done && (found || l == nil)
	})
}

// relax tries to close what is left open by the relaxation, each combination by
// itself with the patterns that do not waste more than it has to spare.
func (c *combining) relax(t turn) bool {
	last := c.nodes + t.nodes
	return c.each(func(k *combination) (bool, bool) {
		if c.nodes > last {
			return false, false
		}
		list, ok := c.list(c.lengths(), k.waste, t.list)
		c.nodes += t.list / 500 // a long list costs as much as several nodes
		if !ok || len(c.shelves) == 1 {
			return false, false
		}
		m := c.fresh(k)
		if m == nil {
			return false, true
		}
		best := c.best
		closed := c.quota(t.each, newListed(c.search, m, list, math.MinInt64/4).run)
		return c.best != best, closed
	})
}

// each decides combinations by a rule that says whether a plan was found and
// whether the combination is decided, and says whether none is left open.
func (c *combining) each(decide func(*combination) (bool, bool)) bool {
	var open []combination
	for i := range c.open {
		k := &c.open[i]
		if k.weight > c.target || slices.ContainsFunc(c.ruled, func(r combination) bool { return r.covers(k, c.task) }) {
			continue
		}
		if c.nodes >= c.limit {
			open = append(open, *k)
			continue
		}
		found, decided := decide(k)
		switch {
		case c.done():
			return true
		case found && k.weight > c.target:
		case decided:
			c.ruled = append(c.ruled, *k)
		default:
			open = append(open, *k)
		}
	}
	c.open = slices.DeleteFunc(open, func(k combination) bool { return k.weight > c.target })
	return len(c.open) == 0
}

// lengths are prices by which a stick is worth what pieces fill of it, so that
// what a pattern falls short of is its waste.
func (t *task) lengths() *prices {
	p := &prices{scale: 1, yields: t.fullest()}
	for _, k := range t.kinds {
		p.dual = append(p.dual, k.take)
	}
	return p
}

// fresh returns a master that takes the sticks of the combination, or none when
// that leaves no plan.
func (c *combining) fresh(k *combination) *master {
	m := newMaster(c.task)
	var bands []band
	for j, n := range k.sticks {
		bands = append(bands, band{m.shelfRow(j), n, n})
	}
	if !m.narrow(bands) && m.ruledOut() {
		return nil
	}
	return m
}
