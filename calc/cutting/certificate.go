package cutting

import "math/bits"

// scaling returns by how much the duals are multiplied before they become
// whole numbers: as much as leaves room for sums of some hundreds of them.
func (t *task) scaling() int64 {
	largest := int64(1)
	for _, w := range t.weight {
		largest = max(largest, w)
	}
	return 1 << max(1, 44-bits.Len64(uint64(largest)))
}

// prices are duals in whole numbers: of the rows, and what a stick of each
// stock length may yield for them. They prove a bound by themselves, however they were
// found:
//
//	bound = Σ over rows of dual · (its least or most activity) − Σ over stock lengths of excess · sticks
//
// where the excess is by how much the best stick of the stock length is worth more
// than it weighs. Each plan weighs at least that, divided by the scale.
type prices struct {
	scale  int64
	dual   []int64
	yields []int64 // weight less the duals of the rows that count sticks, by stock length
	fixed  int64   // Σ over rows of dual · activity
}

// whole rounds the duals of the programme to whole numbers. Duals of rows with
// no upper bound are kept from going below zero, of those with no lower bound
// from going above.
func (m *master) whole() *prices {
	p := &m.prices
	p.scale = m.scale
	p.fixed = 0
	p.dual = p.dual[:0]
	for r := range m.rows {
		d := int64(m.dual[r] * float64(m.scale))
		l := m.logical[r]
		lo, hi := m.lo[l], m.hi[l]
		switch {
		case d < 0 && hi > 1e15, d > 0 && lo < -1e15:
			d = 0
		case d > 0:
			p.fixed += d * int64(lo)
		case d < 0:
			p.fixed += d * int64(hi)
		}
		p.dual = append(p.dual, d)
	}
	p.yields = p.yields[:0]
	for j := range m.task.stocks {
		y := m.task.weight[j] * m.scale
		if m.bare {
			y = 0
		}
		m.countRows(j, func(row int, counts int64) { y -= p.dual[row] * counts })
		p.yields = append(p.yields, y)
	}
	return p
}

// worth returns what the parts of a stick are worth.
func (p *prices) worth(parts []part) int64 {
	v := int64(0)
	for _, q := range parts {
		v += p.dual[q.piece] * int64(q.count)
	}
	return v
}
