package cutting

import (
	"math"
	"slices"
)

// search answers a task. It gives up when the budget is used up, never by the
// clock.
type search struct {
	*task
	best    *layout
	weight  int64 // of best
	nodes   int
	dived   int         // nodes at which a dive ends
	closed  bool        // the answer is proven
	proof   certificate // of the bound at the root
	seeds   []pattern
	tooWide map[int]float64 // by limit of the list, the gap at which it was passed
}

// certificate is a bound with the duals that prove it.
type certificate struct {
	bound  int64
	exact  int64 // the bound before it was rounded up, times the scale
	scale  int64
	dual   []int64 // of the pieces
	yields []int64
}

// Limits on the patterns listed before the search works on the list.
const (
	shortList = 4_000
	longList  = 150_000
)

// answer runs the search from a layout to start with, which may be nil.
func (t *task) answer(start *layout) *search {
	s := &search{task: t, weight: math.MaxInt64, proof: certificate{bound: t.floor}}
	if start != nil {
		s.offer(start)
	}
	if s.done() {
		return s
	}
	s.closed = s.explore(nil, 0) || s.done()
	return s
}

// done ends the search: the best plan meets the floor, so that none is better.
func (s *search) done() bool {
	if s.target < s.floor {
		s.closed = true
	}
	return s.target < s.floor
}

// offer takes a layout as the best when it is within the target and the limits.
func (s *search) offer(l *layout) bool {
	if l == nil {
		return false
	}
	l = s.exact(l)
	w := l.weighs(s.task.weight)
	// Settling may give a short piece the stick that a long one needs.
	if settled := s.settle(l); settled.weighs(s.task.weight) < w {
		l, w = settled, settled.weighs(s.task.weight)
	}
	if w > s.target || !s.fits(l) {
		return false
	}
	s.best, s.weight, s.target = l, w, w-1
	return true
}

// spent counts a node, and is true when the budget is used up.
func (s *search) spent() bool {
	s.nodes += 1 + len(s.pieces)/32
	return s.over()
}

// band bounds the activity of a row that counts sticks.
type band struct{ row, least, most int }

// explore searches all plans within the bands, and is true when none within the
// target is left.
func (s *search) explore(bands []band, depth int) bool {
	if s.spent() {
		return false
	}
	m := newMaster(s.task)
	if !m.narrow(bands) {
		return m.ruledOut()
	}
	for _, p := range s.seeds {
		m.addPattern(p)
	}
	if s.best != nil && depth == 0 {
		for _, p := range s.best.patterns {
			m.addPattern(p)
		}
	}
	bound := m.relax(s.mostOf)
	if m.lacking() && !s.beyond(m, bound) {
		if !m.possible(func() int64 { return m.relax(s.mostOf) }) {
			return true
		}
		bound = m.relax(s.mostOf)
	}
	s.keepSeeds(m)
	if depth == 0 {
		s.certify(m, bound)
	}
	if s.beyond(m, bound) || s.done() {
		return true
	}
	s.round(m)
	if s.beyond(m, bound) {
		return true
	}
	return s.closeBy(m, bound, bands, depth)
}

// closeBy closes a node by a short list of all the patterns that can matter, or
// by branching on the sticks of a stock length. The root is worked at by rounds with the
// combinations of sticks.
func (s *search) closeBy(m *master, bound int64, bands []band, depth int) bool {
	if list, ok := s.tryList(m, bound, shortList); ok {
		run := newListed(s, m, list, bound).run
		if depth > 0 {
			return run()
		}
		return s.within(firstBudget, run) || s.done() || s.inRounds(func() bool {
			return newListed(s, newMaster(s.task), list, math.MinInt64/4).run()
		})
	}
	if depth > 0 {
		return s.divide(m, bands, depth)
	}
	s.dive(m)
	if s.done() || s.beyond(m, bound) {
		return true
	}
	m.relax(s.mostOf)
	return s.inRounds(func() bool { return s.divide(m, bands, depth) })
}

// divide branches on the sticks of a stock length, or, when they are whole, works on a
// long list of patterns.
func (s *search) divide(m *master, bands []band, depth int) bool {
	row, n := m.splitCount()
	if row < 0 {
		// The sticks are whole already, so a dive asks only how to fill them.
		s.dive(m)
		bound := m.relax(s.mostOf)
		if s.done() || s.beyond(m, bound) {
			return true
		}
		if list, ok := s.list(&m.prices, s.target*m.scale-bound, longList); ok {
			return newListed(s, m, list, bound).run()
		}
		return false
	}
	below := append(slices.Clone(bands), band{row, 0, n})
	above := append(slices.Clone(bands), band{row, n + 1, unlimited})
	closed := s.explore(above, depth+1)
	if s.done() {
		return true
	}
	return s.explore(below, depth+1) && closed
}

// tryList lists the patterns that can matter, unless the list grew too long
// before at a gap not much wider.
func (s *search) tryList(m *master, bound int64, limit int) ([]pattern, bool) {
	gap := float64(s.target*m.scale - bound)
	if wide, tried := s.tooWide[limit]; tried && gap > 0.7*wide {
		return nil, false
	}
	list, ok := s.list(&m.prices, int64(gap), limit)
	if !ok {
		if s.tooWide == nil {
			s.tooWide = map[int]float64{}
		}
		s.tooWide[limit] = gap
	}
	return list, ok
}

// beyond closes a node: its bound, times the scale, passes the target.
func (s *search) beyond(m *master, bound int64) bool {
	return s.target < s.floor || bound > s.target*m.scale
}

// certify keeps the bound proven at the root.
func (s *search) certify(m *master, bound int64) {
	p := &m.prices
	n := len(s.pieces)
	weight := ceilDivide(bound, p.scale)
	if weight >= s.proof.bound {
		s.proof = certificate{
			bound: weight, exact: bound, scale: p.scale,
			dual: slices.Clone(p.dual[:n]), yields: slices.Clone(p.yields),
		}
	}
	s.floor = max(s.floor, weight)
}

// ceilDivide returns a/b rounded up, for b above zero.
func ceilDivide(a, b int64) int64 {
	if a > 0 {
		return (a-1)/b + 1
	}
	return a / b
}

// keepSeeds keeps the patterns of the basis for the next master.
func (s *search) keepSeeds(m *master) {
	s.seeds = s.seeds[:0]
	for j, r := range m.role {
		if r == sawn && m.where[j] >= 0 && len(m.pattern[j].parts) > 0 {
			s.seeds = append(s.seeds, m.pattern[j])
		}
	}
}

// narrow bounds the rows that count sticks, and is false when that leaves no
// plan at all.
func (m *master) narrow(bands []band) bool {
	for _, b := range bands {
		l := m.logical[b.row]
		m.lo[l] = max(m.lo[l], float64(b.least))
		if b.most < unlimited {
			m.hi[l] = min(m.hi[l], float64(b.most))
		}
	}
	return m.repair()
}

// splitCount returns the row that counts sticks whose activity is not whole,
// with the activity rounded down, or -1: a tally if there is one, otherwise the
// stock length farthest from whole.
func (m *master) splitCount() (int, int) {
	for k := range m.task.tallies {
		v := m.at(m.logical[m.tallyRow(k)])
		if down := math.Floor(v + 1e-6); v-down > 0.01 {
			return m.tallyRow(k), int(down)
		}
	}
	best, row, count := 0.01, -1, 0
	if !m.counted {
		return row, count
	}
	for j := range m.task.stocks {
		v := m.at(m.logical[m.stockRow(j)])
		down := math.Floor(v + 1e-6)
		if f := min(v-down, down+1-v); f > best {
			best, row, count = f, m.stockRow(j), int(down)
		}
	}
	return row, count
}

// round rounds the relaxation down and completes what is left.
func (s *search) round(m *master) bool {
	l := &layout{}
	need := make([]int, len(s.pieces))
	for i, k := range s.pieces {
		need[i] = k.need
	}
	taken := make([]int, len(s.stocks))
	for place, j := range m.basis {
		if m.role[j] != sawn || len(m.pattern[j].parts) == 0 {
			continue
		}
		if n := int(m.x[place] + 1e-6); n > 0 {
			l.book(m.pattern[j], n, need, taken)
		}
	}
	for i := range need {
		need[i] = max(need[i], 0)
	}
	rest := s.complete(need, taken)
	if rest == nil {
		return false
	}
	l.patterns = append(l.patterns, rest.patterns...)
	l.times = append(l.times, rest.times...)
	return s.offer(l)
}

// book adds sticks to the layout and books what they yield.
func (l *layout) book(p pattern, times int, need, taken []int) {
	l.add(p, times)
	for _, q := range p.parts {
		need[q.piece] -= int(q.count) * times
	}
	taken[p.stock] += times
}
