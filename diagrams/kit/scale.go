package kit

import (
	"math"
	"strconv"

	"pierbook/calc/measure"
)

// Scale turns lengths into places on the sheet: x from the left, and y down or,
// for sections, up.
type Scale struct {
	Ratio   float64 // 40 for 1:40
	Stretch float64 // of y over x; 1 when 0
	Origin  Point   // where the length 0, 0 stands
	Upward  bool    // y rises
}

// ratios are the scales that drawings are made to.
var ratios = []float64{1, 2, 2.5, 4, 5, 7.5, 10, 12.5, 15, 20, 25, 30, 35, 40, 45, 50, 60, 75, 90, 100, 125, 150, 200, 250, 300, 400, 500, 1000}

// Fit returns the largest scale at which the width and the height fit into the
// room, in millimetres.
func Fit(width, height measure.Length, roomAcross, roomDown float64) Scale {
	need := math.Max(width.Millimetres()/roomAcross, height.Millimetres()/roomDown)
	for _, r := range ratios {
		if r >= need {
			return Scale{Ratio: r}
		}
	}
	return Scale{Ratio: math.Max(need, 1)}
}

// Exaggeration returns the largest whole number, at most most, by which heights
// may be stretched over the scale and still fit the room.
func Exaggeration(height measure.Length, ratio, room, most float64) float64 {
	if height <= 0 {
		return most
	}
	return math.Max(1, math.Min(most, math.Floor(room*ratio/height.Millimetres())))
}

// Long returns a length along x on the sheet.
func (c Scale) Long(l measure.Length) float64 { return l.Millimetres() / c.Ratio }

// High returns a length along y on the sheet, the stretch included.
func (c Scale) High(l measure.Length) float64 {
	if c.Stretch == 0 {
		return c.Long(l)
	}
	return c.Long(l) * c.Stretch
}

// X returns where x stands.
func (c Scale) X(x measure.Length) float64 { return c.Origin.X + c.Long(x) }

// Y returns where y stands.
func (c Scale) Y(y measure.Length) float64 {
	if c.Upward {
		return c.Origin.Y - c.High(y)
	}
	return c.Origin.Y + c.High(y)
}

// At returns where the place x, y stands.
func (c Scale) At(x, y measure.Length) Point { return Point{c.X(x), c.Y(y)} }

// Name returns the scale in words, "1:40".
func (c Scale) Name() string { return "1:" + strconv.FormatFloat(c.Ratio, 'f', -1, 64) }
