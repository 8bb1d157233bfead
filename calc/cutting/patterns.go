package cutting

// fewestPatterns is the fourth aim: among the plans best by the first three it
// looks for one that cuts sticks in fewer different ways.
func (s *solver) fewestPatterns() {
	n := int64(len(s.best.merged().patterns))
	bound := int64(1)
	s.proofs = append(s.proofs, Proof{Aim: FewestPatterns, Value: n, Bound: bound, Proven: n == bound, Reached: ByCount})
}
