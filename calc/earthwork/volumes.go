package earthwork

import "pierbook/calc/measure"

// Prismoid returns the volume between two parallel ends and the section halfway,
// exact for every body with plane sides.
//
//	V = h (A1 + 4 Am + A2) / 6
func Prismoid(first, middle, last measure.Area, apart measure.Length) measure.Volume {
	return (first + 4*middle + last).Deep(apart) / 6
}

// Pit returns the volume of a rectangular pit with the given bottom, whose sides
// lean out by slope for each unit of depth; no slope is a straight-sided hole.
func Pit(long, wide, deep measure.Length, slope float64) measure.Volume {
	at := func(up float64) measure.Area {
		out := deep.Scale(2 * slope * up)
		return (long + out).Times(wide + out)
	}
	return Prismoid(at(0), at(0.5), at(1), deep)
}

// HeightGrid is ground on a square or oblong grid: heights by row, all rows equally long.
type HeightGrid struct {
	AlongX, AlongY measure.Length // spacing within a row, and between rows
	Heights        [][]measure.Length
}

// CutAndFill returns the volume above a level and the room below it. Each cell
// is two triangles, parted from the second node of its first row to the first of
// its next, and the line where cut turns to fill is followed exactly.
func (g HeightGrid) CutAndFill(level measure.Length) (cut, fill measure.Volume) {
	half := float64(g.AlongX.Times(g.AlongY)) / 2
	g.cells(func(a, b, c, d measure.Length) {
		for _, corners := range [2][3]measure.Length{{a, b, c}, {b, d, c}} {
			above := prismAbove(corners, level)
			mean := (corners[0] + corners[1] + corners[2] - 3*level).Metres() / 3
			cut += measure.Volume(half * above)
			fill += measure.Volume(half * (above - mean))
		}
	})
	return cut, fill
}

// cells calls each with the corners of every cell: two of its first row, two of
// the next.
func (g HeightGrid) cells(each func(a, b, c, d measure.Length)) {
	for i := range len(g.Heights) - 1 {
		for k := range len(g.Heights[i]) - 1 {
			each(g.Heights[i][k], g.Heights[i][k+1], g.Heights[i+1][k], g.Heights[i+1][k+1])
		}
	}
}

// prismAbove returns the volume of a plane triangle's prism above a level, for
// each unit of its area. With one corner above by h, and the others below,
//
//	V = h³ / (3 (h − h2)(h − h3))
func prismAbove(corners [3]measure.Length, level measure.Length) float64 {
	var h [3]float64
	above, last := 0, 0
	for i, c := range corners {
		h[i] = (c - level).Metres()
		if h[i] > 0 {
			above++
			last = i
		}
	}
	tip := func(i int) float64 {
		a, b, c := h[i], h[(i+1)%3], h[(i+2)%3]
		return a * a * a / (3 * (a - b) * (a - c))
	}
	mean := (h[0] + h[1] + h[2]) / 3
	switch above {
	case 0:
		return 0
	case 1:
		return tip(last)
	case 2:
		for i := range h {
			if h[i] <= 0 {
				return mean - tip(i)
			}
		}
	}
	return mean
}
