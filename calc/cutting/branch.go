package cutting

import (
	"math"
	"slices"
)

// branch divides a node in two and searches both, the one that asks for more
// first.
func (e *listed) branch(alive []int32) bool {
	before := e.m.keep()
	if row, n := e.m.splitCount(); row >= 0 {
		return e.branchCount(alive, before, row, n)
	}
	if p, share := e.splitPair(); share > 0 {
		return e.branchPair(alive, before, p, int(share))
	}
	if i, n := e.splitPattern(); i >= 0 {
		return e.branchPattern(alive, before, i, n)
	}
	// Whole, yet not a plan: rounding has the better of the search here.
	return false
}

func (e *listed) branchCount(alive []int32, before *state, row, n int) bool {
	l := e.m.logical[row]
	lo, hi := e.m.lo[l], e.m.hi[l]
	e.m.lo[l] = float64(n + 1)
	closed := e.visit(alive)
	e.back(before, alive)
	e.m.lo[l] = lo
	if e.done() {
		return true
	}
	e.m.hi[l] = float64(n)
	closed = e.visit(alive) && closed
	e.m.hi[l] = hi
	return closed
}

func (e *listed) branchPair(alive []int32, before *state, p pair, n int) bool {
	e.addPair(p, float64(n+1), math.Inf(1))
	closed := e.visit(alive)
	e.back(before, alive)
	if e.done() {
		return true
	}
	if n == 0 {
		apart := slices.DeleteFunc(slices.Clone(alive), func(i int32) bool { return e.holdsPair(i, p) })
		e.restrict(apart)
		return e.visit(apart) && closed
	}
	e.addPair(p, 0, float64(n))
	return e.visit(alive) && closed
}

func (e *listed) branchPattern(alive []int32, before *state, i int32, n int) bool {
	least, most := e.least[i], e.most[i]
	e.least[i] = int32(n + 1)
	e.restrict(alive)
	closed := e.visit(alive)
	e.least[i] = least
	e.back(before, alive)
	if e.done() {
		return true
	}
	e.most[i] = int32(n)
	e.restrict(alive)
	closed = e.visit(alive) && closed
	e.most[i] = most
	return closed
}

// addPair adds the row that counts the sticks that hold the pair.
func (e *listed) addPair(p pair, lo, hi float64) {
	e.m.pairs = append(e.m.pairs, p)
	e.m.addRow(lo, hi, func(j int32) float64 {
		if e.m.role[j] == sawn && e.source[j] >= 0 && e.holdsPair(e.source[j], p) {
			return 1
		}
		return 0
	})
	e.m.settle()
	for len(e.source) < len(e.m.role) {
		e.source = append(e.source, -1)
	}
}

// splitPair returns the pair of pieces whose number of shared sticks is farthest
// from whole, and that number; zero when all are whole.
func (e *listed) splitPair() (pair, float64) {
	n := len(e.pieces)
	m := e.m
	var touched []int
	for j, r := range m.role {
		x := m.at(int32(j)) // a column out of the basis may stand at a bound above zero
		if r != sawn || x < 1e-7 {
			continue
		}
		parts := m.pattern[j].parts
		for a, q := range parts {
			for _, r := range parts[a:] {
				if q.piece == r.piece && q.count < 2 {
					continue
				}
				at := int(q.piece)*n + int(r.piece)
				if q.piece > r.piece {
					at = int(r.piece)*n + int(q.piece)
				}
				if e.shares[at] == 0 {
					touched = append(touched, at)
				}
				e.shares[at] += x
			}
		}
	}
	slices.Sort(touched)
	best, found, share := 0.01, pair{}, 0.0
	for _, at := range touched {
		v := e.shares[at]
		a, b := at/n, at%n
		if f := min(v, 1-v); f > best && min(e.pieces[a].need, e.pieces[b].need) == 1 {
			best, found, share = f, pair{int32(a), int32(b)}, v
		}
		e.shares[at] = 0
	}
	return found, share
}

// splitPattern returns the pattern whose number of sticks is farthest from
// whole, with the number rounded down, or -1.
func (e *listed) splitPattern() (int32, int) {
	best, found, count := 1e-5, int32(-1), 0
	for place, j := range e.m.basis {
		if e.m.role[j] != sawn {
			continue
		}
		v := e.m.x[place]
		down := math.Floor(v + 1e-6)
		if f := v - down; f > best {
			best, found, count = f, e.source[j], int(down)
		}
	}
	return found, count
}

// state is the basis of a master, to come back to after a branch.
type state struct {
	rows    int
	pairs   int
	basis   []int32
	where   []int32
	inverse []float64
}

// keep returns the basis as it stands.
func (m *master) keep() *state {
	b := &state{rows: m.rows, pairs: len(m.pairs), basis: slices.Clone(m.basis), where: slices.Clone(m.where)}
	b.inverse = make([]float64, 0, m.rows*m.rows)
	m.use(2*m.rows*m.rows + 4*len(m.where))
	for _, line := range m.inverse {
		b.inverse = append(b.inverse, line[:m.rows]...)
	}
	return b
}

// back returns the master to the state kept, and the patterns to those alive.
func (e *listed) back(b *state, alive []int32) {
	m := e.m
	for r := b.rows; r < m.rows; r++ {
		l := m.logical[r]
		m.index[l], m.value[l], m.lo[l], m.hi[l] = nil, nil, 0, 0
	}
	for j := range m.index {
		for n := len(m.index[j]); n > 0 && int(m.index[j][n-1]) >= b.rows; n-- {
			m.index[j], m.value[j] = m.index[j][:n-1], m.value[j][:n-1]
		}
		m.where[j] = atLower
	}
	copy(m.where, b.where)
	m.rows, m.pairs = b.rows, m.pairs[:b.pairs]
	m.basis = append(m.basis[:0], b.basis...)
	m.inverse, m.x, m.dual, m.work = m.inverse[:b.rows], m.x[:b.rows], m.dual[:b.rows], m.work[:b.rows]
	for i := range m.inverse {
		m.inverse[i] = append(m.inverse[i][:0], b.inverse[i*b.rows:(i+1)*b.rows]...)
	}
	e.restrict(alive)
}
