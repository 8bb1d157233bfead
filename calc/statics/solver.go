package statics

import "errors"

// Run is a member of one stiffness over supports that do not yield, in metres
// From an origin of the caller's. Between two hinges it runs on; it may stand
// out past its first and last support.
type Run struct {
	Start, End float64
	Supports   []float64 // rising
	Hinges     []bool    // by support: the member is jointed over it; the outer ones count for nothing
}

// Push is a downward load: newtons per metre from one place to another, or
// newtons when both places are one.
type Push struct{ From, To, Size float64 }

func (p Push) IsPoint() bool { return p.From == p.To }

func (p Push) total() float64 {
	if p.IsPoint() {
		return p.Size
	}
	return p.Size * (p.To - p.From)
}

// part is one stretch of a run between supports, or an overhang, with the
// loads on it. Bending moments sag positive, shears are positive upward on the
// left, slopes and deflections (both times EI) are positive downward.
type part struct {
	From, Long       float64
	loads            []Push // from and to counted from the part's own left end
	moment, shear    float64
	slope, sag       float64
	leftEnd, support int // support index at its left end or −1; segment number
}

// answer is a solved run: its parts from left to right and the reactions.
type answer struct {
	parts     []part
	Reactions []float64
}

var errUnsteady = errors.New("statics: a piece between joints has fewer than two supports")

// Solve returns the moments, shears, slopes and reactions under the loads, by
// the stiffness method in the rotations of the supports:
//
//	2/L1·θ(i−1) + (4/L1 + 4/L2)·θ(i) + 2/L2·θ(i+1) = Fb(1) − Fa(2)
//
// with fixed-end moments F of the spans left and right of support i. A hinge
// over a support parts the run into pieces that do not know of each other.
func (r Run) Solve(loads []Push) (answer, error) {
	a := answer{Reactions: make([]float64, len(r.Supports))}
	first := 0
	for first < len(r.Supports) {
		last := first + 1
		for last < len(r.Supports)-1 && !r.Hinges[last] {
			last++
		}
		if last >= len(r.Supports) {
			return answer{}, errUnsteady
		}
		r.piece(&a, first, last, loads)
		if last == len(r.Supports)-1 {
			return a, nil
		}
		first = last
	}
	return answer{}, errUnsteady
}

// piece solves the run from support first to support last with the overhangs
// that belong to it.
func (r Run) piece(a *answer, first, last int, loads []Push) {
	spans := make([]part, 0, last-first+2)
	var before, after *part
	if first == 0 && r.Start < r.Supports[0] {
		p := cut(loads, r.Start, r.Supports[0], true)
		before = &p
	}
	for i := first; i < last; i++ {
		spans = append(spans, cut(loads, r.Supports[i], r.Supports[i+1], i == 0 && r.Start >= r.Supports[0]))
	}
	if last == len(r.Supports)-1 && r.End > r.Supports[last] {
		p := cut(loads, r.Supports[last], r.End, false)
		after = &p
	}
	var left, right float64
	if before != nil {
		left, _ = before.about(before.Long)
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
		k := 4 / spans[i].Long
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
		at := (4*theta[i]+2*theta[i+1])/s.Long + fixed[i][0]
		end := -(2*theta[i]+4*theta[i+1])/s.Long + fixed[i][1]
		s.moment, s.slope = at, theta[i]
		s.shear = s.simpleLeft() + (end-at)/s.Long
	}
}

// take adds a piece to the answer: overhangs get their slopes from the span
// beside them, supports the difference of the shears.
func (a *answer) take(first int, spans []part, before, after *part) {
	if before != nil {
		before.support, before.leftEnd = first, -1
		moment, sum := before.integrals(before.Long)
		before.slope = spans[0].slope + moment
		before.sag = -before.slope*before.Long + sum
		a.parts = append(a.parts, *before)
		a.Reactions[first] += before.total()
	}
	for i := range spans {
		s := &spans[i]
		s.leftEnd, s.support = first+i, first
		a.parts = append(a.parts, *s)
		a.Reactions[first+i] += s.shear
		a.Reactions[first+i+1] += s.total() - s.shear
	}
	if after == nil {
		return
	}
	end := &spans[len(spans)-1]
	moment, _ := end.integrals(end.Long)
	after.leftEnd, after.support = first+len(spans), first
	after.slope = end.slope - moment
	after.moment, after.shear = after.momentAtRoot(), after.total()
	a.parts = append(a.parts, *after)
	a.Reactions[first+len(spans)] += after.total()
}
