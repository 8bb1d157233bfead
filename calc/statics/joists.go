package statics

import (
	"math"

	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// Joists returns the joists to look at: the ordinary one first, then each that a
// wall or a patch stands on.
func (x *Floor) Joists() []Bar {
	centres, widths := x.joistPlaces()
	bars := []Bar{x.usualJoist(centres, widths)}
	for i, at := range centres {
		var walls []loads.Strip
		for _, s := range x.Loads.Strips {
			if !s.AlongX() && nearest(centres, s.X1) == i {
				walls = append(walls, s)
			}
		}
		if len(walls) > 0 {
			bars = append(bars, x.joistAt(at, widths[i], walls, "the joist under the "+walls[0].Name))
		}
	}
	for _, p := range x.Loads.Patches {
		bars = append(bars, x.joistUnder(p, centres, widths))
	}
	return bars
}

// UsualJoist returns the ordinary joist: the one with the widest strip of floor.
func (x *Floor) UsualJoist() Bar {
	centres, widths := x.joistPlaces()
	return x.usualJoist(centres, widths)
}

func (x *Floor) usualJoist(centres, widths []float64) Bar {
	usual := min(1, len(widths)-1)
	for i := 1; i < len(widths)-1; i++ {
		if widths[i] > widths[usual]+1e-9 {
			usual = i
		}
	}
	return x.joistAt(centres[usual], widths[usual], nil, "a joist")
}

func nearest(places []float64, x float64) int {
	best := 0
	for i, p := range places {
		if math.Abs(p-x) < math.Abs(places[best]-x) {
			best = i
		}
	}
	return best
}

// joistAt returns the joist at a place that carries a strip of floor so wide, and
// the walls that stand along it.
func (x *Floor) joistAt(at, wide float64, walls []loads.Strip, what string) Bar {
	g, section := x.Gauge, x.Frame.Sections.Joist
	b := newBar("joist", what, g, section.Across(), section.Depth, section.Across(), "the surface")
	for kind, area := range x.Loads.Area {
		if area == 0 {
			continue
		}
		b.Cases[kind] = g.Empty()
		if loads.Case(kind) != loads.LiveCase {
			b.Cases[kind].Always(g.Whole, area*wide)
			continue
		}
		for _, u := range g.Unit {
			b.Cases[kind].Patterned(u, area*wide)
		}
	}
	for _, line := range x.Loads.Strips {
		if line.AlongX() && line.X1 <= at && at < line.X2 {
			b.bear(line.Kind, x.Across(line.Y1, line.Y1), line.Size*wide)
		}
	}
	for _, wall := range walls {
		b.bear(wall.Kind, x.Across(wall.Y1, wall.Y2), wall.Size)
	}
	if c := b.Cases[loads.BuildingCase]; c.Most.Shear != nil {
		c.Lighter(x.Loads.LightShare)
	}
	return b
}

// joistUnder returns the joist that takes most of a patch: its whole load when
// the patch is shorter than the spacing, else the share of one strip.
func (x *Floor) joistUnder(p loads.Patch, centres, widths []float64) Bar {
	i := nearest(centres, (p.X + p.Length/2).Metres())
	b := x.joistAt(centres[i], widths[i], nil, "the joist under "+p.Name)
	share := math.Min(1, widths[i]/p.Length.Metres())
	b.Cases[loads.LiveCase].Patterned(x.Across(p.Y.Metres(), (p.Y+p.Width).Metres()), float64(p.Load)/p.Width.Metres()*share)
	return b
}

// Seat is how much of a joist lies on the beam of a line, or in a hanger there.
type Seat struct {
	Line string
	Long measure.Length
}

// JoistSeats returns how much of a joist lies on each line's beam: between beams,
// the seats of its hangers.
func (x *Floor) JoistSeats() []Seat {
	seats := make([]Seat, len(x.Frame.Lines))
	half, j := x.Frame.Sections.Beam.Across()/2, x.Frame.Joists[0]
	for i, line := range x.Frame.Lines {
		long := 3 * measure.Inch / 2
		if !x.Between {
			long = max(min(line.Y+half, j.To)-max(line.Y-half, j.From), measure.Millimetre)
		}
		seats[i] = Seat{line.Name, long}
	}
	return seats
}
