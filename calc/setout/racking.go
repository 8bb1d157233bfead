package setout

import (
	"math"

	"pierbook/calc/measure"
)

// Racked is one row of the racking table: diagonals that differ by so much ask
// for the far side to slide along itself by so much.
type Racked struct {
	Difference measure.Length // longer less shorter diagonal
	Slide      measure.Length // of the far corners along their side, back towards the near end of the long diagonal
	Long       measure.Length // what the long diagonal reads then
	Short      measure.Length
	FarBoard   measure.Length // of strings: how far both end strings go on the far boards; 0 for beams
}

// Slide returns how far the side opposite the held one must slide along itself
// to make a racked parallelogram square.
//
//	slide = (d1² − d2²) / (4 a)
//
// with a the held side. It is exact for a frame whose opposite sides are equal.
// Source: law of cosines; army surveying practice moves only the cross strings.
func Slide(held, long, short measure.Length) measure.Length {
	l, s := long.Metres(), short.Metres()
	return measure.FromMetres((l - s) * (l + s) / (4 * held.Metres()))
}

// RackingTable returns a row for each difference from one step up to most. The
// held side is the length; the slide is exact.
//
// From d1 − d2 = δ and d1² + d2² = 2 (a² + b²) follows
// d1 + d2 = √(4 (a² + b²) − δ²), and the slide is δ (d1 + d2) / (4 a).
func RackingTable(r Rectangle, step, most measure.Length) []Racked {
	var rows []Racked
	a, b := r.Length.Metres(), r.Width.Metres()
	for difference := step; difference <= most; difference += step {
		d := difference.Metres()
		sum := math.Sqrt(4*(a*a+b*b) - d*d)
		rows = append(rows, Racked{
			Difference: difference,
			Slide:      measure.FromMetres(d * sum / (4 * a)),
			Long:       measure.FromMetres((sum + d) / 2),
			Short:      measure.FromMetres((sum - d) / 2),
		})
	}
	return rows
}
