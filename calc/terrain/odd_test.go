package terrain

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
)

// drawnSite is ground drawn by lot under a grid of piers: it slopes, bends, may
// have a bank with a sharp edge, and is uneven at each place; spots outside may be
// read too.
func drawnSite(r *rand.Rand) []Node {
	const in = 0.0254
	along, across := 3+r.IntN(4), 3+r.IntN(2)
	bay, wide := 0.9+r.Float64()*1.2, 1.2+r.Float64()*1.2
	slopeX, slopeY := r.NormFloat64()*0.10, r.NormFloat64()*0.10
	bendX, bendY := r.NormFloat64()*0.006, r.NormFloat64()*0.006
	uneven := (0.25 + r.Float64()) * in
	bank, at, turn := 0.0, r.Float64(), r.Float64()*2*math.Pi
	if r.IntN(2) == 0 {
		bank = 0.2 + 0.3*r.Float64()
	}
	long := float64(along-1) * bay
	height := func(x, y float64) float64 {
		z := slopeX*x + slopeY*y + bendX*x*x + bendY*y*y + r.NormFloat64()*uneven
		if past := (x-at*long)*math.Cos(turn) + (y-wide)*math.Sin(turn); past > 0 {
			z -= bank * past
		}
		return z
	}
	var nodes []Node
	for i := range along {
		for k := range across {
			if r.IntN(5) == 0 { // not read
				continue
			}
			x, y := float64(i)*bay, float64(k)*wide
			nodes = append(nodes, Node{Name: fmt.Sprintf("%c%d", 'A'+k, i+1), X: measure.FromMetres(x), Y: measure.FromMetres(y), Height: measure.FromMetres(height(x, y))})
		}
	}
	for i := range r.IntN(3) {
		x, y := r.Float64()*long, -0.9
		nodes = append(nodes, Node{Name: fmt.Sprintf("E%d", i+1), X: measure.FromMetres(x), Y: measure.FromMetres(y), Height: measure.FromMetres(height(x, y))})
	}
	return nodes
}

// feet are the slips of a rod in feet and inches.
func feet(Node) []Mend {
	return []Mend{{"a foot", measure.Foot}, {"a foot", -measure.Foot}, {"an inch", measure.Inch}, {"an inch", -measure.Inch}}
}

// On 500 sites drawn by lot, half of them with a bank, nine readings or more: nine
// in ten slips of a foot in one reading are named, and on fewer than one site in
// twenty a reading is called odd that is none.
func TestSlipsOfAFootOnFiveHundredSites(t *testing.T) {
	r := rand.New(rand.NewPCG(2027, 5))
	sites, found, alone, alarms := 0, 0, 0, 0
	for sites < 500 {
		nodes := drawnSite(r)
		s, ok := NewSpline(nodes)
		if len(nodes) < 9 || !ok {
			continue
		}
		sites++
		if len(s.Odd(feet)) > 0 {
			alarms++
		}
		slip := r.IntN(len(nodes))
		nodes[slip].Height += measure.Foot * measure.Length(1-2*r.IntN(2))
		s, _ = NewSpline(nodes)
		odd := s.Odd(feet)
		if slices.ContainsFunc(odd, func(o Odd) bool { return o.Node.Name == nodes[slip].Name }) {
			found++
			if len(odd) == 1 {
				alone++
			}
		}
	}
	t.Logf("of %d sites: %d slips named, %d of them alone; %d false alarms", sites, found, alone, alarms)
	assert.GreaterOrEqual(t, found, 450)
	assert.GreaterOrEqual(t, alone, 350)
	assert.Less(t, alarms, 25)
}

// The energy of mended heights, told from one solution, is that of the spline of
// the heights with the slip taken out; a bank that lies along the lattice leaves
// none.
func TestEnergyOfMendedHeights(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	nodes := drawnSite(r)
	s, ok := NewSpline(nodes)
	require.True(t, ok)
	for _, rough := range roughness {
		b, ok := s.bendingWith(rough)
		require.True(t, ok)
		for i := range nodes {
			changed := slices.Clone(nodes)
			changed[i].Height += measure.Foot / 3
			again, _ := NewSpline(changed)
			again.frame = s.frame
			other, _ := again.bendingWith(rough)
			assert.InEpsilon(t, other.energy, b.mended(i, (measure.Foot/3).Metres()), 1e-6)
		}
	}
	var bank []Node
	for i := range 5 {
		for k := range 4 {
			x, y := float64(i), float64(k)
			bank = append(bank, Node{Name: fmt.Sprintf("%c%d", 'A'+k, i+1), X: measure.FromMetres(x), Y: measure.FromMetres(y), Height: measure.FromMetres(0.1*x - 0.4*max(0, x-2))})
		}
	}
	s, _ = NewSpline(bank)
	b, _ := s.bendingWith(0.01)
	assert.Less(t, b.besideABank(s.places), 1e-6*b.energy)
	assert.Empty(t, s.Odd(feet), "the edge of a bank is no slip")
}

// Franke's sample points of a smooth surface, and a plane: published ground without
// a slip raises no alarm. R. Franke, Mathematics of Computation 38 (1982), test
// function F1; here on a lattice of our own, 10 m wide, its hills a foot high.
func TestNoAlarmOnFrankesSurface(t *testing.T) {
	franke := func(x, y float64) float64 {
		return 0.75*math.Exp(-((9*x-2)*(9*x-2)+(9*y-2)*(9*y-2))/4) + 0.75*math.Exp(-(9*x+1)*(9*x+1)/49-(9*y+1)/10) +
			0.5*math.Exp(-((9*x-7)*(9*x-7)+(9*y-3)*(9*y-3))/4) - 0.2*math.Exp(-(9*x-4)*(9*x-4)-(9*y-7)*(9*y-7))
	}
	var nodes []Node
	for i := range 6 {
		for k := range 6 {
			x, y := float64(i)/5, float64(k)/5
			nodes = append(nodes, Node{Name: fmt.Sprintf("N%d%d", i, k), X: measure.FromMetres(10 * x), Y: measure.FromMetres(10 * y), Height: measure.FromMetres(0.3 * franke(x, y))})
		}
	}
	s, ok := NewSpline(nodes)
	require.True(t, ok)
	assert.Empty(t, s.Odd(feet))
	nodes[14].Height += measure.Foot * 2
	s, _ = NewSpline(nodes)
	odd := s.Odd(func(Node) []Mend { return []Mend{{"two feet", -2 * measure.Foot}} })
	require.NotEmpty(t, odd)
	assert.Equal(t, nodes[14].Name, odd[0].Node.Name)
}

// Four hundred readings are looked through in no time, and the slip is found.
func TestOddAmongFourHundred(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	var nodes []Node
	for i := range 20 {
		for k := range 20 {
			x, y := float64(i), float64(k)
			nodes = append(nodes, Node{Name: fmt.Sprintf("N%d-%d", i, k), X: measure.FromMetres(x), Y: measure.FromMetres(y), Height: measure.FromMetres(0.05*x + 0.002*y*y + 0.01*r.NormFloat64())})
		}
	}
	nodes[210].Height -= measure.Foot
	s, ok := NewSpline(nodes)
	require.True(t, ok)
	odd := s.Odd(feet)
	require.NotEmpty(t, odd)
	assert.Equal(t, nodes[210].Name, odd[0].Node.Name)
}

func BenchmarkOdd(b *testing.B) {
	nodes := drawnSite(rand.New(rand.NewPCG(3, 4)))
	s, _ := NewSpline(nodes)
	for b.Loop() {
		s.Odd(feet)
	}
}
