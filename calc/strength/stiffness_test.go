package strength

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// model is a beam of two-node elements on supports that do not yield: the
// displacement method with cubic shapes, its stiffness matrix whole and solved by
// factoring. EI is 1, lengths are in metres, forces in newtons, down positive. It
// is a second opinion on the members and shares nothing with their solver.
type model struct {
	nodes    []float64
	supports []int
	factored mat.Cholesky
	free     []int // numbers of the displacements that are not held
	place    []int // of each displacement among the free ones, -1 when held
}

// bear is a load: newtons per metre from one place to another, or newtons at one.
type bear struct{ from, to, size float64 }

// effect is what a loading does: at each node the displacement, and left and
// right of it the shear and the sagging moment; at each support the reaction.
type effect struct {
	sag, shearLeft, shearRight, moment []float64
	reactions                          []float64
}

const elementsInSpan = 24

// newModel divides a beam into elements between its supports, with a node at every place
// where a load begins or ends and at every other place named.
func newModel(t require.TestingT, start, end float64, supports []float64, places []float64) *model {
	m := &model{}
	corners := append([]float64{start, end}, supports...)
	slices.Sort(corners)
	add := func(x float64) {
		if x >= start-1e-9 && x <= end+1e-9 {
			m.nodes = append(m.nodes, x)
		}
	}
	for i, x := range corners[1:] {
		for k := range elementsInSpan + 1 {
			add(corners[i] + (x-corners[i])*float64(k)/elementsInSpan)
		}
	}
	for _, x := range places {
		add(x)
	}
	slices.Sort(m.nodes)
	m.nodes = slices.CompactFunc(m.nodes, func(a, b float64) bool { return math.Abs(a-b) < 1e-7 })
	for _, s := range supports {
		m.supports = append(m.supports, m.at(s))
	}
	m.place = make([]int, 2*len(m.nodes))
	for i := range m.place {
		m.place[i] = -1
		if i%2 == 0 && slices.Contains(m.supports, i/2) {
			continue
		}
		m.place[i] = len(m.free)
		m.free = append(m.free, i)
	}
	k := mat.NewSymDense(len(m.free), nil)
	for e := range len(m.nodes) - 1 {
		stiffness := element(m.nodes[e+1] - m.nodes[e])
		for i := range 4 {
			for j := i; j < 4; j++ {
				a, b := m.place[2*e+i], m.place[2*e+j]
				if a >= 0 && b >= 0 {
					k.SetSym(a, b, k.At(a, b)+stiffness[i][j])
				}
			}
		}
	}
	require.True(t, m.factored.Factorize(k), "a beam that stands")
	return m
}

// at returns the node at a place.
func (m *model) at(x float64) int {
	best := 0
	for i, n := range m.nodes {
		if math.Abs(n-x) < math.Abs(m.nodes[best]-x) {
			best = i
		}
	}
	return best
}

// element returns the stiffness of an element so long, EI 1: displacement and
// slope at its left end, then at its right.
func element(l float64) [4][4]float64 {
	a, b, c, d := 12/(l*l*l), 6/(l*l), 4/l, 2/l
	return [4][4]float64{{a, b, -a, b}, {b, c, -b, d}, {-a, -b, a, -b}, {b, d, -b, c}}
}

// solve works the beam under loads. What stands outside of it is an error of the test.
func (m *model) solve(t require.TestingT, loads []bear) effect {
	n := len(m.nodes)
	force := make([]float64, 2*n)
	spread := make([]float64, n-1) // on each element
	for _, l := range loads {
		require.True(t, l.from >= m.nodes[0]-1e-6 && l.to <= m.nodes[n-1]+1e-6, "%+v on %v to %v", l, m.nodes[0], m.nodes[n-1])
		if l.from == l.to {
			force[2*m.at(l.from)] += l.size
			continue
		}
		for e := range spread {
			overlap := min(l.to, m.nodes[e+1]) - max(l.from, m.nodes[e])
			if overlap > 1e-7 {
				spread[e] += l.size * overlap / (m.nodes[e+1] - m.nodes[e])
			}
		}
	}
	for e, q := range spread {
		l := m.nodes[e+1] - m.nodes[e]
		for i, f := range [4]float64{q * l / 2, q * l * l / 12, q * l / 2, -q * l * l / 12} {
			force[2*e+i] += f
		}
	}
	right := mat.NewVecDense(len(m.free), nil)
	for i, f := range m.free {
		right.SetVec(i, force[f])
	}
	var solved mat.VecDense
	require.NoError(t, m.factored.SolveVecTo(&solved, right))
	moved := make([]float64, 2*n)
	for i, f := range m.free {
		moved[f] = solved.AtVec(i)
	}
	r := effect{make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, len(m.supports))}
	holds := make([]float64, n) // what the elements put on each node
	for e, q := range spread {
		l := m.nodes[e+1] - m.nodes[e]
		k := element(l)
		var ends [4]float64
		for i := range ends {
			ends[i] = -[4]float64{q * l / 2, q * l * l / 12, q * l / 2, -q * l * l / 12}[i]
			for j := range 4 {
				ends[i] += k[i][j] * moved[2*e+j]
			}
		}
		r.shearRight[e], r.shearLeft[e+1] = -ends[0], ends[2]
		if e == 0 {
			r.moment[e] = ends[1]
		}
		r.moment[e+1] = -ends[3]
		holds[e] += ends[0]
		holds[e+1] += ends[2]
	}
	for i := range n {
		r.sag[i] = moved[2*i]
	}
	for i, s := range m.supports {
		r.reactions[i] = force[2*s] - holds[s] + shares(spread, m.nodes, s)
	}
	return r
}

// shares takes back what the elements' own loads had put on a node, which stands in
// both of its sums.
func shares(spread, nodes []float64, at int) float64 {
	sum := 0.0
	for e, q := range spread {
		if e == at || e+1 == at {
			sum -= q * (nodes[e+1] - nodes[e]) / 2
		}
	}
	return sum
}

// Formulas of the trade's handbooks: AWC Design Aid No. 6, Beam Design Formulas
// with Shear and Moment Diagrams (2007): a uniform load on a simple beam, on two
// equal spans, on an overhang; a load at the middle.
func TestModelAgainstBeamFormulas(t *testing.T) {
	m := newModel(t, 0, 4, []float64{0, 4}, nil)
	e := m.solve(t, []bear{{0, 4, 100}})
	assert.InDelta(t, 100*16/8., e.moment[m.at(2)], 1e-6)
	assert.InDelta(t, 5*100*256/384., e.sag[m.at(2)], 1e-6)
	assert.InDelta(t, 200, e.reactions[0], 1e-6)
	e = m.solve(t, []bear{{2, 2, 100}})
	assert.InDelta(t, 100, e.moment[m.at(2)], 1e-6)
	assert.InDelta(t, 50, e.shearRight[m.at(1)], 1e-6)

	m = newModel(t, 0, 8, []float64{0, 4, 8}, nil)
	e = m.solve(t, []bear{{0, 8, 100}})
	assert.InDelta(t, -100*16/8., e.moment[m.at(4)], 1e-6)
	assert.InDelta(t, 10*100*4/8., e.reactions[1], 1e-6)
	e = m.solve(t, []bear{{0, 4, 100}})
	assert.InDelta(t, -100*4/16., e.reactions[2], 1e-6, "the far end lifts")

	m = newModel(t, 0, 5, []float64{0, 4}, nil)
	e = m.solve(t, []bear{{4, 5, 100}})
	assert.InDelta(t, -100*1/2., e.moment[m.at(4)], 1e-6)
	assert.InDelta(t, 100*1*(4*1*4+3*1)/24., e.sag[m.at(5)], 1e-6, "w·a³·(4L + 3a)/24")
	assert.InDelta(t, 112.5, e.reactions[1], 1e-6)
}
