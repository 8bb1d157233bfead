package heights

import "math"

// pairing chooses for each row at most one column, no column twice, so that the
// worths of the pairs add up to the most. A worth of zero or less makes no pair.
// It returns the column of each row, −1 for none.
//
// Source: the Hungarian method, H. W. Kuhn 1955, in the form with shortest
// augmenting paths and potentials; from memory.
func pairing(worth [][]int64) []int {
	rows := len(worth)
	if rows == 0 {
		return nil
	}
	columns := len(worth[0]) + rows // one to spare for each row
	cost := func(r, c int) int64 {
		if c < len(worth[r]) && worth[r][c] > 0 {
			return -worth[r][c]
		}
		return 0
	}
	// Index 0 of rows and columns stands for none.
	u, v := make([]int64, rows+1), make([]int64, columns+1)
	rowOf, before := make([]int, columns+1), make([]int, columns+1)
	for r := 1; r <= rows; r++ {
		least, seen := make([]int64, columns+1), make([]bool, columns+1)
		for c := range least {
			least[c] = math.MaxInt64
		}
		rowOf[0] = r
		at := 0
		for rowOf[at] != 0 {
			seen[at] = true
			next, step := 0, int64(math.MaxInt64)
			for c := 1; c <= columns; c++ {
				if seen[c] {
					continue
				}
				if reduced := cost(rowOf[at]-1, c-1) - u[rowOf[at]] - v[c]; reduced < least[c] {
					least[c], before[c] = reduced, at
				}
				if least[c] < step {
					next, step = c, least[c]
				}
			}
			for c := 0; c <= columns; c++ {
				if seen[c] {
					u[rowOf[c]] += step
					v[c] -= step
				} else if c > 0 {
					least[c] -= step
				}
			}
			at = next
		}
		for at != 0 {
			rowOf[at] = rowOf[before[at]]
			at = before[at]
		}
	}
	chosen := make([]int, rows)
	for r := range chosen {
		chosen[r] = -1
	}
	for c := 1; c <= columns; c++ {
		if r := rowOf[c] - 1; r >= 0 && cost(r, c-1) < 0 {
			chosen[r] = c - 1
		}
	}
	return chosen
}
