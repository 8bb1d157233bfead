package terrain

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"pierbook/calc/measure"
)

// LeftOut returns for each node by how much the surface through all the others
// misses it, read less predicted. All of them come from one factorization:
//
//	residual i = wi / (A⁻¹)ii          A the matrix of the spline with its plane
//
// Source: S. Rippa, An algorithm for selecting a good value for the parameter c
// in radial basis function interpolation, Advances in Computational
// Mathematics 11 (1999), equation 13, from memory; the tests hold it against
// leaving each reading out in turn. A reading without which the others lie in a
// line has no residual: it is NaN.
func (s *Spline) LeftOut() []float64 {
	s.solve.Do(s.bend)
	n := len(s.Nodes)
	residuals := make([]float64, n)
	for i := range residuals {
		residuals[i] = math.NaN()
	}
	if s.flat {
		return residuals
	}
	identity := mat.NewDense(n+3, n+3, nil)
	for i := range n + 3 {
		identity.Set(i, i, 1)
	}
	var inverse mat.Dense
	_ = s.lu.SolveTo(&inverse, false, identity) // a poor condition costs digits, as in bend
	for i := range n {
		if d := inverse.At(i, i); math.Abs(d) > 1e-9 {
			residuals[i] = s.weight[i] / d
		}
	}
	return residuals
}

// scatter returns the root mean square of the residuals of readings left out,
// each scaled by what its place adds, and how many could be used.
func (s *Spline) scatter() (measure.Length, int) {
	sum, used := 0.0, 0
	for i, residual := range s.LeftOut() {
		if math.IsNaN(residual) {
			continue
		}
		h := min(s.Plane.Leverage(s.Nodes[i].X, s.Nodes[i].Y), 0.99)
		// The plane through the others predicts this place with variance
		// s² (1 + h/(1−h)) = s²/(1−h).
		sum += residual * residual * (1 - h)
		used++
	}
	if used == 0 {
		return 0, 0
	}
	return measure.FromMetres(math.Sqrt(sum / float64(used))), used
}
