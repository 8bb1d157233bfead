package terrain

import (
	"math"
	"slices"
	"sync"

	"gonum.org/v1/gonum/mat"

	"pierbook/calc/measure"
)

// Node is a place in plan with a height that was read.
type Node struct {
	Name   string
	X, Y   measure.Length
	Height measure.Length
}

// Spline is the ground through the readings: a thin-plate spline, exact at
// each of them, the plane itself when they lie in one.
//
//	z = c0 + c1 x + c2 y + Σ wi ri² ln ri        Σ wi = Σ wi xi = Σ wi yi = 0
//
// It bends as little as a thin plate held at the readings would. Beyond them it
// goes on, but less and less can be said for it: see [Spline.Outside].
//
// Source: J. Duchon, Splines minimizing rotation-invariant semi-norms in
// Sobolev spaces, 1977.
type Spline struct {
	Nodes []Node // readings at one place taken together
	Hull  []Node // the outermost readings, in order round the rest
	Plane Plane  // best plane through them, by least squares

	frame  scaling
	places [][2]float64 // of the nodes, scaled
	solve  sync.Once
	weight []float64 // wi
	linear [3]float64
	lu     mat.LU
	flat   bool // the plane stands in for the spline
	cuts   []cutting
}

// NewSpline returns the surface through the nodes. It reports false when fewer
// than three of them are left that do not lie in a line.
func NewSpline(nodes []Node) (*Spline, bool) {
	nodes = merged(nodes)
	if len(nodes) < 3 || inLine(nodes) {
		return nil, false
	}
	s := &Spline{Nodes: nodes, Hull: hullOf(nodes), frame: scalingOf(nodes)}
	for _, n := range nodes {
		u, v := s.frame.to(n.X, n.Y)
		s.places = append(s.places, [2]float64{u, v})
	}
	s.Plane = fitPlane(nodes, s.frame)
	return s, true
}

// At returns the height of the ground at a place, to the nearest nanometre, as
// the job's cuts leave it.
func (s *Spline) At(x, y measure.Length) measure.Length { return s.cut(x, y, s.AsRead(x, y)) }

// AsRead returns the height of the ground at a place before anything is cut. At a
// reading it is the reading.
func (s *Spline) AsRead(x, y measure.Length) measure.Length {
	for _, n := range s.Nodes {
		if n.X == x && n.Y == y {
			return n.Height
		}
	}
	return s.spline(x, y)
}

// spline returns the height of the spline, without looking for a reading there.
func (s *Spline) spline(x, y measure.Length) measure.Length {
	s.solve.Do(s.bend)
	u, v := s.frame.to(x, y)
	z := s.linear[0] + s.linear[1]*u + s.linear[2]*v
	for i, n := range s.places {
		z += s.weight[i] * kernel(u-n[0], v-n[1])
	}
	return s.frame.base + measure.FromMetres(z)
}

// bend solves for the weights.
func (s *Spline) bend() {
	n := len(s.Nodes)
	a := mat.NewDense(n+3, n+3, nil)
	b := mat.NewVecDense(n+3, nil)
	for i, p := range s.Nodes {
		ui, vi := s.places[i][0], s.places[i][1]
		b.SetVec(i, (p.Height - s.frame.base).Metres())
		for k := range i {
			bend := kernel(ui-s.places[k][0], vi-s.places[k][1])
			a.Set(i, k, bend)
			a.Set(k, i, bend)
		}
		for k, value := range [3]float64{1, ui, vi} {
			a.Set(i, n+k, value)
			a.Set(n+k, i, value)
		}
	}
	s.lu.Factorize(a)
	// A poor condition only costs digits that heights in nanometres do not need.
	// Readings so close that no digit is left have no spline: the plane stands in.
	var solution mat.VecDense
	_ = s.lu.SolveVecTo(&solution, false, b)
	s.weight = make([]float64, n)
	if s.flat = solution.Len() == 0; s.flat {
		s.linear = s.Plane.linear()
		return
	}
	for i := range n {
		s.weight[i] = solution.AtVec(i)
	}
	for k := range 3 {
		s.linear[k] = solution.AtVec(n + k)
	}
}

// kernel returns r² ln r for r² = u² + v².
func kernel(u, v float64) float64 {
	square := u*u + v*v
	if square == 0 {
		return 0
	}
	return square * math.Log(square) / 2
}

// scaling brings places near to one and heights near to zero, which keeps the
// system well conditioned.
type scaling struct {
	x, y measure.Length // middle
	size float64        // half the greater extent, m
	base measure.Length // a height among the readings
}

func scalingOf(nodes []Node) scaling {
	lowX, highX, lowY, highY := nodes[0].X, nodes[0].X, nodes[0].Y, nodes[0].Y
	low, high := nodes[0].Height, nodes[0].Height
	for _, n := range nodes {
		lowX, highX = min(lowX, n.X), max(highX, n.X)
		lowY, highY = min(lowY, n.Y), max(highY, n.Y)
		low, high = min(low, n.Height), max(high, n.Height)
	}
	return scaling{x: lowX + (highX-lowX)/2, y: lowY + (highY-lowY)/2,
		size: max(highX-lowX, highY-lowY).Metres() / 2, base: low + (high-low)/2}
}

func (s scaling) to(x, y measure.Length) (u, v float64) {
	return (x - s.x).Metres() / s.size, (y - s.y).Metres() / s.size
}

// together is how near two readings must be to count as made at one place.
const together = measure.Millimetre

// merged takes readings at one place together, at their mean height.
func merged(nodes []Node) []Node {
	var list []Node
	var count []int
	for _, n := range nodes {
		i := slices.IndexFunc(list, func(m Node) bool { return (m.X-n.X).Abs() <= together && (m.Y-n.Y).Abs() <= together })
		if i < 0 {
			list, count = append(list, n), append(count, 1)
			continue
		}
		list[i].Height += n.Height
		count[i]++
	}
	for i := range list {
		list[i].Height = list[i].Height.Part(1, count[i])
	}
	return list
}

// inLine holds when no plane can be told through the nodes: all of them lie within
// a thousandth of the longest distance from one line.
func inLine(nodes []Node) bool {
	far := 0
	for i, n := range nodes {
		if between(nodes[0], n) > between(nodes[0], nodes[far]) {
			far = i
		}
	}
	long := between(nodes[0], nodes[far])
	for _, n := range nodes {
		if offLine(nodes[0], nodes[far], n) > long/1000 {
			return false
		}
	}
	return true
}

// between returns the distance of two nodes in plan.
func between(a, b Node) measure.Length { return measure.Hypot(b.X-a.X, b.Y-a.Y) }

// offLine returns how far n lies from the line through a and b in plan.
func offLine(a, b, n Node) measure.Length {
	long := between(a, b)
	if long == 0 {
		return between(a, n)
	}
	cross := (b.X-a.X).Metres()*(n.Y-a.Y).Metres() - (b.Y-a.Y).Metres()*(n.X-a.X).Metres()
	return measure.FromMetres(math.Abs(cross) / long.Metres())
}
