package kit

import (
	"math"
	"sort"
)

// Slant is the direction of hatching. Parts that touch take opposite slants.
type Slant float64

// The slants, in degrees from level, rising to the right.
const (
	Rising  Slant = 45
	Falling Slant = 135
)

// Hatch draws parallel lines a gap apart inside the outline. They are lines of
// their own, since patterns print as blurred pictures. Hatching of neighbours
// lines up, because the lines are counted from the corner of the sheet.
func (s *Sheet) Hatch(slant Slant, gap float64, outline ...Point) {
	s.Lines(Hatching, hatchLines(float64(slant)*math.Pi/180, gap, outline)...)
}

// HatchBox hatches a rectangle.
func (s *Sheet) HatchBox(slant Slant, gap float64, b Box) { s.Hatch(slant, gap, b.Outline()...) }

// hatchLines cuts the family of lines at the angle against the outline by the
// even-odd rule. Along a line u runs, across the family v = k·gap.
func hatchLines(angle, gap float64, outline []Point) []Segment {
	if len(outline) < 3 || gap <= 0 {
		return nil
	}
	cos, sin := math.Cos(angle), -math.Sin(angle)
	turned := make([]Point, len(outline))
	low, high := math.Inf(1), math.Inf(-1)
	for i, p := range outline {
		turned[i] = Point{p.X*cos + p.Y*sin, -p.X*sin + p.Y*cos}
		low, high = math.Min(low, turned[i].Y), math.Max(high, turned[i].Y)
	}
	if math.IsNaN(low) || high-low > 1e4*gap {
		return nil
	}
	var lines []Segment
	for k := math.Ceil(low/gap + 0.01); k*gap < high-0.01*gap; k++ {
		crossings := crossingsAt(turned, k*gap)
		for i := 0; i+1 < len(crossings); i += 2 {
			if crossings[i+1]-crossings[i] > 0.2 {
				lines = append(lines, Segment{unturned(crossings[i], k*gap, cos, sin), unturned(crossings[i+1], k*gap, cos, sin)})
			}
		}
	}
	return lines
}

func unturned(u, v, cos, sin float64) Point { return Point{u*cos - v*sin, u*sin + v*cos} }

// crossingsAt returns the sorted u at which the closed outline crosses v.
func crossingsAt(outline []Point, v float64) []float64 {
	var list []float64
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y <= v) != (b.Y <= v) {
			list = append(list, a.X+(v-a.Y)/(b.Y-a.Y)*(b.X-a.X))
		}
	}
	sort.Float64s(list)
	return list
}

// Stones dots the box with little irregular stones in a fixed order, the
// customary sign for broken stone.
func (s *Sheet) Stones(b Box) {
	const pitch, size = 2.6, 0.75
	var stones [][]Point
	row := 0
	for y := b.Top + 1.3; y < b.Bottom-0.7; y, row = y+1.9, row+1 {
		for x := b.Left + 1.2 + float64(row%2)*pitch/2; x < b.Right-0.9; x += pitch {
			stones = append(stones, []Point{{x - size, y + size*0.6}, {x, y - size*0.7}, {x + size, y + size*0.6}})
		}
	}
	s.polygons(Hatching, Open, stones...)
}

// Earth draws the customary sign of undisturbed ground under the line through
// the points, which run to the right: groups of three short slanting strokes.
func (s *Sheet) Earth(points ...Point) {
	const every, step, reach = 9.0, 1.3, 2.2
	if len(points) < 2 {
		return
	}
	var strokes []Segment
	last := points[len(points)-1].X
	for x := math.Ceil(points[0].X/every) * every; x+2*step < last; x += every {
		for k := range 3 {
			at := x + float64(k)*step
			top := Point{at, heightAt(points, at)}
			strokes = append(strokes, Segment{top, top.Plus(-reach, reach)})
		}
	}
	s.Lines(Hatching, strokes...)
}

// heightAt returns the y of the line through the points at x.
func heightAt(points []Point, x float64) float64 {
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		if x <= b.X && b.X > a.X {
			return a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)
		}
	}
	return points[len(points)-1].Y
}
