package statics

import (
	"math"

	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// WindOnPier is what wind on the building does to one pier, at the level of
// allowable stress. Lift is its share of the roof's uplift, by the reactions that
// carry the roof. Across and Along are the couple's reaction, down positive, under
// wind toward the last line and toward the last piers; from the other side they
// turn their sign.
type WindOnPier struct{ Lift, Across, Along measure.Force }

// Couple returns the greatest push of the couples, whichever side the wind is on.
func (w WindOnPier) Couple() measure.Force { return max(w.Across, -w.Across, w.Along, -w.Along) }

// windOnPiers carries the wind down by the same joists and beams that carry the
// weight. The roof's uplift goes the way of the roof's live load. Overturning goes
// through the two walls that stand in the wind's direction, half to each, and
// comes down as a couple at the four corners of the floor:
//
//	corner = f·H·(arm + mean post)/(2·side)
//
// Under the beams the short posts take most of the force, so what braces or feet of
// posts turn into a couple is less than the force by the mean post.
func (x *Floor) windOnPiers(lines []LoadedLine, post measure.Length) []WindOnPier {
	w, f := x.Loads.Wind, x.Frame
	on := make([]WindOnPier, len(f.Piers))
	if w == nil {
		return on
	}
	roof := 0.0
	for _, l := range lines {
		for _, r := range l.Reactions[loads.RoofCase].Most {
			roof += r
		}
	}
	long, wide := f.Length.Metres(), f.Width.Metres()
	nearFirst, nearLast := x.corner(lines, 0, 0), x.corner(lines, long, 0)
	farFirst, farLast := x.corner(lines, 0, wide), x.corner(lines, long, wide)
	across, along := cornerForce(w.Across, w.Factor, post, wide), cornerForce(w.Along, w.Factor, post, long)
	for i, p := range f.Piers {
		on[i].Across = measure.Force(across * (farFirst[i] + farLast[i] - nearFirst[i] - nearLast[i]))
		on[i].Along = measure.Force(along * (nearLast[i] + farLast[i] - nearFirst[i] - farFirst[i]))
		if roof > 0 {
			share := lines[p.Line].Reactions[loads.RoofCase].Most[p.Number-1] / roof
			on[i].Lift = w.Up * measure.Force(w.Factor) * measure.Force(share)
		}
	}
	return on
}

func cornerForce(t loads.Thrust, factor measure.Ratio, post measure.Length, side float64) float64 {
	return float64(t.Force) * float64(factor) * (t.Arm + post).Metres() / (2 * side)
}

// corner returns what each pier gets of one newton at a place of the floor.
func (x *Floor) corner(lines []LoadedLine, along, across float64) []float64 {
	shares := x.Share(across)
	got := make([]float64, len(x.Frame.Piers))
	for i, p := range x.Frame.Piers {
		share := shares[p.Line]
		if math.Abs(share) < 1e-9 {
			continue
		}
		plies := 0
		for _, ply := range lines[p.Line].Plies {
			plies += ply.count
		}
		for _, ply := range lines[p.Line].Plies {
			got[i] += share * float64(ply.count) / float64(plies) * ply.Gauge.placedAt(along, along).Reactions[p.Number-1]
		}
	}
	return got
}
