package cutting

import "math"

// master is the pattern relaxation of a task: the least weight of patterns, in
// any fractions, that yield every piece. Its rows are the pieces, the limits,
// and, when branching may need them, the sticks of each stock length; pairs of pieces
// follow when the search branches on them.
//
// Source: P.C. Gilmore and R.E. Gomory, Operations Research 9 (1961) 849–859
// and 11 (1963) 863–888, from memory.
type master struct {
	simplex
	task    *task
	bare    bool      // sticks weigh nothing while it is asked what is possible at all
	counted bool      // each stock length has a row that counts its sticks
	scale   int64     // of the whole duals
	pattern []pattern // by column; without parts for the other columns
	role    []role    // by column
	prices  prices
	sack    knapsack
	failed  int // times the search of a stick ran out of steps
	pairs   []pair
}

// role says what a column of the master is.
type role int8

const (
	activity role = iota // of a row
	lack                 // a piece not cut, at a price no plan would pay
	swap                 // a long piece used for the next shorter piece
	sawn                 // a pattern
)

func (m *master) limitRow(k int) int { return len(m.task.pieces) + k }
func (m *master) tallyRow(k int) int { return m.limitRow(len(m.task.limits)) + k }
func (m *master) stockRow(j int) int { return m.tallyRow(len(m.task.tallies)) + j }

// countRows calls do for each row that counts sticks with what a stick of the
// stock length counts for in it.
func (m *master) countRows(stock int, do func(row int, counts int64)) {
	for k, l := range m.task.limits {
		if l.coefficient[stock] != 0 {
			do(m.limitRow(k), l.coefficient[stock])
		}
	}
	for k, l := range m.task.tallies {
		if l.coefficient[stock] != 0 {
			do(m.tallyRow(k), l.coefficient[stock])
		}
	}
	if m.counted {
		do(m.stockRow(stock), 1)
	}
}

// newMaster lays down the rows, starting from sticks that yield one piece each.
func newMaster(t *task) *master {
	m := &master{task: t, simplex: simplex{budget: t.budget}, scale: t.scaling(), counted: len(t.stocks) > 1 || t.stocks[0].most < unlimited}
	none := func(int32) float64 { return 0 }
	inf := math.Inf(1)
	for _, k := range t.pieces {
		m.addRow(float64(k.need), inf, none)
	}
	for _, l := range t.limits {
		m.addRow(math.Inf(-1), float64(l.most), none)
	}
	for range t.tallies {
		m.addRow(0, inf, none)
	}
	if m.counted {
		for _, s := range t.stocks {
			hi := inf
			if s.most < unlimited {
				hi = float64(s.most)
			}
			m.addRow(0, hi, none)
		}
	}
	m.settle()
	m.addLacks()
	m.addSwaps()
	for j := range t.stocks {
		m.addPattern(pattern{stock: int32(j)})
	}
	return m
}

// lackPrice is the price of a piece not cut, in the heaviest sticks.
const lackPrice = 8

// settle keeps the records by column as long as the columns.
func (m *master) settle() {
	for len(m.role) < len(m.cost) {
		m.role = append(m.role, activity)
		m.pattern = append(m.pattern, pattern{})
	}
}

// addLacks lets each piece be short at a high price, which makes a basis, and
// puts them into it.
func (m *master) addLacks() {
	heavy := 1.0
	for _, w := range m.task.weight {
		heavy = max(heavy, float64(w))
	}
	for i := range m.task.pieces {
		j := m.addColumn([]int32{int32(i)}, []float64{1}, lackPrice*heavy, 0, math.Inf(1))
		m.settle()
		m.role[j] = lack
		// The lack takes the place of the activity of its row.
		m.where[m.logical[i]] = atLower
		m.basis[i], m.where[j] = j, int32(i)
		m.inverse[i][i] = 1
	}
	m.recompute()
}

// addSwaps lets a piece of a piece serve as the next shorter one. It holds the
// duals in the order of the lengths and so saves rounds.
//
// Source: J.M. Valério de Carvalho, INFORMS Journal on Computing 17 (2005),
// from memory.
func (m *master) addSwaps() {
	for i := range len(m.task.pieces) - 1 {
		if i+1 == m.task.reserve || i == m.task.reserve {
			continue
		}
		j := m.addColumn([]int32{int32(i), int32(i + 1)}, []float64{-1, 1}, 0, 0, math.Inf(1))
		m.settle()
		m.role[j] = swap
	}
}

// addPattern adds a pattern as a column.
func (m *master) addPattern(p pattern) int32 {
	var index []int32
	var value []float64
	for _, q := range p.parts {
		index = append(index, q.piece)
		value = append(value, float64(q.count))
	}
	m.countRows(int(p.stock), func(row int, counts int64) {
		index = append(index, int32(row))
		value = append(value, float64(counts))
	})
	for k, pr := range m.pairs {
		if pr.in(p.parts) {
			index = append(index, int32(m.pairRow(k)))
			value = append(value, 1)
		}
	}
	weight := float64(m.task.weight[p.stock])
	if m.bare {
		weight = 0
	}
	j := m.addColumn(index, value, weight, 0, math.Inf(1))
	m.settle()
	m.role[j], m.pattern[j] = sawn, p
	return j
}

// relax brings the relaxation to its least weight over all patterns and
// returns the bound that its duals prove, times the scale. mostOf tells how
// many of a piece are still worth having.
func (m *master) relax(mostOf func(i, j int) int) int64 {
	for before := -1; ; {
		m.primal()
		p := m.whole()
		// Patterns that entered and moved nothing differ by rounding alone.
		result := m.price(p, mostOf, m.pivots == before || m.over())
		if !result.entered {
			return p.fixed - result.excess
		}
		before = m.pivots
	}
}

// pricing is what came of looking for patterns worth more than they weigh.
type pricing struct {
	entered bool  // some were found and added
	excess  int64 // Σ of what sticks may be worth too much, small when none entered
}

// price looks for the best pattern of each stock length and adds those worth more
// than they weigh. At the last round none is added.
func (m *master) price(p *prices, mostOf func(i, j int) int, last bool) pricing {
	t := m.task
	m.sack.sort(t, p.dual[:len(t.pieces)])
	var result pricing
	filled := false
	for j := len(t.stocks) - 1; j >= 0; j-- {
		most := func(i int) int { return mostOf(i, j) }
		room, yields := t.stocks[j].room, p.yields[j]
		var parts []part
		best, proven := yields, yields
		if m.searchStick(room, yields, j, most, last) {
			best, proven = m.sack.best, max(m.sack.best, m.sack.passed)
			if best > yields {
				parts = m.sack.parts()
			}
		} else {
			m.fillTable(p, j, most, &filled)
			best = max(yields, m.sack.table.rows[0][room])
			proven = best
			if best > yields {
				parts = m.sack.table.parts(t.pieces, p.dual, room)
			}
		}
		if !last && best-yields > m.slack(j) {
			m.addPattern(t.stick(j, parts))
			result.entered = true
		} else if proven > yields {
			result.excess += (proven - yields) * t.mostSticks(j)
		}
	}
	return result
}

// slack is by how much a stick may be worth too much before it counts.
func (m *master) slack(j int) int64 {
	return int64(float64(m.scale) * 1e-7 * float64(max(m.task.weight[j], 1)))
}

// searchStick tries the depth-first search, unless it failed before. A stick
// worth more than it weighs will do, though it may not be the best there is,
// unless this is the last round. Where the table would be too large there is
// no limit to the steps that close the search.
func (m *master) searchStick(room, above int64, j int, most func(int) int, last bool) bool {
	steps := 200 + int(room)*len(m.task.pieces)/16
	table := m.sack.table.fits(len(m.task.pieces), m.task.widest())
	if !table {
		steps = 2_000
	} else if m.failed > 3 {
		return false
	}
	closed := m.sack.search(room, above, most, steps)
	m.use(stepsOfScan * (steps - m.sack.steps))
	if closed || !last && m.sack.best > above+m.slack(j) {
		return true
	}
	if !table {
		m.use(m.sack.searchAll(room, above, most, int(m.left()/stepsOfScan)))
		return true
	}
	m.failed++
	return false
}

// fillTable works the table out once for all stock lengths, or anew where a stock length
// has its own numbers.
func (m *master) fillTable(p *prices, j int, most func(int) int, filled *bool) {
	if *filled && m.task.reserve < 0 {
		return
	}
	room := m.task.stocks[j].room
	m.use(m.sack.table.fill(m.task.pieces, p.dual, room, most))
	*filled = true
}

// widest returns the largest room.
func (t *task) widest() int64 {
	room := int64(0)
	for _, s := range t.stocks {
		room = max(room, s.room)
	}
	return room
}

// stick makes a pattern of parts of a stick.
func (t *task) stick(j int, parts []part) pattern {
	used := int64(0)
	for _, q := range parts {
		used += int64(q.count) * t.pieces[q.piece].uses
	}
	return pattern{stock: int32(j), parts: parts, used: used}
}

// pair is two pieces, or one piece twice, in one stick.
type pair struct{ a, b int32 }

func (m *master) pairRow(k int) int {
	if m.counted {
		k += len(m.task.stocks)
	}
	return m.stockRow(0) + k
}

// in looks for the pair among the parts of a stick.
func (p pair) in(parts []part) bool {
	a, b := false, false
	for _, q := range parts {
		if q.piece == p.a {
			a = p.a != p.b || q.count >= 2
			b = b || p.a == p.b
		}
		if q.piece == p.b {
			b = true
		}
	}
	return a && b
}
