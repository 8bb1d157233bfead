package strength

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func equalSpans(n int) run {
	r := run{end: float64(n), hinges: make([]bool, n+1)}
	for i := range n + 1 {
		r.supports = append(r.supports, float64(i))
	}
	return r
}

// greatest returns the greatest sagging and hogging moment, shear and
// deflection of an answer, sampled finely.
func greatest(a answer) (sagging, hogging, shear, deflection float64) {
	for i := range a.parts {
		p := &a.parts[i]
		for k := range 2001 {
			v, m, d := p.at(p.long * float64(k) / 2000)
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
		loads                             []push
		reactions                         []float64
		shear, sagging, hogging, deflect  float64
		toleranceReaction, toleranceOther float64
		source                            string
	}{
		{"one span", 1, []push{{0, 1, 1}}, []float64{.5, .5}, .5, .125, 0, 5.0 / 384, 1e-9, 1e-5, "any textbook"},
		{"two spans", 2, []push{{0, 2, 1}}, []float64{3. / 8, 10. / 8, 3. / 8}, 5. / 8, 9. / 128, 1. / 8, 1. / 185, 1e-9, 2e-5, formulas},
		{"two spans, one loaded", 2, []push{{0, 1, 1}}, []float64{7. / 16, 10. / 16, -1. / 16}, 9. / 16, 49. / 512, 1. / 16, .0092, 1e-9, 5e-5, formulas},
		{"three spans", 3, []push{{0, 3, 1}}, []float64{.4, 1.1, 1.1, .4}, .6, .08, .1, .0069, 1e-9, 3e-5, formulas},
		{"four spans", 4, []push{{0, 4, 1}}, []float64{11. / 28, 32. / 28, 26. / 28, 32. / 28, 11. / 28}, 17. / 28, .0772, 3. / 28, .0065, 1e-9, 6e-5, formulas},
		{"five spans", 5, []push{{0, 5, 1}}, []float64{15. / 38, 43. / 38, 37. / 38, 37. / 38, 43. / 38, 15. / 38}, 23. / 38, .0779, 4. / 38, .0066, 1e-9, 6e-5, "steel-manual moment diagrams: 15/38, 43/38, 37/38 (from memory)"},
	} {
		a, err := equalSpans(c.spans).solve(c.loads)
		require.NoError(t, err, c.name)
		for i, want := range c.reactions {
			assert.InDelta(t, want, a.reactions[i], c.toleranceReaction, "%s: reaction %d (%s)", c.name, i, c.source)
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
	r := run{start: 0, end: L + a, supports: []float64{0, L}, hinges: make([]bool, 2)}
	solved, err := r.solve([]push{{L + a, L + a, 1}})
	require.NoError(t, err)
	tip := &solved.parts[len(solved.parts)-1]
	_, moment, _ := tip.at(0)
	_, _, sag := tip.at(a)
	assert.InDelta(t, -a, moment, 1e-12)
	assert.InDelta(t, a*a*(L+a)/3, sag, 1e-12)
	mirrored, err := run{start: -a, end: L, supports: []float64{0, L}, hinges: make([]bool, 2)}.solve([]push{{-a, -a, 1}})
	require.NoError(t, err)
	_, _, sag = mirrored.parts[0].at(0)
	assert.InDelta(t, a*a*(L+a)/3, sag, 1e-12)
}

// TestJointOverASupportMakesTwoSimpleSpans checks that a hinge parts the run.
func TestJointOverASupportMakesTwoSimpleSpans(t *testing.T) {
	r := equalSpans(2)
	r.hinges[1] = true
	a, err := r.solve([]push{{0, 2, 1}})
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{.5, 1, .5}, a.reactions, 1e-12)
	_, hogging, _, _ := greatest(a)
	assert.InDelta(t, 0, hogging, 1e-12)
}

// randomRun draws supports, joints, overhangs and loads.
func randomRun(t *rapid.T) (run, []push) {
	r := run{start: 0}
	n := rapid.IntRange(2, 7).Draw(t, "supports")
	x := rapid.Float64Range(0, 1).Draw(t, "overhang")
	for range n {
		r.supports = append(r.supports, x)
		r.hinges = append(r.hinges, rapid.Bool().Draw(t, "joint"))
		x += rapid.Float64Range(0.5, 4).Draw(t, "span")
	}
	r.end = r.supports[n-1] + rapid.Float64Range(0, 1).Draw(t, "overhang")
	var loads []push
	for range rapid.IntRange(1, 4).Draw(t, "loads") {
		a := rapid.Float64Range(0, r.end).Draw(t, "from")
		b := rapid.Float64Range(a, r.end).Draw(t, "to")
		if rapid.Bool().Draw(t, "point") {
			b = a
		}
		loads = append(loads, push{a, b, rapid.Float64Range(1, 1000).Draw(t, "size")})
	}
	return r, loads
}

// TestReactionsAddUpToTheLoads checks vertical and moment equilibrium.
func TestReactionsAddUpToTheLoads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, loads := randomRun(t)
		a, err := r.solve(loads)
		require.NoError(t, err)
		var down, turning float64
		for _, l := range loads {
			down += l.total()
			turning += l.total() * (l.from + l.to) / 2
		}
		var up, back float64
		for i, v := range a.reactions {
			up += v
			back += v * r.supports[i]
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
		clear(r.hinges)
		a, err := r.solve(loads)
		require.NoError(t, err)
		slow := reactionsByIntegration(r, loads)
		scale := 1.0
		for _, l := range loads {
			scale += l.total()
		}
		for i := range slow {
			require.InDelta(t, slow[i], a.reactions[i], 2e-3*scale, "reaction %d", i)
		}
	})
}

// reactionsByIntegration takes the inner supports away, finds the deflection
// there under the loads and under unit forces by virtual work, each integral as
// a sum of thin slices, and solves for the forces that bring it back to zero.
func reactionsByIntegration(r run, loads []push) []float64 {
	const slices = 4000
	n := len(r.supports)
	left, right := r.supports[0], r.supports[n-1]
	step := (r.end - r.start) / slices
	simple := func(loads []push) ([]float64, float64, float64) {
		var total, turn float64
		for _, l := range loads {
			total += l.total()
			turn += l.total() * ((l.from+l.to)/2 - left)
		}
		b := turn / (right - left)
		a := total - b
		moments := make([]float64, slices)
		for k := range moments {
			x := r.start + (float64(k)+0.5)*step
			m := a*math.Max(0, x-left) + b*math.Max(0, x-right)
			for _, l := range loads {
				switch {
				case l.point():
					m -= l.size * math.Max(0, x-l.from)
				case x > l.from:
					c := math.Min(x, l.to)
					m -= l.size * (c - l.from) * (x - (l.from+c)/2)
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
		s := r.supports[i+1]
		units[i], lefts[i], rights[i] = simple([]push{{s, s, 1}})
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
