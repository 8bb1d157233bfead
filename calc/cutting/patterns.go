package cutting

import "slices"

// Limits of the search for fewer patterns.
const (
	stepsOfPatterns = 1_200_000
	stepsOfGroup    = 2_000 // for one group of patterns
	largestGroup    = 4
	stepsOfNode     = 1_000 // that count as one node
)

// fewestPatterns is the last goal, with cost, sticks and offcut held. A few
// patterns of the plan at a time are cut in one way fewer, where that can be; then
// all plans of so many patterns are searched, from the fewest that can hold all
// pieces upwards, as far as the steps go.
func (s *solver) fewestPatterns() {
	merged := s.best.merged()
	s.best = &layout{merged.patterns, merged.times}
	bound := min(s.patterns(), ceilDivide(int64(len(s.pieces)), s.lengthsOnAStick()))
	p := Proof{Goal: FewestPatterns, Reached: ByCount}
	if bound < s.patterns() {
		f := s.fewer()
		steps := int(min(stepsOfPatterns, s.left()/stepsOfScan/10))
		s.join(f, steps/2)
		for f.steps += steps / 2; bound < s.patterns(); bound++ {
			need, left := s.whole()
			found := f.within(int(bound), need, left, s.cost, s.sticks)
			if found != nil {
				s.best = found
			} else if f.steps <= 0 {
				break
			}
			p.Reached = ByClosedSearch
		}
		p.Nodes = (steps - max(0, f.steps)) / stepsOfNode
	}
	p.Value, p.Bound = s.patterns(), bound
	p.Proven = p.Value == p.Bound
	s.proofs = append(s.proofs, p)
}

func (s *solver) patterns() int64 { return int64(len(s.best.patterns)) }

// fewer makes the search ready. A plan is taken that keeps the longest offcut.
func (s *solver) fewer() *fewer {
	value := make([]int64, len(s.pieces))
	for i, k := range s.pieces {
		value[i] = k.uses
		if s.duals != nil {
			value[i] = s.duals.dual[i]
		}
	}
	f := newFewer(s.model, value, s.lengthsOnAStick())
	f.accept = func(l *layout) bool { return l.longest(s.model, s.kerf) >= s.longest }
	return f
}

// whole returns all the pieces and sticks.
func (s *solver) whole() (need []int32, left []int) {
	for _, k := range s.pieces {
		need = append(need, int32(k.need))
	}
	for _, stock := range s.stocks {
		left = append(left, stock.most)
	}
	return need, left
}

// join cuts groups of two patterns, three, and so on in one way fewer, and
// begins anew with the pairs after each success.
func (s *solver) join(f *fewer, steps int) {
	for size := 2; size <= min(largestGroup, len(s.best.patterns)) && steps > 0; {
		if s.joinOne(f, size, &steps) {
			size = 2
		} else {
			size++
		}
	}
}

// joinOne goes through the groups of a size until one is cut in a way fewer.
func (s *solver) joinOne(f *fewer, size int, steps *int) bool {
	accept := f.accept
	defer func() { f.accept = accept }()
	for group := firstGroup(size); group != nil && *steps > 0; group = nextGroup(group, len(s.best.patterns)) {
		others := &layout{}
		for i, p := range s.best.patterns {
			if !slices.Contains(group, i) {
				others.add(p, s.best.times[i])
			}
		}
		kept := accept(others)
		f.accept = func(l *layout) bool { return kept || accept(l) }
		f.steps = min(stepsOfGroup, *steps)
		before := f.steps
		need, left, cost, buy := s.group(group)
		found := f.within(size-1, need, left, cost, buy)
		*steps -= before - max(0, f.steps) + size
		if found != nil {
			for i, p := range found.patterns {
				others.add(p, found.times[i])
			}
			merged := others.merged()
			s.best = &layout{merged.patterns, merged.times}
			return true
		}
	}
	return false
}

// group returns the pieces and sticks of some patterns of the plan. For a stick
// bought, another may be taken.
func (s *solver) group(group []int) (need []int32, left []int, cost, buy int64) {
	need, left = make([]int32, len(s.pieces)), make([]int, len(s.stocks))
	for j, stock := range s.stocks {
		if stock.bought {
			left[j] = stock.most
		}
	}
	for i, p := range s.best.patterns {
		if s.stocks[p.stock].bought && !slices.Contains(group, i) {
			left[p.stock] -= s.best.times[i]
		}
	}
	for _, i := range group {
		p, times := s.best.patterns[i], s.best.times[i]
		for _, q := range p.parts {
			need[q.piece] += q.count * int32(times)
		}
		cost += s.stocks[p.stock].price * int64(times)
		if s.stocks[p.stock].bought {
			buy += int64(times)
		} else {
			left[p.stock] += times
		}
	}
	return need, left, cost, buy
}

// firstGroup returns the numbers 0 … size − 1.
func firstGroup(size int) []int {
	group := make([]int, size)
	for i := range group {
		group[i] = i
	}
	return group
}

// nextGroup returns the next group out of n in order, or nil after the last.
func nextGroup(group []int, n int) []int {
	for k := len(group) - 1; k >= 0; k-- {
		if group[k] < n-len(group)+k {
			group[k]++
			for next := k + 1; next < len(group); next++ {
				group[next] = group[next-1] + 1
			}
			return group
		}
	}
	return nil
}

// lengthsOnAStick returns how many lengths of piece one stick can hold at most, the shortest
// ones on the longest stick.
func (s *solver) lengthsOnAStick() int64 {
	room, held := s.task(s.prices()).widest(), int64(0)
	for _, k := range slices.Backward(s.pieces) {
		if room < k.uses {
			break
		}
		room -= k.uses
		held++
	}
	return max(held, 1)
}
