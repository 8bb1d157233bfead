package diagrams

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A height is read as that of the mark nearest to it, so it stands nearest to its
// own; and where the piers are too close, no pier has one.
func TestHeightsOnThePlanBelongToTheirPiers(t *testing.T) {
	seen, none := 0, 0
	for _, j := range sites {
		c := sampleContours(j)
		for _, drawn := range []Contours{c, c.within(68).(Contours), c.within(96).(Contours)} {
			if !drawn.Field.whole() {
				continue
			}
			view := drawn.view()
			texts := map[string]bool{}
			for _, spot := range drawn.Spots[:len(drawn.Piers)] { // they come first
				texts[spot.Height.Print(j.style)] = true
			}
			for level := -100 * drawn.Interval; level < 100*drawn.Interval; level += drawn.Interval {
				delete(texts, level.Print(j.style)) // a contour may say the same
			}
			heights := 0
			for _, label := range drawn.sheet(j.style).Record().Labels {
				if !texts[label.Words] {
					continue
				}
				heights++
				at := label.Box.Centre()
				var own, other float64 = math.Inf(1), math.Inf(1)
				for _, spot := range drawn.Spots[:len(drawn.Piers)] {
					place := view.At(spot.X, spot.Y)
					far := math.Hypot(place.X-at.X, place.Y-at.Y)
					if spot.Height.Print(j.style) == label.Words {
						own = min(own, far)
					} else {
						other = min(other, far)
					}
				}
				assert.LessOrEqual(t, own, 0.9*other, "%s: %s", j.name, label.Words)
			}
			seen += heights
			if heights == 0 {
				none++
			}
		}
	}
	assert.Greater(t, seen, 60)
	assert.Positive(t, none, "a drawing with piers too close")
}
