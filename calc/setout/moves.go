package setout

import (
	"math"

	"pierbook/calc/measure"
)

// Move is how far a stake must go: along the length (towards growing x) and
// across (towards growing y), as in the rectangle's own directions, each with
// the standard deviation that the tape leaves it.
type Move struct {
	Along, Across           measure.Length
	AlongError, AcrossError measure.Length
}

// Size returns how far the stake goes in all.
func (m Move) Size() measure.Length { return measure.Hypot(m.Along, m.Across) }

// Hold is a choice of what stays where it is while the corners are moved.
type Hold struct {
	Name  string
	Moves [4]Move
	Stay  int // how many stakes may stay, their move being within the tolerance
}

// Holds returns the moves of the four corners onto the target rectangle for
// three choices: the hook corner and the direction of its long side held; the
// best fit (turned and shifted, the least sum of squared moves); and the
// placing that leaves most stakes where they are.
func (a Adjustment) Holds(target Rectangle, tolerance measure.Length) [3]Hold {
	corners := targetCorners(target)
	places := [3]placing{heldAt(0, 1), bestFit, a.fewest(corners, tolerance)}
	names := [3]string{"hold " + target.Corners[0] + " and the line to " + target.Corners[1], "least moving of all four", "fewest stakes moved"}
	var holds [3]Hold
	for i, place := range places {
		holds[i] = Hold{Name: names[i], Moves: a.movesOf(place(a.corners, corners))}
		holds[i].Stay = staying(holds[i].Moves, tolerance)
		a.deviate(&holds[i].Moves, corners, place)
	}
	return holds
}

func targetCorners(r Rectangle) [4]point {
	a, b := r.Length.Metres(), r.Width.Metres()
	return [4]point{{0, 0}, {a, 0}, {a, b}, {0, b}}
}

// placement is where the target's corners lie among the adjusted ones, with
// the direction of the rectangle's own length.
type placement struct {
	at     [4]point
	cosine float64
	sine   float64
}

// heldAt lays the target with its corner i on the figure's corner i and its side
// from i to j along the figure's.
func heldAt(i, j int) placing {
	return func(figure, target [4]point) placement {
		turn := math.Atan2(figure[j].y-figure[i].y, figure[j].x-figure[i].x) - math.Atan2(target[j].y-target[i].y, target[j].x-target[i].x)
		return laid(target, turn, target[i], figure[i])
	}
}

// bestFit lays the target with the least sum of squared moves: the centroids
// meet and the turn is atan2(Σ q×p, Σ q·p) about them.
func bestFit(figure, target [4]point) placement {
	pc, qc := centroid(figure), centroid(target)
	var cross, dot float64
	for i := range 4 {
		px, py := figure[i].x-pc.x, figure[i].y-pc.y
		qx, qy := target[i].x-qc.x, target[i].y-qc.y
		cross += qx*py - qy*px
		dot += qx*px + qy*py
	}
	return laid(target, math.Atan2(cross, dot), qc, pc)
}

func centroid(p [4]point) point {
	return point{(p[0].x + p[1].x + p[2].x + p[3].x) / 4, (p[0].y + p[1].y + p[2].y + p[3].y) / 4}
}

// laid turns the target about a pivot and moves the pivot to a place.
func laid(target [4]point, turn float64, pivot, place point) placement {
	sine, cosine := math.Sincos(turn)
	p := placement{cosine: cosine, sine: sine}
	for i, t := range target {
		dx, dy := t.x-pivot.x, t.y-pivot.y
		p.at[i] = point{place.x + cosine*dx - sine*dy, place.y + sine*dx + cosine*dy}
	}
	return p
}

// movesOf returns the moves in the directions of the placed rectangle.
func (a Adjustment) movesOf(p placement) [4]Move {
	var moves [4]Move
	for i, v := range a.vectors(p) {
		moves[i] = Move{Along: measure.FromMetres(v.x), Across: measure.FromMetres(v.y)}
	}
	return moves
}

// vectors returns the moves in metres.
func (a Adjustment) vectors(p placement) (moves [4]point) {
	for i := range 4 {
		dx, dy := p.at[i].x-a.corners[i].x, p.at[i].y-a.corners[i].y
		moves[i] = point{dx*p.cosine + dy*p.sine, dy*p.cosine - dx*p.sine}
	}
	return moves
}

// fewest tries every held corner with the direction to every other one and
// keeps the placing that leaves most stakes; among these the one that moves
// the others least.
func (a Adjustment) fewest(target [4]point, tolerance measure.Length) placing {
	var best placing
	stay, sum := -1, 0.0
	for i := range 4 {
		for j := range 4 {
			if i == j {
				continue
			}
			place := heldAt(i, j)
			moves := a.movesOf(place(a.corners, target))
			n, s := staying(moves, tolerance), sumOfSquares(moves)
			if n > stay || n == stay && s < sum-1e-15 {
				best, stay, sum = place, n, s
			}
		}
	}
	return best
}

func staying(moves [4]Move, tolerance measure.Length) int {
	n := 0
	for _, m := range moves {
		if m.Size() <= tolerance {
			n++
		}
	}
	return n
}

func sumOfSquares(moves [4]Move) float64 {
	var sum float64
	for _, m := range moves {
		s := m.Size().Metres()
		sum += s * s
	}
	return sum
}
