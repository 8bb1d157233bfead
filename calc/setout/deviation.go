package setout

import (
	"math"

	"pierbook/calc/measure"
)

// placing lays a target on a figure.
type placing func(figure, target [4]point) placement

// nudge is the step, in metres, by which coordinates are moved to see what the
// moves of the stakes make of it.
const nudge = 1e-6

// deviate gives each move its standard deviation along and across: the errors of
// the six readings go through the adjustment into the five free coordinates,
// and from these through the placing into the moves.
//
//	variance = g Q gᵀ σ²,  g = ∂move / ∂coordinate,  Q = (AᵀA)⁻¹
func (a Adjustment) deviate(moves *[4]Move, target [4]point, place placing) {
	var slopes [4][2][5]float64
	for corner, columns := range column {
		for axis, unknown := range columns {
			if unknown < 0 {
				continue
			}
			up, down := a.nudged(corner, axis, nudge), a.nudged(corner, axis, -nudge)
			high, low := up.vectors(place(up.corners, target)), down.vectors(place(down.corners, target))
			for i := range 4 {
				slopes[i][0][unknown] = (high[i].x - low[i].x) / (2 * nudge)
				slopes[i][1][unknown] = (high[i].y - low[i].y) / (2 * nudge)
			}
		}
	}
	for i := range moves {
		moves[i].AlongError = a.spread(slopes[i][0])
		moves[i].AcrossError = a.spread(slopes[i][1])
	}
}

func (a Adjustment) spread(slope [5]float64) measure.Length {
	return a.Sigma.Scale(math.Sqrt(math.Max(0, quadratic(a.inverse, slope))))
}

func (a Adjustment) nudged(corner, axis int, by float64) Adjustment {
	if axis == 0 {
		a.corners[corner].x += by
	} else {
		a.corners[corner].y += by
	}
	return a
}
