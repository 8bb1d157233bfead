package cutting

import (
	"math"
	"slices"
	"sort"

	"pierbook/calc/measure"
)

// solver works through the goals one after the other, each among the plans that
// are best by those before it.
type solver struct {
	*model
	kerf    int64 // in units of the model
	further bool  // goals after the first are to be sought
	best    *layout
	cost    int64
	sticks  int64
	longest int64
	proofs  []Proof

	costTask *task
	duals    *prices
	gap      int64
	base     []pattern
}

// prices returns the price of a stick of each stock length.
func (m *model) prices() []int64 {
	each := make([]int64, len(m.stocks))
	for j, s := range m.stocks {
		each[j] = s.price
	}
	return each
}

// buys returns 1 for each stock length of the yard and 0 for sticks on hand.
func (m *model) buys() []int64 {
	each := make([]int64, len(m.stocks))
	for j, s := range m.stocks {
		if s.bought {
			each[j] = 1
		}
	}
	return each
}

// task returns the task of the least total of one number for each stick.
func (m *model) task(weight []int64) *task {
	return &task{model: m, weight: weight, reserve: -1, target: math.MaxInt64 / 4, tallies: m.tallies()}
}

// tallies returns the whole number that decides most where prices go by the
// length: the length of all sticks bought together, in the common divisor of
// the lengths. Where prices do not, it decides nothing, and where they do
// exactly, it says no more than the cost: then there is none.
func (m *model) tallies() []limit {
	step := int64(0)
	low, high := math.Inf(1), 0.0
	length := limit{coefficient: make([]int64, len(m.stocks))}
	for j, s := range m.stocks {
		if s.bought {
			step = divisor(step, int64(s.length))
			rate := float64(s.price) / float64(s.length)
			low, high = min(low, rate), max(high, rate)
			length.coefficient[j] = int64(s.length)
		}
	}
	if exact := high <= low*(1+1e-12); exact || high > low*1.005 || step == 0 {
		return nil
	}
	for j := range length.coefficient {
		length.coefficient[j] /= step
	}
	return []limit{length}
}

// heaviest returns what no plan weighs more than: a stick of the heaviest for
// every piece.
func (t *task) heaviest() int64 {
	pieces := int64(0)
	for _, k := range t.pieces {
		pieces += int64(k.need)
	}
	return pieces * slices.Max(t.weight)
}

// leastCost is the first goal. It reports an error when no plan was found: sticks
// are too few, or none is known within the budget.
func (s *solver) leastCost() error {
	t := s.task(s.prices())
	start := t.start()
	if t.target = t.heaviest(); start != nil {
		t.target = start.weighs(t.weight)
	}
	quick := t.quickBound()
	t.floor = quick.bound
	a := t.answer(start)
	if a.best == nil {
		if a.closed {
			return ErrTooLittle
		}
		return ErrNotFound
	}
	if a.proof.scale == 0 {
		a.proof = quick
	}
	s.best, s.cost = a.best, a.weight
	s.record(a)
	if s.further {
		s.gather(t, a)
	}
	return nil
}

// fewestSticks is the second goal: as long as a plan of the least cost with one
// stick fewer is found, it is taken.
func (s *solver) fewestSticks() {
	s.sticks = s.best.weighs(s.buys())
	fewest, nodes := s.fewestFor(), 0
	proven := true
	for s.sticks > fewest {
		t := s.task(s.prices())
		t.limits = []limit{{s.buys(), s.sticks - 1}}
		t.target, t.floor = s.cost, s.cost
		a := s.answer(t, nil, s.base)
		nodes += a.nodes
		if a.best == nil {
			proven = a.closed
			break
		}
		s.best, s.sticks = a.best, a.best.weighs(s.buys())
	}
	p := Proof{Goal: FewestSticks, Value: s.sticks, Bound: s.sticks, Proven: proven, Reached: ByClosedSearch, Nodes: nodes}
	if s.sticks <= fewest {
		p.Reached = ByCount
	}
	if !proven {
		p.Bound = fewest
	}
	s.proofs = append(s.proofs, p)
}

// fewestFor returns the fewest sticks that can cost as much as any plan must,
// all of the dearest length.
func (s *solver) fewestFor() int64 {
	dearest := int64(0)
	for _, stock := range s.stocks {
		if stock.bought {
			dearest = max(dearest, stock.price)
		}
	}
	if dearest == 0 {
		return 0
	}
	return ceilDivide(s.proofs[0].Bound/s.coin, dearest)
}

// longestOffcut is the third goal: one more piece is put in, as long as it will
// go at the cost and number of sticks found. An offcut of length r takes r + k
// of a stick, just as a piece does.
func (s *solver) longestOffcut() {
	s.longest = s.best.longest(s.model, s.kerf)
	lengths := s.offcuts()
	low := sort.Search(len(lengths), func(i int) bool { return lengths[i] > s.longest })
	nodes, ruled := 0, len(lengths) // from here on no length is possible
	for high := len(lengths); low < high && !s.over(); {
		at := (low + high) / 2
		a := s.keeping(lengths[at])
		nodes += a.nodes
		if a.best != nil {
			s.best = a.best.dropLast(s.model)
			s.longest = max(lengths[at], s.best.longest(s.model, s.kerf))
			low = sort.Search(len(lengths), func(i int) bool { return lengths[i] > s.longest })
		} else {
			high = at
			if a.closed {
				ruled = at
			}
		}
	}
	bound := s.longest
	if ruled > low {
		bound = lengths[ruled-1]
	}
	reached := ByClosedSearch
	if bound == s.longest && nodes == 0 {
		reached = ByCount // all that is left of the sticks lies in one piece
	}
	s.proofs = append(s.proofs, Proof{
		Goal: LongestOffcut, Value: s.longest * s.unit, Bound: bound * s.unit, Proven: bound == s.longest, Nodes: nodes, Reached: reached,
	})
}

// keeping looks for a plan that keeps an offcut of the length.
func (s *solver) keeping(length int64) *search {
	m := *s.model
	m.pieces = append(slices.Clone(s.pieces), piece{uses: length + s.kerf, need: 1})
	t := m.task(s.prices())
	t.reserve = len(m.pieces) - 1
	for _, stock := range m.stocks {
		t.holds = append(t.holds, stock.bought)
	}
	t.limits = []limit{{s.buys(), s.sticks}}
	t.target, t.floor = s.cost, s.cost
	if s.base != nil {
		if special, ok := s.special(length + s.kerf); ok {
			return s.answer(t, nil, slices.Concat(s.base, special))
		}
	}
	return s.answer(t, nil, nil)
}

// gather lists all the patterns that a plan of the least cost can hold, from
// the duals that proved the bound on the cost.
func (s *solver) gather(t *task, a *search) {
	if a.proof.scale == 0 || !a.closed {
		return
	}
	s.duals = &prices{scale: a.proof.scale, dual: a.proof.dual, yields: a.proof.yields}
	s.gap = a.weight*a.proof.scale - a.proof.exact
	if list, ok := t.list(s.duals, s.gap, longList); ok {
		s.base = list
	}
	s.costTask = t
}

// special lists the patterns that leave an offcut that takes so much.
func (s *solver) special(take int64) ([]pattern, bool) {
	t := s.costTask
	l := &lister{task: t, prices: s.duals, limit: longList, steps: 40 * longList, extra: []part{{int32(len(s.pieces)), 1}}}
	l.order()
	for j, stock := range t.stocks {
		if stock.bought && stock.room > take && !l.fill(j, stock.room-take, s.gap) {
			return nil, false
		}
	}
	for i := range l.list {
		l.list[i].used += take
	}
	return l.list, true
}

// answer searches among the patterns listed, or among all when there is no
// list.
func (s *solver) answer(t *task, start *layout, list []pattern) *search {
	if list == nil {
		return t.answer(start)
	}
	a := &search{task: t, weight: math.MaxInt64, proof: certificate{bound: t.floor}}
	if start != nil {
		a.offer(start)
	}
	if !a.done() {
		run := func() bool { return newListed(a, newMaster(t), list, math.MinInt64/4).run() }
		a.closed = a.within(firstBudget, run) || a.done() || a.inRounds(run)
	}
	return a
}

// offcuts returns every length that can be left of a stick bought, in rising
// order.
func (s *solver) offcuts() []int64 {
	widest := int64(0)
	for _, stock := range s.stocks {
		if stock.bought {
			widest = max(widest, stock.room)
		}
	}
	sums, most := s.sums(widest), s.mostLeft()
	var lengths []int64
	for _, stock := range s.stocks {
		if !stock.bought {
			continue
		}
		for _, sum := range sums {
			if left := stock.room - sum - s.kerf; sum > 0 && left > 0 && left <= most {
				lengths = append(lengths, left)
			}
		}
	}
	slices.Sort(lengths)
	return slices.Compact(lengths)
}

// sums returns what pieces can take of a stick together, up to the room.
func (m *model) sums(room int64) []int64 {
	sums := []int64{0}
	for _, k := range m.pieces {
		for range min(int64(k.need), room/k.uses) {
			grown := slices.Clone(sums)
			for _, sum := range sums {
				if sum+k.uses <= room {
					grown = append(grown, sum+k.uses)
				}
			}
			m.use(20 * len(grown))
			slices.Sort(grown)
			grown = slices.Compact(grown)
			if len(grown) == len(sums) {
				break
			}
			sums = grown
		}
	}
	return sums
}

// longest returns the longest length left of any stick bought.
func (l *layout) longest(m *model, kerf int64) int64 {
	longest := int64(0)
	for _, p := range l.patterns {
		if s := m.stocks[p.stock]; s.bought {
			longest = max(longest, s.room-p.used-kerf)
		}
	}
	return longest
}

// dropLast returns the layout without the last piece, the reserve.
func (l *layout) dropLast(m *model) *layout {
	out := &layout{}
	last := int32(len(m.pieces))
	for i, p := range l.patterns {
		parts := slices.DeleteFunc(slices.Clone(p.parts), func(q part) bool { return q.piece == last })
		used := int64(0)
		for _, q := range parts {
			used += int64(q.count) * m.pieces[q.piece].uses
		}
		if len(parts) > 0 {
			out.add(pattern{stock: p.stock, parts: parts, used: used}, l.times[i])
		}
	}
	return out
}

// record keeps the proof of the least cost.
func (s *solver) record(a *search) {
	p := Proof{Goal: LeastCost, Value: s.cost * s.coin, Bound: min(max(a.proof.bound, a.floor), s.cost) * s.coin, Proven: a.closed, Nodes: a.nodes, Reached: ByClosedSearch}
	if a.proof.bound >= s.cost || !a.closed && a.proof.bound >= a.floor {
		p.Reached = ByDuals
	}
	if a.closed {
		p.Bound = p.Value
	}
	if s.cost == 0 {
		p.Reached = ByCount
	}
	p.Certificate = s.certificate(a.proof)
	s.proofs = append(s.proofs, p)
}

// certificate writes the duals of the least cost in the terms of the problem.
func (s *solver) certificate(c certificate) *Certificate {
	if c.scale == 0 {
		return nil
	}
	out := &Certificate{Bound: c.bound * s.coin, Scale: c.scale, Coin: s.coin}
	for i, k := range s.pieces {
		out.Values = append(out.Values, Value{measure.Length((k.uses - s.kerf) * s.unit), c.dual[i]})
	}
	return out
}
