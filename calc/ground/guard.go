package ground

import (
	"pierbook/calc/frame"
	"pierbook/calc/measure"
)

// The drop beside an edge at which a guard is wanted, and how far out it is
// measured: open-sided walking surfaces more than 30 in above the floor or
// grade below at any point within 36 in of the edge, International Residential
// Code 2021, R312.1.1, from memory.
const (
	GuardDrop = 30 * measure.Inch
	GuardOut  = 36 * measure.Inch
)

// Drop is how far the floor stands over the ground beside one side.
type Drop struct {
	Side   string // "along line A", "at the first piers", …
	X, Y   measure.Length
	Ground measure.Length
	Drop   measure.Length // floor − ground
	Read   bool           // a spot was read there; else it is estimated
	Beyond bool           // more than half a bay outside the readings
}

// Drops returns the greatest drop beside each side of the floor, within 36 in of
// the edge: at the edge, 36 in out, and at every spot read between.
func (g *Ground) Drops(f *frame.Frame) []Drop {
	if g.Floor == nil || g.Surface == nil {
		return nil
	}
	first, last := f.Lines[0].Name, f.Lines[len(f.Lines)-1].Name
	var drops []Drop
	for _, s := range []struct {
		name                   string
		fromX, fromY, toX, toY measure.Length // along the edge
		outX, outY             measure.Length
	}{
		{"along line " + first, 0, 0, f.Length, 0, 0, -GuardOut},
		{"at the last piers", f.Length, 0, f.Length, f.Width, GuardOut, 0},
		{"along line " + last, 0, f.Width, f.Length, f.Width, 0, GuardOut},
		{"at the first piers", 0, 0, 0, f.Width, -GuardOut, 0},
	} {
		const steps = 16
		worst := Drop{Side: s.name}
		for i := 0; i <= steps; i++ {
			x, y := s.fromX+(s.toX-s.fromX).Part(i, steps), s.fromY+(s.toY-s.fromY).Part(i, steps)
			for _, place := range [2]Node{{X: x, Y: y}, {X: x + s.outX, Y: y + s.outY}} {
				place.Height = g.Surface.At(place.X, place.Y)
				worst.deepen(g, place, false)
			}
		}
		for _, spot := range g.Spots {
			place := Node{X: spot.X, Y: spot.Y, Height: spot.Height}
			if beside(place, min(s.fromX, s.fromX+s.outX), max(s.toX, s.toX+s.outX), min(s.fromY, s.fromY+s.outY), max(s.toY, s.toY+s.outY)) {
				worst.deepen(g, place, true)
			}
		}
		worst.Beyond = g.Surface.Outside(worst.X, worst.Y) > bay(f)/2
		drops = append(drops, worst)
	}
	return drops
}

func (d *Drop) deepen(g *Ground, place Node, read bool) {
	if drop := g.Floor.Height - place.Height; d.Drop == 0 || drop > d.Drop || read && drop == d.Drop {
		d.X, d.Y, d.Ground, d.Drop, d.Read = place.X, place.Y, place.Height, drop, read
	}
}

func beside(n Node, lowX, highX, lowY, highY measure.Length) bool {
	return n.X >= lowX && n.X <= highX && n.Y >= lowY && n.Y <= highY
}

// WorstDrop returns the greatest of the drops; it is zero without a floor.
func WorstDrop(drops []Drop) Drop {
	var worst Drop
	for _, d := range drops {
		if d.Drop > worst.Drop {
			worst = d
		}
	}
	return worst
}
