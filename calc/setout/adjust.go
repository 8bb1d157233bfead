package setout

import (
	"errors"
	"math"

	"pierbook/calc/measure"
)

// Six are the four sides and two diagonals of a quadrilateral with the corners
// 0, 1, 2, 3 in order round it: sides 01, 12, 23, 30, diagonals 02 and 13.
type Six [6]measure.Length

// ends are the corners each of the six lengths joins.
var ends = [6][2]int{{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}, {1, 3}}

// Verdict is what six readings are good for.
type Verdict string

// The verdicts, by the test value |w|: below 1.96 the readings agree (a chance
// of one in twenty), up to 3.29 they may (one in a thousand), above it one of
// them is wrong.
const (
	Agree        Verdict = "the readings agree"
	MeasureAgain Verdict = "measure all six again before moving a corner"
	Mistake      Verdict = "one reading is a mistake: move nothing"
)

const (
	doubtful = 1.96
	refused  = 3.29
)

// leastRedundancy is a share of a mistake below which nothing can be said of a
// reading: the figure is as good as flat. A frame ten times as long as it is wide
// still has 1/400 in its short sides.
const leastRedundancy = 1e-5

// point is a place in plan, in metres.
type point struct{ x, y float64 }

// Adjustment is the figure that fits six readings best.
type Adjustment struct {
	Measured   Six
	Adjusted   Six
	Residual   [6]measure.Length // adjusted less measured
	Redundancy [6]float64        // share of a mistake that shows in its own residual; they add up to 1
	TestValue  float64           // |w|, the same for all six readings
	Verdict    Verdict
	Slips      [6]Slip
	Sigma      measure.Length
	corners    [4]point      // corner 0 at the origin, corner 1 on the x axis
	inverse    [5][5]float64 // of the normal equations: the cofactors of the free coordinates
}

// Slip is the single mistake in one reading that would explain everything.
type Slip struct {
	Size  measure.Length // measured less true
	Usual string         // which usual slip it may be, or ""; named once the readings do not agree
	Near  bool           // it comes within one standard deviation of that slip, else within two
}

// ErrNoFigure is returned when six lengths cannot be the sides and diagonals of
// anything near a rectangle.
var ErrNoFigure = errors.New("these six lengths make no four-cornered figure")

// Adjust fits a quadrilateral to six readings of equal weight by least squares
// (Gauss–Newton on the five coordinates that are free once corner 0 and the
// direction of side 01 are held). There is one condition more than is needed,
// so a mistake can be found but not placed.
func Adjust(measured Six, sigma measure.Length) (Adjustment, error) {
	for _, l := range measured {
		if l <= 0 {
			return Adjustment{}, ErrNoFigure
		}
	}
	p, err := startFigure(measured)
	if err != nil {
		return Adjustment{}, err
	}
	var inverse [5][5]float64
	var rows [6][5]float64
	converged := false
	for range 30 {
		var misfit [6]float64
		rows, misfit = linearise(p, measured)
		inverse, err = invert(normal(rows))
		if err != nil {
			return Adjustment{}, err
		}
		step := multiply(inverse, transposed(rows, misfit))
		p[1].x += step[0]
		p[2].x, p[2].y = p[2].x+step[1], p[2].y+step[2]
		p[3].x, p[3].y = p[3].x+step[3], p[3].y+step[4]
		if converged = largest(step) < 1e-12; converged {
			break
		}
	}
	if !converged {
		return Adjustment{}, ErrNoFigure // the readings are so far apart that none comes near them
	}
	return assess(p, measured, rows, inverse, sigma)
}

// startFigure builds corner 2 and 3 from the held side and the lengths to them.
func startFigure(m Six) ([4]point, error) {
	var p [4]point
	a := m[0].Metres()
	p[1] = point{a, 0}
	var ok2, ok3 bool
	p[2], ok2 = apex(a, m[4].Metres(), m[1].Metres())
	p[3], ok3 = apex(a, m[3].Metres(), m[5].Metres())
	if !ok2 || !ok3 {
		return p, ErrNoFigure
	}
	return p, nil
}

// apex returns the corner of a triangle on the base 0–a with the sides r from
// the origin and s from the base's other end.
func apex(a, r, s float64) (point, bool) {
	x := (a*a + r*r - s*s) / (2 * a)
	square := r*r - x*x
	if square <= 0 {
		return point{}, false
	}
	return point{x, math.Sqrt(square)}, true
}

// column gives for each corner the unknown that its x and y are, or −1.
var column = [4][2]int{{-1, -1}, {0, -1}, {1, 2}, {3, 4}}

// linearise returns the derivatives of the six lengths by the five unknowns and
// the readings less the present lengths.
func linearise(p [4]point, measured Six) (rows [6][5]float64, misfit [6]float64) {
	for i, e := range ends {
		from, to := e[0], e[1]
		dx, dy := p[to].x-p[from].x, p[to].y-p[from].y
		length := math.Hypot(dx, dy)
		misfit[i] = measured[i].Metres() - length
		for _, end := range []struct {
			corner int
			sign   float64
		}{{from, -1}, {to, 1}} {
			if c := column[end.corner][0]; c >= 0 {
				rows[i][c] = end.sign * dx / length
			}
			if c := column[end.corner][1]; c >= 0 {
				rows[i][c] = end.sign * dy / length
			}
		}
	}
	return rows, misfit
}

func assess(p [4]point, measured Six, rows [6][5]float64, inverse [5][5]float64, sigma measure.Length) (Adjustment, error) {
	a := Adjustment{Measured: measured, Sigma: sigma, corners: p, inverse: inverse}
	var squares float64
	for i, e := range ends {
		length := math.Hypot(p[e[1]].x-p[e[0]].x, p[e[1]].y-p[e[0]].y)
		if math.IsNaN(length) {
			return Adjustment{}, ErrNoFigure
		}
		residual := length - measured[i].Metres()
		a.Adjusted[i] = measure.FromMetres(length)
		a.Residual[i] = measure.FromMetres(residual)
		a.Redundancy[i] = 1 - quadratic(inverse, rows[i])
		if a.Redundancy[i] < leastRedundancy {
			return Adjustment{}, ErrNoFigure
		}
		squares += residual * residual
		a.Slips[i].Size = measure.FromMetres(-residual / a.Redundancy[i])
	}
	a.TestValue = math.Sqrt(squares) / sigma.Metres()
	switch {
	case a.TestValue < doubtful:
		a.Verdict = Agree
	case a.TestValue <= refused:
		a.Verdict = MeasureAgain
	default:
		a.Verdict = Mistake
	}
	return a, nil
}
