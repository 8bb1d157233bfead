package cutting

import "slices"

// fewestPatterns is the last aim. It is not searched for: the relaxation gives
// few patterns of itself, at most one for each kind and shelf, and sticks cut
// alike are counted together. The count stands beside a bound: a stick holds
// only so many kinds, and every kind needs a stick.
func (s *solver) fewestPatterns() {
	n := int64(len(s.best.merged().patterns))
	bound := min(n, ceilDivide(int64(len(s.kinds)), s.kindsOnAStick()))
	s.proofs = append(s.proofs, Proof{Aim: FewestPatterns, Value: n, Bound: bound, Proven: n == bound, Reached: ByCount})
}

// kindsOnAStick returns how many kinds one stick can hold at most, the shortest
// ones on the longest stick.
func (s *solver) kindsOnAStick() int64 {
	room, held := s.task(s.prices()).widest(), int64(0)
	for _, k := range slices.Backward(s.kinds) {
		if room < k.take {
			break
		}
		room -= k.take
		held++
	}
	return max(held, 1)
}
