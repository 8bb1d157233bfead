package cutting

import (
	"math"
	"slices"
)

// lacking relaxations prove nothing of what a plan costs: pieces are left uncut.
func (m *master) lacking() bool {
	for place, j := range m.basis {
		if m.role[j] == lack && m.x[place] > 1e-7 {
			return true
		}
	}
	return false
}

// possible rules a node out by its bounds on rows alone: it looks for
// the fewest pieces lacking when sticks weigh nothing, and a bound above zero
// proves that none is possible. Otherwise lacking pieces are ruled out until
// the next call of mayLack.
func (m *master) possible(relax func() int64) bool {
	weights := make([]float64, len(m.cost))
	copy(weights, m.cost)
	m.weigh(func(j int) float64 {
		if m.role[j] == lack {
			return 1
		}
		return 0
	})
	m.bare = true
	bound := relax()
	m.bare = false
	if bound <= 0 {
		for j, r := range m.role {
			if r == lack {
				m.hi[j] = 0
			}
		}
	}
	m.weigh(func(j int) float64 {
		switch m.role[j] {
		case lack:
			return weights[j]
		case sawn:
			return float64(m.task.weight[m.pattern[j].stock])
		default:
			return 0
		}
	})
	return bound <= 0
}

// ruledOut proves that the bounds on the rows that count sticks rule out any
// plan, after a repair has failed.
func (m *master) ruledOut() bool {
	m.bare = true
	p := m.whole()
	m.bare = false
	return p.fixed > 0 && slices.Min(p.yields) >= 0
}

// weigh gives every column the weight told.
func (m *master) weigh(weight func(j int) float64) {
	for j := range m.cost {
		m.cost[j] = weight(j)
	}
	m.recompute()
}

// mayLack lets pieces lack again.
func (m *master) mayLack() {
	for j, r := range m.role {
		if r == lack {
			m.hi[j] = math.Inf(1)
		}
	}
}
