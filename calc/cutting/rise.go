package cutting

// rise looks for the best plan from the bound upwards: for one that weighs no
// more than the bound, then for one a little heavier, and so on, within so many
// nodes. Near the bound few patterns can matter, so that a level is soon closed,
// which raises the bound, and the first plan found is the best or nearly so. From
// a plan far above the bound downwards there are far too many.
func (s *search) rise(nodes int, run func() bool) bool {
	last := min(s.limit, s.nodes+nodes)
	s.step = max(s.step, 1)
	for wide := s.step; s.nodes < last; {
		level := s.floor + wide - 1
		if level >= s.target {
			return s.quota(last-s.nodes, run)
		}
		start, best := s.nodes, s.best
		closed := s.upTo(level, max((last-start)/2, leastOfLevel), run)
		switch {
		case s.done() || closed && s.best != best:
			return true
		case !closed:
			if wide == s.step {
				s.step = max(1, s.step/4)
			}
			wide *= 2
		case s.nodes-start < quickLevel:
			s.step *= 2
			wide = s.step
		default:
			wide = s.step
		}
	}
	return false
}

const (
	leastOfLevel = 50 // nodes that a level gets
	quickLevel   = 20 // nodes below which the next level may be wider
)

// upTo runs with no more than so many nodes for plans up to a weight. When that
// closes and there is none, the floor rises past it.
func (s *search) upTo(weight int64, nodes int, run func() bool) bool {
	target, best := s.target, s.best
	s.target, s.rising = weight, true
	closed := s.quota(nodes, run)
	s.rising = false
	if s.best == best {
		s.target = target
		if closed {
			s.floor = weight + 1
		}
	}
	return closed
}
