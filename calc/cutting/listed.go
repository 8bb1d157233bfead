package cutting

import (
	"math"
	"slices"
)

// listed searches all plans made of a list of patterns, by branching on the
// sticks of a stock length, on how often two pieces share a stick, and on a pattern.
// Each node is closed by a bound in whole numbers.
type listed struct {
	*search
	m      *master
	pool   []pattern
	words  int      // of 64 bits in a set of pieces
	once   []uint64 // sets of the pieces in each pattern
	twice  []uint64 // of those that it holds two of
	column []int32  // of the pool pattern in the master, or -1
	source []int32  // of the column, the pool pattern, or -1
	least  []int32  // sticks that the branch asks for, by pool pattern
	most   []int32  // sticks that the branch allows, -1 for any
	reach  []int64  // most sticks of each stock length
	cost   []int64  // reduced costs at the node
	mark   []int32
	stamp  int32
	shares []float64 // scratch, by pair of pieces
}

// newListed takes a master over: only the patterns listed, and its own that can
// matter, stay in use.
func newListed(s *search, m *master, list []pattern, bound int64) *listed {
	e := &listed{search: s, m: m, pool: list}
	m.recompute()
	gap := s.target*m.scale - bound
	for j, r := range m.role {
		switch r {
		case swap:
			m.hi[j] = 0
		case sawn:
			p := m.pattern[j]
			if len(p.parts) > 0 && m.prices.yields[p.stock]-m.prices.worth(p.parts) > gap+m.slack(int(p.stock)) {
				m.hi[j] = 0
				continue
			}
			e.pool = append(e.pool, p)
		}
	}
	e.describe()
	at := len(list)
	for j, r := range m.role {
		e.source = append(e.source, -1)
		if r == sawn && m.hi[j] > 0 {
			e.source[j], e.column[at] = int32(at), int32(j)
			at++
		}
	}
	for j := range s.stocks {
		e.reach = append(e.reach, s.mostSticks(j))
	}
	return e
}

// describe works out the sets of pieces of each pattern.
func (e *listed) describe() {
	n := len(e.pool)
	e.use(20 * n * (1 + len(e.pieces)/64))
	e.words = (len(e.pieces) + 63) / 64
	e.once = make([]uint64, n*e.words)
	e.twice = make([]uint64, n*e.words)
	e.column = make([]int32, n)
	e.least = make([]int32, n)
	e.most = make([]int32, n)
	e.cost = make([]int64, n)
	e.mark = make([]int32, n)
	for i, p := range e.pool {
		e.column[i], e.most[i] = -1, -1
		for _, q := range p.parts {
			at, bit := i*e.words+int(q.piece)/64, uint64(1)<<(q.piece%64)
			e.once[at] |= bit
			if q.count >= 2 {
				e.twice[at] |= bit
			}
		}
	}
	e.shares = make([]float64, len(e.pieces)*len(e.pieces))
}

// holdsPair looks in the sets, since it is asked of every pattern at every node.
func (e *listed) holdsPair(i int32, p pair) bool {
	at := int(i) * e.words
	set := e.once
	if p.a == p.b {
		set = e.twice
	}
	return set[at+int(p.a)/64]>>(p.a%64)&1 == 1 && e.once[at+int(p.b)/64]>>(p.b%64)&1 == 1
}

// run searches the whole list, and is false when the budget ended it.
func (e *listed) run() bool {
	alive := make([]int32, len(e.pool))
	for i := range alive {
		alive[i] = int32(i)
	}
	e.restrict(alive)
	return e.visit(alive)
}

// restrict puts the columns of patterns that are not alive out of use, and
// brings the master back within its bounds.
func (e *listed) restrict(alive []int32) {
	e.stamp++
	e.use(len(alive) + len(e.m.role))
	for _, i := range alive {
		e.mark[i] = e.stamp
	}
	m := e.m
	for j := range m.role {
		if m.role[j] != sawn {
			continue
		}
		i := e.source[j]
		m.lo[j], m.hi[j] = 0, 0
		if i >= 0 && e.mark[i] == e.stamp {
			m.lo[j], m.hi[j] = float64(e.least[i]), math.Inf(1)
			if e.most[i] >= 0 {
				m.hi[j] = float64(e.most[i])
			}
		}
		if m.where[j] == atUpper && math.IsInf(m.hi[j], 1) {
			m.where[j] = atLower
		}
	}
	m.recompute()
}

// relax prices the patterns alive until none is worth more than it weighs, and
// returns the bound, times the scale: the largest number when no plan is left.
func (e *listed) relax(alive []int32) int64 {
	m := e.m
	for !m.repair() {
		m.bare = true
		bound, worst := e.scan(m.whole(), alive)
		m.bare = false
		if len(worst) == 0 {
			m.recompute()
			if bound > 0 {
				return math.MaxInt64
			}
			break
		}
		e.enter(worst)
		m.recompute()
	}
	for before := -1; ; {
		m.primal()
		p := m.whole()
		bound, worst := e.scan(p, alive)
		if len(worst) == 0 || m.pivots == before || e.over() {
			return bound
		}
		before = m.pivots
		e.enter(worst)
	}
}

// enter adds patterns to the master.
func (e *listed) enter(worst []int32) {
	for _, i := range worst {
		j := e.m.addPattern(e.pool[i])
		e.source = append(e.source, i)
		e.column[i] = j
		if e.most[i] >= 0 {
			e.m.hi[j] = float64(e.most[i])
		}
	}
}

// stepsOfScan is about what it takes to add up the worth of a pattern.
const stepsOfScan = 10

// batch is how many patterns enter the master at a time.
const batch = 24

// scan works out the reduced cost of every pattern alive, the bound that
// follows, and the patterns that are to enter.
func (e *listed) scan(p *prices, alive []int32) (int64, []int32) {
	m := e.m
	excess := make([]int64, len(e.stocks))
	bound := p.fixed
	e.use(stepsOfScan * len(alive))
	var pairs []int
	for k := range m.pairs {
		if p.dual[m.pairRow(k)] != 0 {
			pairs = append(pairs, k)
		}
	}
	var worst []int32
	for _, i := range alive {
		c := p.yields[e.pool[i].stock] - p.worth(e.pool[i].parts)
		for _, k := range pairs {
			if e.holdsPair(i, m.pairs[k]) {
				c -= p.dual[m.pairRow(k)]
			}
		}
		e.cost[i] = c
		switch {
		case c > 0:
			bound += c * int64(e.least[i])
		case e.most[i] >= 0:
			bound += c * int64(e.most[i])
		default:
			excess[e.pool[i].stock] = max(excess[e.pool[i].stock], -c)
		}
		if e.column[i] < 0 && -c > m.slack(int(e.pool[i].stock)) {
			worst = e.rank(worst, i)
		}
	}
	for j, x := range excess {
		bound -= x * e.reach[j]
	}
	return bound, worst
}

// rank keeps the batch of patterns with the lowest reduced costs.
func (e *listed) rank(worst []int32, i int32) []int32 {
	if len(worst) == batch {
		if e.cost[i] >= e.cost[worst[batch-1]] {
			return worst
		}
		worst = worst[:batch-1]
	}
	at := len(worst)
	for at > 0 && e.cost[worst[at-1]] > e.cost[i] {
		at--
	}
	return slices.Insert(worst, at, i)
}

// visit solves one node and those below it, and is false when one was left open.
func (e *listed) visit(alive []int32) bool {
	if e.spent() {
		return false
	}
	e.m.mayLack()
	bound := e.relax(alive)
	if e.beyond(e.m, bound) {
		return true
	}
	if e.m.lacking() {
		if !e.m.possible(func() int64 { return e.relax(alive) }) {
			return true
		}
		if bound = e.relax(alive); e.beyond(e.m, bound) {
			return true
		}
	}
	if l := e.whole(); l != nil {
		if e.offer(l) {
			return e.beyond(e.m, bound) || e.visit(alive)
		}
	} else if e.round(e.m) && e.beyond(e.m, bound) {
		return true
	}
	alive = e.within(alive, bound)
	return e.branch(alive)
}

// within returns the patterns alive that leave the bound within the target.
func (e *listed) within(alive []int32, bound int64) []int32 {
	gap := e.target*e.m.scale - bound
	n := 0
	for _, i := range alive {
		if e.cost[i] <= gap || e.least[i] > 0 {
			n++
		}
	}
	if n > len(alive)*7/8 {
		return alive
	}
	kept := make([]int32, 0, n)
	for _, i := range alive {
		if e.cost[i] <= gap || e.least[i] > 0 {
			kept = append(kept, i)
		}
	}
	return kept
}

// whole returns the layout of the relaxation when all its sticks are whole
// numbers and nothing is lacking.
func (e *listed) whole() *layout {
	m := e.m
	l := &layout{}
	need := make([]int, len(e.pieces))
	for i, k := range e.pieces {
		need[i] = k.need
	}
	taken := make([]int, len(e.stocks))
	for j, r := range m.role {
		if r != sawn && r != lack {
			continue
		}
		v := m.at(int32(j))
		n := math.Round(v)
		if math.Abs(v-n) > 1e-5 || r == lack && n != 0 {
			return nil
		}
		if n > 0 {
			l.book(m.pattern[j], int(n), need, taken)
		}
	}
	for _, n := range need {
		if n > 0 {
			return nil
		}
	}
	return l
}
