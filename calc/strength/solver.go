package strength

import "errors"

// run is a member of one stiffness over supports that do not yield, in metres
// from an origin of the caller's. Between two hinges it runs on; it may stand
// out past its first and last support.
type run struct {
	start, end float64
	supports   []float64 // rising
	hinges     []bool    // by support: the member is jointed over it; the outer ones count for nothing
}

// push is a downward load: newtons per metre from one place to another, or
// newtons when both places are one.
type push struct{ from, to, size float64 }

func (p push) point() bool { return p.from == p.to }

func (p push) total() float64 {
	if p.point() {
		return p.size
	}
	return p.size * (p.to - p.from)
}

// part is one stretch of a run between supports, or an overhang, with the
// loads on it. Bending moments sag positive, shears are positive upward on the
// left, slopes and deflections (both times EI) are positive downward.
type part struct {
	from, long       float64
	loads            []push // from and to counted from the part's own left end
	moment, shear    float64
	slope, sag       float64
	leftEnd, support int // support index at its left end or −1; segment number
}

// answer is a solved run: its parts from left to right and the reactions.
type answer struct {
	parts     []part
	reactions []float64
}

var errUnsteady = errors.New("strength: a piece between joints has fewer than two supports")

// solve returns the moments, shears, slopes and reactions under the loads, by
// the stiffness method in the rotations of the supports:
//
//	2/L1·θ(i−1) + (4/L1 + 4/L2)·θ(i) + 2/L2·θ(i+1) = Fb(1) − Fa(2)
//
// with fixed-end moments F of the spans left and right of support i. A hinge
// over a support parts the run into pieces that do not know of each other.
func (r run) solve(loads []push) (answer, error) {
	a := answer{reactions: make([]float64, len(r.supports))}
	first := 0
	for first < len(r.supports) {
		last := first + 1
		for last < len(r.supports)-1 && !r.hinges[last] {
			last++
		}
		if last >= len(r.supports) {
			return answer{}, errUnsteady
		}
		r.piece(&a, first, last, loads)
		if last == len(r.supports)-1 {
			return a, nil
		}
		first = last
	}
	return answer{}, errUnsteady
}

// piece solves the run from support first to support last with the overhangs
// that belong to it.
func (r run) piece(a *answer, first, last int, loads []push) {
	spans := make([]part, 0, last-first+2)
	var before, after *part
	if first == 0 && r.start < r.supports[0] {
		p := cut(loads, r.start, r.supports[0], true)
		before = &p
	}
	for i := first; i < last; i++ {
		spans = append(spans, cut(loads, r.supports[i], r.supports[i+1], i == 0 && r.start >= r.supports[0]))
	}
	if last == len(r.supports)-1 && r.end > r.supports[last] {
		p := cut(loads, r.supports[last], r.end, false)
		after = &p
	}
	var left, right float64
	if before != nil {
		left, _ = before.about(before.long)
	}
	if after != nil {
		right, _ = after.about(0)
	}
	rotations(spans, left, right)
	a.take(first, spans, before, after)
}

// rotations fills in slopes, end moments and end shears of the spans of one
// piece whose outer ends carry the given sagging moments.
func rotations(spans []part, left, right float64) {
	n := len(spans) + 1
	diagonal, beside, want := make([]float64, n), make([]float64, n), make([]float64, n)
	fixed := make([][2]float64, len(spans))
	for i := range spans {
		fixed[i][0], fixed[i][1] = spans[i].fixedEnds()
		k := 4 / spans[i].long
		diagonal[i] += k
		diagonal[i+1] += k
		beside[i] = k / 2
		want[i] -= fixed[i][0]
		want[i+1] += fixed[i][1]
	}
	want[0] += left
	want[n-1] -= right
	for i := 1; i < n; i++ { // forward sweep of the three-band matrix
		m := beside[i-1] / diagonal[i-1]
		diagonal[i] -= m * beside[i-1]
		want[i] -= m * want[i-1]
	}
	theta := want
	theta[n-1] /= diagonal[n-1]
	for i := n - 2; i >= 0; i-- {
		theta[i] = (theta[i] - beside[i]*theta[i+1]) / diagonal[i]
	}
	for i := range spans {
		s := &spans[i]
		at := (4*theta[i]+2*theta[i+1])/s.long + fixed[i][0]
		end := -(2*theta[i]+4*theta[i+1])/s.long + fixed[i][1]
		s.moment, s.slope = at, theta[i]
		s.shear = s.simpleLeft() + (end-at)/s.long
	}
}

// take adds a piece to the answer: overhangs get their slopes from the span
// beside them, supports the difference of the shears.
func (a *answer) take(first int, spans []part, before, after *part) {
	if before != nil {
		before.support, before.leftEnd = first, -1
		moment, sum := before.integrals(before.long)
		before.slope = spans[0].slope + moment
		before.sag = -before.slope*before.long + sum
		a.parts = append(a.parts, *before)
		a.reactions[first] += before.total()
	}
	for i := range spans {
		s := &spans[i]
		s.leftEnd, s.support = first+i, first
		a.parts = append(a.parts, *s)
		a.reactions[first+i] += s.shear
		a.reactions[first+i+1] += s.total() - s.shear
	}
	if after == nil {
		return
	}
	end := &spans[len(spans)-1]
	moment, _ := end.integrals(end.long)
	after.leftEnd, after.support = first+len(spans), first
	after.slope = end.slope - moment
	after.moment, after.shear = after.momentAtRoot(), after.total()
	a.parts = append(a.parts, *after)
	a.reactions[first+len(spans)] += after.total()
}
