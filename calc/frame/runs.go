package frame

import (
	"slices"

	"pierbook/calc/measure"
)

// mostOptions bounds how many ways of joining one run are compared. A beam on
// ten inner supports in four pieces has 120; only a run far beyond a platform of
// this kind has more, and then the first are kept, longest pieces first.
const mostOptions = 512

// run is a length of timber to be made of pieces that meet only over its stops.
type run struct {
	from, to measure.Length
	stops    []measure.Length // where a joint may lie, rising
	stock    []measure.Length // lengths that can be bought, rising
}

// option is one way of joining a run in the fewest pieces.
type option struct {
	joints []int          // indices into the stops, rising
	bought measure.Length // stock lengths taken, each piece from the shortest that holds it
	spread measure.Length // longest piece less the shortest
}

// at returns where the i-th piece of an option begins; i = pieces is the end.
func (r run) at(o option, i int) measure.Length {
	switch {
	case i == 0:
		return r.from
	case i > len(o.joints):
		return r.to
	}
	return r.stops[o.joints[i-1]]
}

// stuck returns the stretch that no stock length bridges, and whether there is one.
func (r run) stuck() (from, to measure.Length, is bool) {
	longest := r.stock[len(r.stock)-1]
	previous, at := r.from, r.from
	for i := 0; i <= len(r.stops); i++ {
		next := r.to
		if i < len(r.stops) {
			next = r.stops[i]
		}
		if next-at > longest {
			at = previous
		}
		if next-at > longest {
			return at, next, true
		}
		previous = next
	}
	return 0, 0, false
}

// fewest returns the least number of joints: take the farthest stop in reach
// each time. The run must not be stuck.
func (r run) fewest() int {
	longest := r.stock[len(r.stock)-1]
	joints, at := 0, r.from
	for i := range r.stops {
		next := r.to
		if i+1 < len(r.stops) {
			next = r.stops[i+1]
		}
		if next-at > longest {
			joints, at = joints+1, r.stops[i]
		}
	}
	return joints
}

// options returns the ways of joining the run with that many joints, those with
// the longest first pieces first.
func (r run) options(joints int) []option {
	s := optionSearch{run: r, longest: r.stock[len(r.stock)-1]}
	s.from(r.from, 0, joints)
	return s.found
}

type optionSearch struct {
	run     run
	longest measure.Length
	path    []int
	found   []option
}

func (s *optionSearch) from(at measure.Length, stop, left int) {
	if len(s.found) == mostOptions {
		return
	}
	if left == 0 {
		if s.run.to-at <= s.longest {
			s.keep()
		}
		return
	}
	for i := len(s.run.stops) - left; i >= stop; i-- {
		reached := s.run.stops[i]
		if reached-at > s.longest {
			continue
		}
		if s.run.to-reached > measure.Length(left)*s.longest {
			return // nearer stops leave even more to the pieces left
		}
		s.path = append(s.path, i)
		s.from(reached, i+1, left-1)
		s.path = s.path[:len(s.path)-1]
	}
}

func (s *optionSearch) keep() {
	o := option{joints: slices.Clone(s.path)}
	shortest, longest := s.run.to-s.run.from, measure.Length(0)
	for i := range len(o.joints) + 1 {
		piece := s.run.at(o, i+1) - s.run.at(o, i)
		o.bought += s.run.stock[s.holding(piece)]
		shortest, longest = min(shortest, piece), max(longest, piece)
	}
	o.spread = longest - shortest
	s.found = append(s.found, o)
}

// holding returns the index of the shortest stock that holds a piece.
func (s *optionSearch) holding(piece measure.Length) int {
	i, _ := slices.BinarySearch(s.run.stock, piece)
	return i
}
