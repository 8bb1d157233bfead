package terrain

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"pierbook/calc/measure"
)

// Mend is a usual slip in one reading: by how much the height there would change
// without it.
type Mend struct {
	Kind string // "a foot", "digits exchanged"
	By   measure.Length
}

// Odd is a reading that would fit those round it much better without a slip.
type Odd struct {
	Node Node
	Mend Mend
	Gain float64 // how much likelier the heights then are, as a logarithm
}

// What tells a slip from the ground's own doing: chosen on 500 sites drawn by lot,
// half of them with a bank, see the tests.
const (
	oddFrom    = 5                // readings; of fewer none can be told from those beside it
	oddGain    = 0.5              // over the best ground without a slip
	bankCost   = 6.0              // what an edge of a bank, anywhere and any way, takes off the likelihood
	asOdd      = 2.0              // a mend that gains so little less explains it as well
	oddAtLeast = 4 * measure.Inch // a smaller slip is lost in the ground; common practice, no source
	manyNodes  = 36               // of more readings only the neighbours of the oddest are looked at
)

// roughness are the shares of the ground's own unevenness at one place in how it
// bends between places, of which the likeliest is taken.
var roughness = []float64{1e-4, 1e-3, 1e-2, 1e-1, 1, 10}

// The weight given beforehand to ground that is uneven by 15 mm at each place, in
// readings. Common practice, no source.
const (
	expectedReadings = 2.0
	expectedUneven   = 0.015
)

// Odd returns the slips that would explain the heights much better than none, the
// likeliest first; nil when the ground may well be as it was read. More than one
// come back when the readings do not decide between them.
//
// The heights are taken as those of a surface that bends like a thin plate, with an
// unevenness of its own at each place and perhaps one straight edge of a bank; how
// much of either there is, is chosen by their restricted likelihood. A slip that
// raised reading i by s changes the energy of the spline, and with it the
// likelihood:
//
//	E(i, −s) = E − 2 s wi + s² ai        ln L = −½ ((n − 3) ln E + ln |A|)
//
// with w the weights of the readings and ai the elements of the inverse of the
// matrix A of the spline.
//
// Source: N. A. C. Cressie, Statistics for Spatial Data (1993), section 2.6, from
// memory; the tests hold the energies against splines of the mended heights.
func (s *Spline) Odd(mends func(Node) []Mend) []Odd {
	if len(s.Nodes) > manyNodes {
		return s.oddAmongMany(mends)
	}
	if len(s.Nodes) < oddFrom {
		return nil
	}
	plain := math.Inf(-1)
	var list []Odd
	for _, rough := range roughness {
		b, ok := s.bendingWith(rough)
		if !ok || b.energy <= 0 {
			continue
		}
		plain = max(plain, b.likelihood(b.energy), b.likelihood(b.besideABank(s.places))-bankCost)
		at := 0
		for i, node := range s.Nodes {
			for _, m := range mends(node) {
				if m.By.Abs() < oddAtLeast {
					continue
				}
				if at == len(list) {
					list = append(list, Odd{Node: node, Mend: m, Gain: math.Inf(-1)})
				}
				list[at].Gain = max(list[at].Gain, b.likelihood(b.mended(i, m.By.Metres())))
				at++
			}
		}
	}
	for i := range list {
		list[i].Gain -= plain
	}
	slices.SortStableFunc(list, func(a, b Odd) int { return cmp.Compare(b.Gain, a.Gain) })
	if len(list) == 0 || list[0].Gain < oddGain {
		return nil
	}
	least := list[0].Gain - asOdd
	return slices.DeleteFunc(list, func(o Odd) bool { return o.Gain < least })
}

// oddAmongMany looks at the readings that those round them miss most, each among
// its neighbours alone: a slip does not show from afar, and the work stays small.
func (s *Spline) oddAmongMany(mends func(Node) []Mend) []Odd {
	const looked, neighbours = 6, 20
	residuals := s.LeftOut()
	order := make([]int, 0, len(residuals))
	for i, r := range residuals {
		if !math.IsNaN(r) {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(math.Abs(residuals[b]), math.Abs(residuals[a])) })
	var all []Odd
	for _, i := range order[:min(looked, len(order))] {
		near := slices.Clone(s.Nodes)
		slices.SortStableFunc(near, func(a, b Node) int { return cmp.Compare(between(s.Nodes[i], a), between(s.Nodes[i], b)) })
		part, ok := NewSpline(near[:neighbours])
		if !ok {
			continue
		}
		for _, o := range part.Odd(mends) {
			if !slices.ContainsFunc(all, func(known Odd) bool { return known.Node.Name == o.Node.Name }) {
				all = append(all, o)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b Odd) int { return cmp.Compare(b.Gain, a.Gain) })
	return all
}

// bending is the spline of all readings with a share of unevenness at each place.
type bending struct {
	rough          float64
	weight         []float64  // of each reading
	inverse        *mat.Dense // of the matrix of the spline
	energy, logDet float64
}

// bendingWith solves the spline of ground so rough.
func (s *Spline) bendingWith(rough float64) (bending, bool) {
	n := len(s.Nodes)
	a, z, identity := mat.NewDense(n+3, n+3, nil), mat.NewVecDense(n+3, nil), mat.NewDense(n+3, n+3, nil)
	for i, node := range s.Nodes {
		ui, vi := s.places[i][0], s.places[i][1]
		z.SetVec(i, (node.Height - s.frame.base).Metres())
		a.Set(i, i, rough)
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
	for i := range n + 3 {
		identity.Set(i, i, 1)
	}
	var lu mat.LU
	lu.Factorize(a)
	var inverse mat.Dense
	_ = lu.SolveTo(&inverse, false, identity) // a poor condition only costs digits that heights do not need
	if inverse.IsEmpty() {
		return bending{}, false
	}
	b := bending{rough: rough, weight: make([]float64, n), inverse: &inverse}
	for i := range n {
		for k := range n {
			b.weight[i] += inverse.At(i, k) * z.AtVec(k)
		}
		b.energy += b.weight[i] * z.AtVec(i)
	}
	b.logDet, _ = lu.LogDet()
	return b, true
}

// likelihood returns the logarithm of how likely heights with that energy are.
func (b bending) likelihood(energy float64) float64 {
	expected := expectedReadings * expectedUneven * expectedUneven / b.rough
	free := float64(len(b.weight)-3) + expectedReadings
	return -0.5 * (free*math.Log(max(energy, 0)+expected) + b.logDet - expectedReadings*math.Log(expected))
}

// mended returns the energy once the height of one reading is changed.
func (b bending) mended(i int, by float64) float64 {
	return b.energy + 2*by*b.weight[i] + by*by*b.inverse.At(i, i)
}

// besideABank returns the least energy that is left where the ground breaks along
// one straight edge, the foot or the top of a bank: beyond it its slope is another.
// Edges are tried in every direction with three readings or more on either side.
func (b bending) besideABank(places [][2]float64) float64 {
	const sides, ways = 3, 12
	n, least := len(places), b.energy
	past, along := make([]float64, n), make([]float64, n)
	for way := range ways {
		sine, cosine := math.Sincos(math.Pi * float64(way) / ways)
		for i, p := range places {
			along[i] = p[0]*cosine + p[1]*sine
		}
		sorted := slices.Sorted(slices.Values(along))
		for k := sides - 1; k+sides < n; k++ {
			for _, edge := range []float64{sorted[k], (sorted[k] + sorted[k+1]) / 2} {
				for i := range past {
					past[i] = max(0, along[i]-edge)
				}
				least = min(least, b.without(past))
			}
		}
	}
	return least
}

// without returns the energy that is left once a shape is taken out of the heights.
func (b bending) without(shape []float64) float64 {
	var cross, square float64
	for i, v := range shape {
		if v == 0 {
			continue
		}
		cross += v * b.weight[i]
		for k, other := range shape {
			square += v * b.inverse.At(i, k) * other
		}
	}
	if square <= 1e-12 {
		return b.energy
	}
	return b.energy - cross*cross/square
}
