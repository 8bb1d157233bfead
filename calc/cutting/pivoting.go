package cutting

import "math"

// primal brings the programme to its least cost from a basis within its
// bounds.
func (s *simplex) primal() {
	for stalled := 0; ; {
		column, reduced := s.entering(stalled > 60+s.rows)
		if column < 0 || s.over() {
			return
		}
		s.express(column)
		step := s.advance(column, reduced)
		if step > tolerance {
			stalled = 0
		} else {
			stalled++
		}
		if stalled > 50*(s.rows+20) {
			return
		}
	}
}

// entering returns the column that promises most, or the first that promises
// anything when the programme has stalled; -1 when there is none.
func (s *simplex) entering(first bool) (int32, float64) {
	best, column, cost := tolerance, int32(-1), 0.0
	s.use(stepsOfScan * len(s.where))
	for j, place := range s.where {
		if place >= 0 || s.lo[j] == s.hi[j] {
			continue
		}
		c := s.reduced(int32(j))
		gain := -c
		if place == atUpper {
			gain = c
		}
		if gain > best {
			best, column, cost = gain, int32(j), c
			if first {
				break
			}
		}
	}
	return column, cost
}

// advance moves the entering column as far as the bounds allow and returns by
// how much.
func (s *simplex) advance(column int32, reduced float64) float64 {
	direction := 1.0
	if s.where[column] == atUpper {
		direction = -1
	}
	limit := s.hi[column] - s.lo[column]
	loose := limit
	for i, w := range s.work {
		if t, ok := s.room(i, w*direction, tolerance); ok && t < loose {
			loose = t
		}
	}
	place, step, largest := -1, limit, 0.0
	for i, w := range s.work {
		t, ok := s.room(i, w*direction, 0)
		if ok && t <= loose && math.Abs(w) > largest {
			place, step, largest = i, t, math.Abs(w)
		}
	}
	if place < 0 {
		s.flip(column, direction*limit)
		return limit
	}
	step = max(step, 0)
	leavesTo := int32(atLower)
	if s.work[place]*direction < 0 {
		leavesTo = atUpper
	}
	s.exchange(place, column, direction*step, reduced, leavesTo)
	return step
}

// room returns how far the entering column can go before the basic column at
// the place, which falls at the rate given, meets its bound.
func (s *simplex) room(place int, rate, slack float64) (float64, bool) {
	column := s.basis[place]
	switch {
	case rate > pivotal:
		if lo := s.lo[column]; !math.IsInf(lo, -1) {
			return (s.x[place] - lo + slack) / rate, true
		}
	case rate < -pivotal:
		if hi := s.hi[column]; !math.IsInf(hi, 1) {
			return (s.x[place] - hi - slack) / rate, true
		}
	}
	return 0, false
}

// flip moves a column from one of its bounds to the other.
func (s *simplex) flip(column int32, amount float64) {
	for i := range s.x {
		s.x[i] -= amount * s.work[i]
	}
	if s.where[column] == atLower {
		s.where[column] = atUpper
	} else {
		s.where[column] = atLower
	}
}

// repair brings the programme back within its bounds after some were moved, by
// the dual simplex method, and is false when that cannot be done with the columns
// at hand.
func (s *simplex) repair() bool {
	for turn := 0; turn < 50*(s.rows+20) && !s.over(); turn++ {
		place, short := s.leaving()
		if place < 0 {
			return true
		}
		column, reduced := s.replacing(place, short)
		if column < 0 {
			s.blame(place, short)
			return false
		}
		s.express(column)
		leaver := s.basis[place]
		bound, leavesTo := s.lo[leaver], int32(atLower)
		if short < 0 {
			bound, leavesTo = s.hi[leaver], atUpper
		}
		s.exchange(place, column, (s.x[place]-bound)/s.work[place], reduced, leavesTo)
	}
	return true
}

// blame makes the duals those that show why the place cannot come back within
// its bounds: with them no column at hand gains anything, whatever it costs, and
// the bounds on the rows alone add up to more than nothing.
func (s *simplex) blame(place int, short float64) {
	sign := -1.0
	if short < 0 {
		sign = 1
	}
	for r, v := range s.inverse[place] {
		s.dual[r] = sign * v
	}
}

// leaving returns the place farthest out of its bounds and by how much it falls
// short of the lower one, or, below zero, passes the upper one.
func (s *simplex) leaving() (int, float64) {
	place, worst, short := -1, 1e-8, 0.0
	for i, column := range s.basis {
		if d := s.lo[column] - s.x[i]; d > worst {
			place, worst, short = i, d, d
		}
		if d := s.x[i] - s.hi[column]; d > worst {
			place, worst, short = i, d, -d
		}
	}
	return place, short
}

// replacing returns the column that enters at the place with the least harm to
// the reduced costs, or -1.
func (s *simplex) replacing(place int, short float64) (int32, float64) {
	line := s.inverse[place]
	s.use(stepsOfScan * len(s.where))
	column, cost, least, largest := int32(-1), 0.0, math.Inf(1), 0.0
	for j, at := range s.where {
		if at >= 0 || s.lo[j] == s.hi[j] {
			continue
		}
		alpha := 0.0
		for k, row := range s.index[j] {
			alpha += line[row] * s.value[j][k]
		}
		// The place grows when a column with alpha below zero rises.
		helps := -alpha
		if short < 0 {
			helps = alpha
		}
		if at == atUpper {
			helps = -helps
		}
		if helps <= pivotal {
			continue
		}
		c := s.reduced(int32(j))
		ratio := max(math.Abs(c), 0) / helps
		if ratio < least-1e-11 || (ratio < least+1e-11 && helps > largest) {
			column, cost, least, largest = int32(j), c, ratio, helps
		}
	}
	return column, cost
}
