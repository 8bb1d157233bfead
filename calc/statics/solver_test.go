package statics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func equalSpans(n int) Run {
	r := Run{End: float64(n), Hinges: make([]bool, n+1)}
	for i := range n + 1 {
		r.Supports = append(r.Supports, float64(i))
	}
	return r
}

// greatest returns the greatest sagging and hogging moment, shear and
// deflection of an answer, sampled finely.
func greatest(a answer) (sagging, hogging, shear, deflection float64) {
	for i := range a.parts {
		p := &a.parts[i]
		for k := range 2001 {
			v, m, d := p.at(p.Long * float64(k) / 2000)
			sagging, hogging = math.Max(sagging, m), math.Max(hogging, -m)
			shear, deflection = math.Max(shear, math.Abs(v)), math.Max(deflection, math.Abs(d))
		}
	}
	return
}

// TestTextbookContinuousBeams checks equal spans under a uniform load, w = L = EI = 1.
func TestTextbookContinuousBeams(t *testing.T) {
	const formulas = "Civil Engineering Formulas Table 2.1; standard beam diagrams"
	for _, c := range []struct {
		name                              string
		spans                             int
		loads                             []Push
		reactions                         []float64
		shear, sagging, hogging, deflect  float64
		toleranceReaction, toleranceOther float64
		source                            string
	}{
		{"one span", 1, []Push{{0, 1, 1}}, []float64{.5, .5}, .5, .125, 0, 5.0 / 384, 1e-9, 1e-5, "derived: wL/2, wL²/8, 5wL⁴/384EI"},
		{"two spans", 2, []Push{{0, 2, 1}}, []float64{3. / 8, 10. / 8, 3. / 8}, 5. / 8, 9. / 128, 1. / 8, 1. / 185, 1e-9, 2e-5, formulas},
		{"two spans, one loaded", 2, []Push{{0, 1, 1}}, []float64{7. / 16, 10. / 16, -1. / 16}, 9. / 16, 49. / 512, 1. / 16, .0092, 1e-9, 5e-5, formulas},
		{"three spans", 3, []Push{{0, 3, 1}}, []float64{.4, 1.1, 1.1, .4}, .6, .08, .1, .0069, 1e-9, 3e-5, formulas},
		{"four spans", 4, []Push{{0, 4, 1}}, []float64{11. / 28, 32. / 28, 26. / 28, 32. / 28, 11. / 28}, 17. / 28, .0772, 3. / 28, .0065, 1e-9, 6e-5, formulas},
		{"five spans", 5, []Push{{0, 5, 1}}, []float64{15. / 38, 43. / 38, 37. / 38, 37. / 38, 43. / 38, 15. / 38}, 23. / 38, .0779, 4. / 38, .0066, 1e-9, 6e-5,
			"AISC Steel Construction Manual (2011), moment diagrams: 15/38, 43/38, 37/38 (from memory)"},
	} {
		a, err := equalSpans(c.spans).Solve(c.loads)
		require.NoError(t, err, c.name)
		for i, want := range c.reactions {
			assert.InDelta(t, want, a.Reactions[i], c.toleranceReaction, "%s: reaction %d (%s)", c.name, i, c.source)
		}
		sagging, hogging, shear, deflection := greatest(a)
		assert.InDelta(t, c.sagging, sagging, c.toleranceOther, c.name+": sagging")
		assert.InDelta(t, c.hogging, hogging, c.toleranceOther, c.name+": hogging")
		assert.InDelta(t, c.shear, shear, c.toleranceOther, c.name+": shear")
		assert.InDelta(t, c.deflect, deflection, c.toleranceOther, c.name+": deflection")
	}
}

// TestOverhangWithPointLoadAtItsTip checks δ = P·a²·(L + a)/(3·EI) and M = P·a, standard beam diagrams.
func TestOverhangWithPointLoadAtItsTip(t *testing.T) {
	const L, a = 3.0, 0.8
	r := Run{Start: 0, End: L + a, Supports: []float64{0, L}, Hinges: make([]bool, 2)}
	solved, err := r.Solve([]Push{{L + a, L + a, 1}})
	require.NoError(t, err)
	tip := &solved.parts[len(solved.parts)-1]
	_, moment, _ := tip.at(0)
	_, _, sag := tip.at(a)
	assert.InDelta(t, -a, moment, 1e-12)
	assert.InDelta(t, a*a*(L+a)/3, sag, 1e-12)
	mirrored, err := Run{Start: -a, End: L, Supports: []float64{0, L}, Hinges: make([]bool, 2)}.Solve([]Push{{-a, -a, 1}})
	require.NoError(t, err)
	_, _, sag = mirrored.parts[0].at(0)
	assert.InDelta(t, a*a*(L+a)/3, sag, 1e-12)
}

// TestJointOverASupportMakesTwoSimpleSpans checks that a hinge parts the run.
func TestJointOverASupportMakesTwoSimpleSpans(t *testing.T) {
	r := equalSpans(2)
	r.Hinges[1] = true
	a, err := r.Solve([]Push{{0, 2, 1}})
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{.5, 1, .5}, a.Reactions, 1e-12)
	_, hogging, _, _ := greatest(a)
	assert.InDelta(t, 0, hogging, 1e-12)
}

// randomRun draws supports, joints, overhangs and loads.
func randomRun(t *rapid.T) (Run, []Push) {
	r := Run{Start: 0}
	n := rapid.IntRange(2, 7).Draw(t, "supports")
	x := rapid.Float64Range(0, 1).Draw(t, "overhang")
	for range n {
		r.Supports = append(r.Supports, x)
		r.Hinges = append(r.Hinges, rapid.Bool().Draw(t, "joint"))
		x += rapid.Float64Range(0.5, 4).Draw(t, "span")
	}
	r.End = r.Supports[n-1] + rapid.Float64Range(0, 1).Draw(t, "overhang")
	var loads []Push
	for range rapid.IntRange(1, 4).Draw(t, "loads") {
		a := rapid.Float64Range(0, r.End).Draw(t, "from")
		b := rapid.Float64Range(a, r.End).Draw(t, "to")
		if rapid.Bool().Draw(t, "point") {
			b = a
		}
		loads = append(loads, Push{a, b, rapid.Float64Range(1, 1000).Draw(t, "size")})
	}
	return r, loads
}

// TestReactionsAddUpToTheLoads checks vertical and moment equilibrium.
func TestReactionsAddUpToTheLoads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, loads := randomRun(t)
		a, err := r.Solve(loads)
		require.NoError(t, err)
		var down, turning float64
		for _, l := range loads {
			down += l.total()
			turning += l.total() * (l.From + l.To) / 2
		}
		var up, back float64
		for i, v := range a.Reactions {
			up += v
			back += v * r.Supports[i]
		}
		require.InDelta(t, down, up, 1e-8*(1+down))
		require.InDelta(t, turning, back, 1e-8*(1+turning))
	})
}

// TestSolverAgreesWithFineIntegration works the same beams a second, slower
// way: supports are very stiff springs removed one by one by the force method,
// with every integral done by summing thin slices.
func TestSolverAgreesWithFineIntegration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, loads := randomRun(t)
		clear(r.Hinges)
		a, err := r.Solve(loads)
		require.NoError(t, err)
		slow := reactionsByIntegration(r, loads)
		scale := 1.0
		for _, l := range loads {
			scale += l.total()
		}
		for i := range slow {
			require.InDelta(t, slow[i], a.Reactions[i], 2e-3*scale, "reaction %d", i)
		}
	})
}

// reactionsByIntegration takes the inner supports away, finds the deflection
// there under the loads and under unit forces by virtual work, each integral as
// a sum of thin slices, and solves for the forces that bring it back to zero.
func reactionsByIntegration(r Run, loads []Push) []float64 {
	const slices = 4000
	n := len(r.Supports)
	left, right := r.Supports[0], r.Supports[n-1]
	step := (r.End - r.Start) / slices
	simple := func(loads []Push) ([]float64, float64, float64) {
		var total, turn float64
		for _, l := range loads {
			total += l.total()
			turn += l.total() * ((l.From+l.To)/2 - left)
		}
		b := turn / (right - left)
		a := total - b
		moments := make([]float64, slices)
		for k := range moments {
			x := r.Start + (float64(k)+0.5)*step
			m := a*math.Max(0, x-left) + b*math.Max(0, x-right)
			for _, l := range loads {
				switch {
				case l.IsPoint():
					m -= l.Size * math.Max(0, x-l.From)
				case x > l.From:
					c := math.Min(x, l.To)
					m -= l.Size * (c - l.From) * (x - (l.From+c)/2)
				}
			}
			moments[k] = m
		}
		return moments, a, b
	}
	under, a, b := simple(loads)
	inner := n - 2
	units, lefts, rights := make([][]float64, inner), make([]float64, inner), make([]float64, inner)
	matrix := make([][]float64, inner)
	for i := range inner {
		s := r.Supports[i+1]
		units[i], lefts[i], rights[i] = simple([]Push{{s, s, 1}})
	}
	product := func(p, q []float64) (sum float64) {
		for k := range p {
			sum += p[k] * q[k] * step
		}
		return sum
	}
	for i := range inner {
		for j := range inner {
			matrix[i] = append(matrix[i], product(units[i], units[j]))
		}
		matrix[i] = append(matrix[i], product(units[i], under))
	}
	forces := gauss(matrix)
	reactions := []float64{a}
	for i, f := range forces {
		reactions[0] -= f * lefts[i]
		b -= f * rights[i]
		reactions = append(reactions, f)
	}
	return append(reactions, b)
}

func gauss(m [][]float64) []float64 {
	n := len(m)
	for i := range n {
		for j := i + 1; j < n; j++ {
			f := m[j][i] / m[i][i]
			for k := i; k <= n; k++ {
				m[j][k] -= f * m[i][k]
			}
		}
	}
	x := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		x[i] = m[i][n]
		for k := i + 1; k < n; k++ {
			x[i] -= m[i][k] * x[k]
		}
		x[i] /= m[i][i]
	}
	return x
}

// TestPointAndUniformLoads: Peurifoy Example 5-1 p.95 (three loads of 190 lb,
// 9120 in-lb) and p.115 (two of 200 lb and 150 plf on a 3x8: 0.24 in).
func TestPointAndUniformLoads(t *testing.T) {
	const inch, lbf = .0254, 4.4482216152605
	const psi = lbf / inch / inch
	r := Run{End: 96 * inch, Supports: []float64{0, 96 * inch}, Hinges: make([]bool, 2)}
	p := 190 * lbf
	a, err := r.Solve([]Push{{From: 24 * inch, To: 24 * inch, Size: p}, {From: 48 * inch, To: 48 * inch, Size: p}, {From: 72 * inch, To: 72 * inch, Size: p}})
	require.NoError(t, err)
	sagging, _, _, _ := greatest(a)
	assert.InEpsilon(t, 9120, sagging/lbf/inch, .005)

	r = Run{End: 108 * inch, Supports: []float64{0, 108 * inch}, Hinges: make([]bool, 2)}
	p = 200 * lbf
	a, err = r.Solve([]Push{{From: 36 * inch, To: 36 * inch, Size: p}, {From: 72 * inch, To: 72 * inch, Size: p}, {From: 0, To: 108 * inch, Size: 150 * lbf / 12 / inch}})
	require.NoError(t, err)
	_, _, _, sag := greatest(a)
	stiffness := 1600000 * psi * 79.39 * math.Pow(inch, 4)
	assert.InDelta(t, .24, sag/stiffness/inch, .006)
}
