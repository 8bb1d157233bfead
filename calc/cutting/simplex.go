package cutting

import "math"

// simplex is a linear programme with bounded columns, solved by the revised
// simplex method with a dense inverse of the basis:
//
//	least Σ cost x   with   Σ a x − s = 0,   lo ≤ x, s ≤ hi
//
// s is the activity of a row, a column of its own, so that a bound on a row is
// a bound on a column. Columns are added while a relaxation is priced, rows
// while the search branches. Its floating numbers only guide the search: every
// bound is worked out again from whole numbers (certificate.go).
type simplex struct {
	*budget
	rows    int
	index   [][]int32 // rows of the entries of each column
	value   [][]float64
	cost    []float64
	lo, hi  []float64
	where   []int32 // place in the basis, atLower or atUpper
	logical []int32 // column of the activity of each row, also of rows taken away
	basis   []int32 // column in each place
	inverse [][]float64
	x       []float64 // of the columns in the basis
	dual    []float64 // of the rows
	work    []float64 // the entering column in terms of the basis
	filled  []int32   // scratch: entries of the pivot that are not zero
	pivots  int
}

const (
	atLower = -1
	atUpper = -2

	tolerance = 1e-9 // on reduced costs and bounds
	pivotal   = 1e-8 // least pivot
)

// addColumn adds a column at its lower bound and returns its number.
func (s *simplex) addColumn(index []int32, value []float64, cost, lo, hi float64) int32 {
	s.index = append(s.index, index)
	s.value = append(s.value, value)
	s.cost = append(s.cost, cost)
	s.lo = append(s.lo, lo)
	s.hi = append(s.hi, hi)
	s.where = append(s.where, atLower)
	if lo != 0 {
		s.recompute()
	}
	return int32(len(s.cost) - 1)
}

// addRow adds a row with the bounds on its activity, which enters the basis.
// coefficient tells the entry of each column.
func (s *simplex) addRow(lo, hi float64, coefficient func(column int32) float64) {
	r := s.rows
	s.rows++
	entry := make([]float64, r+1, r+16)
	for place, column := range s.basis {
		if a := coefficient(column); a != 0 {
			for k, v := range s.inverse[place] {
				entry[k] += a * v
			}
		}
	}
	entry[r] = -1
	for i := range s.inverse {
		s.inverse[i] = append(s.inverse[i], 0)
	}
	s.inverse = append(s.inverse, entry)
	for column := range s.index {
		if a := coefficient(int32(column)); a != 0 {
			s.index[column] = append(s.index[column], int32(r))
			s.value[column] = append(s.value[column], a)
		}
	}
	if r < len(s.logical) {
		l := s.logical[r]
		s.index[l], s.value[l] = []int32{int32(r)}, []float64{-1}
		s.lo[l], s.hi[l] = lo, hi
	} else {
		s.logical = append(s.logical, s.addColumn([]int32{int32(r)}, []float64{-1}, 0, 0, hi))
		s.lo[s.logical[r]] = lo
	}
	s.where[s.logical[r]] = int32(r)
	s.basis = append(s.basis, s.logical[r])
	s.x = append(s.x, 0)
	s.dual = append(s.dual, 0)
	s.work = append(s.work, 0)
	s.recompute()
}

// at returns the value of a column.
func (s *simplex) at(column int32) float64 {
	switch place := s.where[column]; place {
	case atLower:
		return s.lo[column]
	case atUpper:
		return s.hi[column]
	default:
		return s.x[place]
	}
}

// recompute works out the basic columns from the others, and the duals.
func (s *simplex) recompute() {
	right := make([]float64, s.rows)
	s.use(2*s.rows*s.rows + 2*len(s.where))
	for column, place := range s.where {
		if place >= 0 {
			continue
		}
		if v := s.at(int32(column)); v != 0 {
			for k, row := range s.index[column] {
				right[row] -= s.value[column][k] * v
			}
		}
	}
	for r := range s.dual {
		s.dual[r] = 0
	}
	for place, line := range s.inverse {
		sum := 0.0
		for k, v := range line {
			sum += v * right[k]
		}
		s.x[place] = sum
		if c := s.cost[s.basis[place]]; c != 0 {
			for k, v := range line {
				s.dual[k] += c * v
			}
		}
	}
}

// reduced returns the reduced cost of a column.
func (s *simplex) reduced(column int32) float64 {
	c := s.cost[column]
	value := s.value[column]
	for k, row := range s.index[column] {
		c -= s.dual[row] * value[k]
	}
	return c
}

// express writes the column in terms of the basis into work.
func (s *simplex) express(column int32) {
	index, value := s.index[column], s.value[column]
	s.use(s.rows * (len(index) + 1))
	for place, line := range s.inverse {
		sum := 0.0
		for k, row := range index {
			sum += line[row] * value[k]
		}
		s.work[place] = sum
	}
}

// exchange lets a column enter at a place of the basis. The column that leaves
// goes to the bound named; amount is by how much the entering one moves.
func (s *simplex) exchange(place int, column int32, amount, reduced float64, leavesTo int32) {
	entering := s.at(column) + amount
	for i := range s.x {
		s.x[i] -= amount * s.work[i]
	}
	pivot := s.inverse[place]
	scale := 1 / s.work[place]
	s.filled = s.filled[:0]
	for k, v := range pivot {
		if v != 0 {
			pivot[k] = v * scale
			s.filled = append(s.filled, int32(k))
		}
	}
	for i, line := range s.inverse {
		if f := s.work[i]; i != place && f != 0 {
			s.use(min(len(line), 3*len(s.filled)))
			s.subtract(line, pivot, f)
		}
	}
	for k, v := range pivot {
		s.dual[k] += reduced * v
	}
	s.where[s.basis[place]] = leavesTo
	s.basis[place] = column
	s.where[column] = int32(place)
	s.x[place] = entering
	s.pivots++
	if s.pivots%128 == 0 {
		s.refresh()
	}
}

// subtract takes f times the pivot from a line of the inverse, entry by entry
// where the pivot is mostly empty.
func (s *simplex) subtract(line, pivot []float64, f float64) {
	if 3*len(s.filled) < len(pivot) {
		for _, k := range s.filled {
			line[k] -= f * pivot[k]
		}
		return
	}
	line = line[:len(pivot)]
	for k, v := range pivot {
		line[k] -= f * v
	}
}

// refresh puts right what rounding has worn off.
func (s *simplex) refresh() {
	if s.wear() > 1e-7 {
		s.invert()
	}
	s.recompute()
}

// wear returns how far the inverse has drifted, judged by the entering of
// every basic column in terms of itself.
func (s *simplex) wear() float64 {
	worst := 0.0
	for place, column := range s.basis {
		sum := -1.0
		for k, row := range s.index[column] {
			sum += s.inverse[place][row] * s.value[column][k]
		}
		worst = max(worst, math.Abs(sum))
	}
	return worst
}

// invert works out the inverse anew by elimination with row exchanges.
func (s *simplex) invert() {
	n := s.rows
	s.use(2 * n * n * n)
	b := make([][]float64, n)
	for i := range b {
		b[i] = make([]float64, n)
		clear(s.inverse[i])
		s.inverse[i][i] = 1
	}
	for place, column := range s.basis {
		for k, row := range s.index[column] {
			b[row][place] = s.value[column][k]
		}
	}
	for c := range n {
		best := c
		for r := c + 1; r < n; r++ {
			if math.Abs(b[r][c]) > math.Abs(b[best][c]) {
				best = r
			}
		}
		b[c], b[best] = b[best], b[c]
		s.inverse[c], s.inverse[best] = s.inverse[best], s.inverse[c]
		eliminate(b, s.inverse, c)
	}
}

// eliminate clears column c of b from all rows but row c.
func eliminate(b, inverse [][]float64, c int) {
	scale := 1 / b[c][c]
	for k := range b {
		b[c][k] *= scale
		inverse[c][k] *= scale
	}
	for r := range b {
		f := b[r][c]
		if r == c || f == 0 {
			continue
		}
		for k := range b {
			b[r][k] -= f * b[c][k]
			inverse[r][k] -= f * inverse[c][k]
		}
	}
}
