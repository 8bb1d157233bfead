package cutting_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
	"pgregory.net/rapid"

	"pierbook/calc/cutting"
	"pierbook/calc/cutting/verify"
	"pierbook/calc/measure"
)

// patternsOf lists every way to cut a stick of the room into pieces, as counts.
func patternsOf(p cutting.Problem, room measure.Length) [][]float64 {
	var all [][]float64
	count := make([]float64, len(p.Pieces))
	var fill func(i int, room measure.Length)
	fill = func(i int, room measure.Length) {
		if i == len(count) {
			if slices.Max(count) > 0 {
				all = append(all, slices.Clone(count))
			}
			return
		}
		for n := 0; n <= p.Pieces[i].Count && room >= 0; n++ {
			count[i] = float64(n)
			fill(i+1, room)
			room -= p.Pieces[i].Length + p.Kerf
		}
		count[i] = 0
	}
	fill(0, room)
	return all
}

// relaxation returns the least cost over fractions of patterns, by a general
// linear-programming library over the full list of patterns, or a hundredth
// less.
func relaxation(t *rapid.T, p cutting.Problem) float64 {
	var cost []float64
	var columns [][]float64
	for _, s := range p.Stock {
		for _, pattern := range patternsOf(p, s.Length+p.Kerf) {
			columns, cost = append(columns, pattern), append(cost, float64(s.Price))
		}
	}
	n, m := len(columns), len(p.Pieces)
	a := mat.NewDense(m, n+m, nil)
	b := make([]float64, m)
	for i := range m {
		// A little more than the count keeps the library from going in circles;
		// it can raise the value by a hundredth at most.
		b[i] = float64(p.Pieces[i].Count) + 1e-6*math.Sqrt(float64(i+2))
		for j, column := range columns {
			a.Set(i, j, column[i])
		}
		a.Set(i, n+i, -1) // pieces over
	}
	value, _, err := lp.Simplex(append(cost, make([]float64, m)...), a, b, 1e-9, nil)
	require.NoError(t, err)
	return value - 0.01
}

func TestBoundAgainstGeneralLinearProgramming(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := cutting.Problem{Kerf: measure.Length(rapid.IntRange(0, 2).Draw(t, "kerf")), Goals: cutting.LeastCost}
		for range rapid.IntRange(1, 3).Draw(t, "lengths") {
			p.Stock = append(p.Stock, cutting.Stock{
				Length: measure.Length(rapid.IntRange(40, 70).Draw(t, "stock")),
				Price:  int64(rapid.IntRange(300, 900).Draw(t, "price")), Priced: true,
			})
		}
		for _, length := range rapid.SliceOfNDistinct(rapid.IntRange(11, 40), 1, 5, rapid.ID[int]).Draw(t, "pieces") {
			p.Pieces = append(p.Pieces, cutting.Piece{Length: measure.Length(length), Count: rapid.IntRange(1, 9).Draw(t, "count")})
		}
		r, err := cutting.Plan(p)
		require.NoError(t, err)
		require.NoError(t, verify.Plan(p, r))
		low := relaxation(t, p)
		require.GreaterOrEqual(t, float64(r.Cost), low, "cost below the relaxation")
		// The certificate proves the relaxation to the last whole unit, unless a
		// quicker bound was enough to prove the cost.
		if c := r.Proofs[0].Certificate; c.Bound != r.Cost {
			require.GreaterOrEqual(t, float64(c.Bound), math.Ceil(low), "certificate weaker than the relaxation")
		}
	})
}

func TestEveryStickAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := small(t)
		r, err := cutting.Plan(p)
		if err != nil {
			return
		}
		for _, s := range r.Sticks {
			sum := s.Left
			if s.Trim > 0 {
				sum += s.Trim + p.Kerf
			}
			for _, c := range s.Cuts {
				sum += c.Length + p.Kerf
			}
			// The last kerf may fall off the end, in whole or in part.
			if s.Left == 0 {
				sum = min(sum, s.Length)
			}
			require.Equal(t, s.Length, sum)
		}
	})
}
