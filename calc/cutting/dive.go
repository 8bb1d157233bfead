package cutting

import (
	"math"
	"slices"
)

// Limits of a dive.
const (
	diveNodes    = 150
	otherChoices = 3 // at how many places it may choose anew
)

// dive fixes one pattern after another at a whole number of sticks, pricing
// anew for what is left each time, until all is cut or the target is passed.
// It leaves the master as it found it.
func (s *search) dive(m *master) {
	need := make([]int, len(s.pieces))
	for i, k := range s.pieces {
		need[i] = k.need
	}
	mostOf := func(i, j int) int { return min(s.mostOf(i, j), need[i]) }
	bounds := m.countBounds()
	for !s.spent() && m.total() <= float64(s.target)+1e-6 && m.fixCount() {
		m.relax(mostOf)
		if s.round(m) && s.done() {
			break
		}
	}
	s.dived = s.nodes + diveNodes
	s.plunge(m, need, mostOf, otherChoices, nil)
	m.release(bounds)
}

// countBounds returns the bounds on the rows that count sticks.
func (m *master) countBounds() [][2]float64 {
	var bounds [][2]float64
	for row := m.tallyRow(0); row < m.pairRow(0); row++ {
		l := m.logical[row]
		bounds = append(bounds, [2]float64{m.lo[l], m.hi[l]})
	}
	return bounds
}

// fixCount holds one row that counts sticks at the whole number nearest to it,
// and is false when all were whole already.
func (m *master) fixCount() bool {
	row, n := m.splitCount()
	if row < 0 {
		return false
	}
	l := m.logical[row]
	if m.at(l)-float64(n) > 0.5 || row < m.stockRow(0) {
		n++
	}
	m.lo[l], m.hi[l] = float64(n), float64(n)
	m.repair()
	return true
}

// total returns the weight of the relaxation.
func (m *master) total() float64 {
	sum := 0.0
	for j, c := range m.cost {
		if c != 0 {
			sum += c * m.at(int32(j))
		}
	}
	return sum
}

// plunge fixes patterns until all is cut or no plan within the target is left,
// and then goes back to as many places as told to fix another one there.
func (s *search) plunge(m *master, need []int, mostOf func(i, j int) int, others int, barred []int32) {
	if s.spent() || s.nodes > s.dived {
		return
	}
	m.relax(mostOf)
	if m.total() > float64(s.target)+1e-6 || s.roundFixed(m, need) && s.done() {
		return
	}
	lo, before := slices.Clone(m.lo), slices.Clone(need)
	for ; others >= 0; others-- {
		j := m.fix(need, barred)
		if j < 0 {
			return
		}
		s.plunge(m, need, mostOf, others, barred)
		if s.done() || s.nodes > s.dived || s.over() || j == wholes || others == 0 {
			return
		}
		barred = append(barred[:len(barred):len(barred)], j)
		clear(m.lo[len(lo):])
		copy(m.lo, lo)
		copy(need, before)
		m.allow(need, barred)
		m.relax(mostOf)
		if m.total() > float64(s.target)+1e-6 {
			return
		}
	}
}

// wholes is in the place of a column where fix raised several.
const wholes = math.MaxInt32

// fix raises the lower bounds of patterns to the whole sticks they have, or of
// the pattern nearest to its next whole number, and books what they yield. It
// returns the column of that, or -1 when there is none.
func (m *master) fix(need []int, barred []int32) int32 {
	fixed := false
	nearest, best := int32(-1), 1e-4
	for _, j := range m.basis {
		if m.role[j] != sawn || len(m.pattern[j].parts) == 0 {
			continue
		}
		v := m.at(j) - m.lo[j]
		if whole := math.Floor(v + 1e-5); whole >= 1 {
			m.raise(j, int(whole), need)
			fixed = true
		} else if v > best {
			nearest, best = j, v
		}
	}
	if fixed {
		nearest = wholes
	} else {
		if nearest < 0 {
			return nearest
		}
		m.raise(nearest, 1, need)
	}
	m.allow(need, barred)
	return nearest
}

// allow opens the patterns that are still needed in all their parts, but for
// those barred.
func (m *master) allow(need []int, barred []int32) {
	for j, r := range m.role {
		if r == sawn {
			m.hi[j] = math.Inf(1)
			if !within(m.pattern[j].parts, need) {
				m.hi[j] = m.lo[j]
			}
		}
	}
	for _, j := range barred {
		m.hi[j] = m.lo[j]
	}
	m.recompute()
	m.repair()
}

// raise fixes so many more sticks of a pattern, as far as its pieces are still
// needed at all.
func (m *master) raise(j int32, times int, need []int) {
	for ; times > 0 && within(m.pattern[j].parts, need); times-- {
		m.lo[j]++
		for _, q := range m.pattern[j].parts {
			need[q.piece] -= int(q.count)
		}
	}
}

// within keeps a dive from cutting more of a piece than is left to cut.
func within(parts []part, need []int) bool {
	for _, q := range parts {
		if int(q.count) > need[q.piece] {
			return false
		}
	}
	return true
}

// roundFixed completes the sticks fixed so far by the quick rule.
func (s *search) roundFixed(m *master, need []int) bool {
	l := &layout{}
	taken := make([]int, len(s.stocks))
	for j, r := range m.role {
		if r == sawn && m.lo[j] > 0 {
			n := int(m.lo[j])
			l.add(m.pattern[j], n)
			taken[m.pattern[j].stock] += n
		}
	}
	rest := s.complete(need, taken)
	if rest == nil {
		return false
	}
	l.patterns = append(l.patterns, rest.patterns...)
	l.times = append(l.times, rest.times...)
	return s.offer(l)
}

// release takes all the fixings back.
func (m *master) release(bounds [][2]float64) {
	for k, b := range bounds {
		l := m.logical[m.tallyRow(0)+k]
		m.lo[l], m.hi[l] = b[0], b[1]
		if m.where[l] == atUpper && math.IsInf(b[1], 1) {
			m.where[l] = atLower
		}
	}
	for j, r := range m.role {
		if r == sawn {
			m.lo[j], m.hi[j] = 0, math.Inf(1)
			if m.where[j] == atUpper {
				m.where[j] = atLower
			}
		}
	}
	m.recompute()
	m.repair()
}
