package terrain

import (
	"math"

	"pierbook/calc/frame"
	"pierbook/calc/measure"
)

// TapedLine is a side or a diagonal of the pier rectangle, and by how much a
// tape laid on the ground would read too long.
type TapedLine struct {
	From, To string
	Level    measure.Length // true length
	Rise     measure.Length // of the ground, from its one end to the other
	TooLong  measure.Length // √(level² + rise²) − level
}

// TapedLines returns the four sides and the two diagonals of the outer piers,
// each with the slope error of a tape that lies on the ground. It is the
// largest error on uneven ground: measure level, or plumb down.
func (g *Ground) TapedLines(f *frame.Frame) []TapedLine {
	if g.Surface == nil {
		return nil
	}
	heights := map[string]measure.Length{}
	for _, l := range g.Levels {
		heights[l.Pier] = l.Height
	}
	c := f.Corners()
	var list []TapedLine
	for _, ends := range [][2]frame.Pier{{c[0], c[1]}, {c[1], c[2]}, {c[2], c[3]}, {c[3], c[0]}, {c[0], c[2]}, {c[1], c[3]}} {
		from, to := ends[0], ends[1]
		line := TapedLine{From: from.Name, To: to.Name, Level: measure.Hypot(to.X-from.X, to.Y-from.Y), Rise: (heights[to.Name] - heights[from.Name]).Abs()}
		line.TooLong = slopeError(line.Level, line.Rise)
		list = append(list, line)
	}
	return list
}

// slopeError returns by how much a sloping tape reads too long. The difference
// of two nearly equal lengths is taken as rise² / (slope + level).
func slopeError(level, rise measure.Length) measure.Length {
	slope := math.Hypot(level.Metres(), rise.Metres())
	return measure.FromMetres(rise.Metres() * rise.Metres() / (slope + level.Metres()))
}
