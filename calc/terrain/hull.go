package terrain

import (
	"cmp"
	"math"
	"slices"

	"pierbook/calc/measure"
)

// hullOf returns the nodes that stand outermost, in order round the rest. Those
// between two corners of a straight side are left out.
func hullOf(nodes []Node) []Node {
	nodes = slices.Clone(nodes)
	slices.SortFunc(nodes, func(a, b Node) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	lower := chain(nodes)
	slices.Reverse(nodes)
	upper := chain(nodes)
	return append(lower[:len(lower)-1], upper[:len(upper)-1]...)
}

// chain walks along sorted nodes and keeps those at which it turns left.
func chain(nodes []Node) []Node {
	var kept []Node
	for _, n := range nodes {
		for len(kept) >= 2 && turn(kept[len(kept)-2], kept[len(kept)-1], n) <= 0 {
			kept = kept[:len(kept)-1]
		}
		kept = append(kept, n)
	}
	return kept
}

// turn is positive when the way from a over b to c turns left.
func turn(a, b, c Node) float64 {
	return (b.X-a.X).Metres()*(c.Y-a.Y).Metres() - (b.Y-a.Y).Metres()*(c.X-a.X).Metres()
}

// Outside returns how far a place lies outside the hull of the readings, 0
// inside it and on it.
func (s *Spline) Outside(x, y measure.Length) measure.Length {
	hull := s.Hull
	place := Node{X: x, Y: y}
	inside := true
	nearest := math.Inf(1)
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		if turn(a, b, place) < 0 {
			inside = false
		}
		nearest = min(nearest, toSegment(a, b, place))
	}
	if inside {
		return 0
	}
	return measure.FromMetres(nearest)
}

// toSegment returns the distance of p from the straight piece between a and b, m.
func toSegment(a, b, p Node) float64 {
	dx, dy := (b.X - a.X).Metres(), (b.Y - a.Y).Metres()
	px, py := (p.X - a.X).Metres(), (p.Y - a.Y).Metres()
	along := max(0, min(1, (px*dx+py*dy)/(dx*dx+dy*dy)))
	return math.Hypot(px-along*dx, py-along*dy)
}
