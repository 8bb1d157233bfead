package terrain

import (
	"math"

	"pierbook/calc/frame"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Shorter than this two readings tell of a hump and not of a slope; further than
// that they tell nothing of one place. Common practice, no source.
const (
	shortestRun = 2 * measure.Foot
	longestRun  = 12 * measure.Foot
)

// Steep returns the piers at ground steeper than 1 in 3 with its slope: by the best
// plane through the readings, or between the pier and another pier or spot near it.
// It is empty without readings.
func (g *Ground) Steep(f *frame.Frame) map[string]measure.Percent {
	steep := map[string]measure.Percent{}
	if g.Surface == nil {
		return steep
	}
	type place struct{ x, y, height measure.Length }
	var places []place
	for i, l := range g.Levels {
		places = append(places, place{f.Piers[i].X, f.Piers[i].Y, l.Height})
	}
	for _, s := range g.Spots {
		places = append(places, place{s.X, s.Y, s.Height})
	}
	plane := math.Hypot(g.Surface.Plane.SlopeX, g.Surface.Plane.SlopeY)
	for i, l := range g.Levels {
		slope := plane
		for _, p := range places {
			run := measure.Hypot(p.x-places[i].x, p.y-places[i].y)
			if run >= shortestRun && run <= longestRun {
				slope = max(slope, (p.height-places[i].height).Abs().Metres()/run.Metres())
			}
		}
		if slope > float64(trade.SteepGround) {
			steep[l.Pier] = measure.Percent(slope)
		}
	}
	return steep
}
