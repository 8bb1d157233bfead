package statics

import (
	"math"
	"slices"
	"strings"

	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// Joists returns the joists to look at: the ordinary one first, then each that a
// wall or a load at a place stands on. A joist takes all that stands on it at once:
// a load in two halves is the same load.
func (x *Floor) Joists() []Bar {
	centres, widths := x.joistPlaces()
	bars := []Bar{x.usualJoist(centres, widths)}
	for i, at := range centres {
		walls, patches := x.wallsOn(centres, i), x.patchesAt(centres, widths, i)
		if len(walls)+len(patches) == 0 {
			continue
		}
		bars = append(bars, x.loadedJoist(at, widths[i], walls, patches, "the joist under "+namesOf(walls, patches)))
	}
	return bars
}

// loadedJoist returns a joist with its strip of floor, the walls and the loads at a
// place on it.
func (x *Floor) loadedJoist(at, wide float64, walls []loads.Strip, patches []patchShare, what string) Bar {
	bar := x.joistAt(at, wide, walls, what)
	for _, p := range patches {
		bar.Cases[loads.LiveCase].Patterned(x.Across(p.Y.Metres(), (p.Y+p.Width).Metres()), float64(p.Load)/p.Width.Metres()*p.share)
	}
	return bar
}

// patchShare is a load at a place with what one joist takes of it.
type patchShare struct {
	loads.Patch
	share float64
}

// patchesAt returns the loads at a place that lie on the strip of floor of one
// joist, each with the part of it that does.
func (x *Floor) patchesAt(centres, widths []float64, place int) []patchShare {
	from := 0.0
	if place > 0 {
		from = (centres[place-1] + centres[place]) / 2
	}
	var taken []patchShare
	for _, p := range x.Loads.Patches {
		left, right := p.X.Metres(), (p.X + p.Length).Metres()
		if share := max(0, min(from+widths[place], right)-max(from, left)) / (right - left); share > 0 {
			taken = append(taken, patchShare{p, share})
		}
	}
	return taken
}

func namesOf(walls []loads.Strip, patches []patchShare) string {
	var names []string
	for _, w := range walls {
		if name := "the " + w.Name; !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, p := range patches {
		names = append(names, p.Name)
	}
	return strings.Join(names, ", ")
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

// Seat is how much of a joist lies on the beam of a line, or in a hanger there.
type Seat struct {
	Line string
	Long measure.Length
}

// JoistSeats returns how much of a joist lies on each line's beam: between beams,
// the seats of its hangers, so long.
func (x *Floor) JoistSeats(hanger measure.Length) []Seat {
	seats := make([]Seat, len(x.Frame.Lines))
	half, j := x.Frame.Sections.Beam.Across()/2, x.Frame.Joists[0]
	for i, line := range x.Frame.Lines {
		long := hanger
		if !x.Between {
			long = max(min(line.Y+half, j.To)-max(line.Y-half, j.From), measure.Millimetre)
		}
		seats[i] = Seat{line.Name, long}
	}
	return seats
}
