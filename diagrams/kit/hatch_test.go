package kit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Hatching lines a gap apart cover an outline evenly, so their length times the
// gap is its area, the better the finer the gap.
func TestHatchingCoversTheArea(t *testing.T) {
	outlines := map[string][]Point{
		"rectangle": {{3, 4}, {63, 4}, {63, 44}, {3, 44}},
		"triangle":  {{0, 0}, {80, 10}, {20, 60}},
		"hollow L":  {{0, 0}, {60, 0}, {60, 20}, {20, 20}, {20, 60}, {0, 60}},
	}
	for name, outline := range outlines {
		for _, slant := range []Slant{Rising, Falling, 0} {
			const gap = 0.5
			sum := 0.0
			for _, g := range hatchLines(float64(slant)*math.Pi/180, gap, outline) {
				sum += math.Hypot(g.To.X-g.From.X, g.To.Y-g.From.Y) * gap
			}
			assert.InEpsilon(t, shoelace(outline), sum, 0.02, name)
		}
	}
}

// shoelace returns the area of a polygon by Gauss's formula.
func shoelace(points []Point) float64 {
	sum := 0.0
	for i, a := range points {
		b := points[(i+1)%len(points)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return math.Abs(sum) / 2
}

func TestHatchingStaysInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		coordinate := rapid.Float64Range(0, 100)
		var outline []Point
		for range rapid.IntRange(3, 8).Draw(t, "corners") {
			outline = append(outline, Point{coordinate.Draw(t, "x"), coordinate.Draw(t, "y")})
		}
		slant := rapid.SampledFrom([]Slant{Rising, Falling, 0}).Draw(t, "slant")
		around := bounds(outline...).Grown(1e-6)
		for _, g := range hatchLines(float64(slant)*math.Pi/180, 2, outline) {
			if !around.Holds(bounds(g.From, g.To)) {
				t.Fatalf("%v leaves %v", g, around)
			}
		}
	})
}

func TestRisingHatchingRises(t *testing.T) {
	for _, g := range hatchLines(math.Pi/4, 2, Box{0, 0, 20, 20}.Outline()) {
		assert.InDelta(t, -1, (g.To.Y-g.From.Y)/(g.To.X-g.From.X), 1e-9, "y runs down, so a rising line has slope -1")
	}
}
