package setout

import "math"

// The five-by-five algebra of the adjustment. It is small enough to stand here
// in full, and is checked against a general linear-algebra library in the tests.

// normal returns AᵀA.
func normal(rows [6][5]float64) (n [5][5]float64) {
	for i := range 5 {
		for j := range 5 {
			for _, row := range rows {
				n[i][j] += row[i] * row[j]
			}
		}
	}
	return n
}

// transposed returns Aᵀv.
func transposed(rows [6][5]float64, v [6]float64) (t [5]float64) {
	for i := range 5 {
		for k, row := range rows {
			t[i] += row[i] * v[k]
		}
	}
	return t
}

func multiply(m [5][5]float64, v [5]float64) (r [5]float64) {
	for i := range 5 {
		for j := range 5 {
			r[i] += m[i][j] * v[j]
		}
	}
	return r
}

// quadratic returns vᵀMv.
func quadratic(m [5][5]float64, v [5]float64) float64 {
	var sum float64
	for i, part := range multiply(m, v) {
		sum += part * v[i]
	}
	return sum
}

func largest(v [5]float64) float64 {
	var most float64
	for _, x := range v {
		most = math.Max(most, math.Abs(x))
	}
	return most
}

// invert returns the inverse by Gauss–Jordan elimination with row pivoting, or
// [ErrNoFigure] when the figure is too flat to have one.
func invert(m [5][5]float64) (inverse [5][5]float64, err error) {
	for i := range 5 {
		inverse[i][i] = 1
	}
	for c := range 5 {
		pivot := c
		for r := c + 1; r < 5; r++ {
			if math.Abs(m[r][c]) > math.Abs(m[pivot][c]) {
				pivot = r
			}
		}
		if math.Abs(m[pivot][c]) < 1e-9 {
			return inverse, ErrNoFigure
		}
		m[c], m[pivot] = m[pivot], m[c]
		inverse[c], inverse[pivot] = inverse[pivot], inverse[c]
		scale := 1 / m[c][c]
		for j := range 5 {
			m[c][j] *= scale
			inverse[c][j] *= scale
		}
		for r := range 5 {
			if r == c {
				continue
			}
			f := m[r][c]
			for j := range 5 {
				m[r][j] -= f * m[c][j]
				inverse[r][j] -= f * inverse[c][j]
			}
		}
	}
	return inverse, nil
}
