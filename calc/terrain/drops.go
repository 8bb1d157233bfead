package terrain

import (
	"pierbook/calc/frame"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
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

// Drops returns the greatest drop beside each side of a floor, as far out as a
// guard asks ([trade.GuardReach]): at the edge, out there, and at every spot read
// between. It is nil
// without readings.
func (g *Ground) Drops(f *frame.Frame, floor measure.Length, system measure.System) []Drop {
	if g.Surface == nil {
		return nil
	}
	var drops []Drop
	for _, e := range edges(f, trade.GuardReach.In(system)) {
		drops = append(drops, g.dropBeside(e, floor))
	}
	return drops
}

// edge is one side of the floor and the way out from it.
type edge struct {
	name                   string
	fromX, fromY, toX, toY measure.Length
	outX, outY             measure.Length
}

func edges(f *frame.Frame, out measure.Length) []edge {
	first, last := f.Lines[0].Name, f.Lines[len(f.Lines)-1].Name
	return []edge{
		{"along line " + first, 0, 0, f.Length, 0, 0, -out},
		{"at the last piers", f.Length, 0, f.Length, f.Width, out, 0},
		{"along line " + last, 0, f.Width, f.Length, f.Width, 0, out},
		{"at the first piers", 0, 0, 0, f.Width, -out, 0},
	}
}

func (g *Ground) dropBeside(e edge, floor measure.Length) Drop {
	const steps = 16
	worst := Drop{Side: e.name}
	for i := 0; i <= steps; i++ {
		x, y := e.fromX+(e.toX-e.fromX).Part(i, steps), e.fromY+(e.toY-e.fromY).Part(i, steps)
		for _, place := range [2]Node{{X: x, Y: y}, {X: x + e.outX, Y: y + e.outY}} {
			place.Height = g.Surface.At(place.X, place.Y)
			worst.deepen(floor, place, false)
		}
	}
	for _, spot := range g.Spots {
		place := Node{X: spot.X, Y: spot.Y, Height: spot.Height}
		if e.holds(place) {
			worst.deepen(floor, place, true)
		}
	}
	worst.Beyond = g.Beyond(worst.X, worst.Y)
	return worst
}

func (d *Drop) deepen(floor measure.Length, place Node, read bool) {
	if drop := floor - place.Height; d.Drop == 0 || drop > d.Drop || read && drop == d.Drop {
		d.X, d.Y, d.Ground, d.Drop, d.Read = place.X, place.Y, place.Height, drop, read
	}
}

// holds picks the places in the strip beside the edge.
func (e edge) holds(n Node) bool {
	return n.X >= min(e.fromX, e.fromX+e.outX) && n.X <= max(e.toX, e.toX+e.outX) &&
		n.Y >= min(e.fromY, e.fromY+e.outY) && n.Y <= max(e.toY, e.toY+e.outY)
}

// WorstDrop returns the greatest of the drops; it is zero when there are none.
func WorstDrop(drops []Drop) Drop {
	var worst Drop
	for _, d := range drops {
		if d.Drop > worst.Drop {
			worst = d
		}
	}
	return worst
}
