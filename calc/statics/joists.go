package statics

import (
	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// Joists returns the joists to look at: the ordinary one first, then each that a
// wall or a load at a place stands on, or that has other walls across it than those
// before. A joist takes all that stands on it at once: a load in two halves is the
// same load.
func (x *Floor) Joists() []Bar {
	places := x.joistPlaces()
	usual := usualOf(places)
	bars := []Bar{x.UsualJoist()}
	widest := map[string]int{x.crossed(places[usual]).signature(): usual}
	for i := range places {
		if loaded := x.loadedJoists(places, i); len(loaded) > 0 {
			bars = append(bars, loaded...)
			continue
		}
		walls := x.crossed(places[i]).signature()
		if before, known := widest[walls]; !known || places[i].wide() > places[before].wide()+1e-9 {
			widest[walls] = i
		}
	}
	for i := range places {
		if walls := x.crossed(places[i]); widest[walls.signature()] == i && i != usual {
			bars = append(bars, x.joistAt(places[i], nil, "the joist under "+standing{walls: walls}.names()))
		}
	}
	return bars
}

// loadedJoists returns a joist with its strip of floor and the walls and loads at a
// place on it: shared out by the strips they stand on and, where that gives the
// joist more of one of them, by the lever too. None when nothing stands on it.
func (x *Floor) loadedJoists(places []place, i int) []Bar {
	strips, levers := x.standing(places, i, byStrip), x.standing(places, i, byLever)
	var bars []Bar
	if !strips.empty() {
		bars = append(bars, x.loadedJoist(places[i], strips, "the joist under "+strips.names()))
	}
	if levers.exceeds(strips) {
		bars = append(bars, x.loadedJoist(places[i], levers, "the joist beside "+levers.names()))
	}
	return bars
}

// loadedJoist returns a joist with its strip of floor and what stands on it.
func (x *Floor) loadedJoist(at place, on standing, what string) Bar {
	bar := x.joistAt(at, on.walls, what)
	for _, p := range on.patches {
		bar.Cases[loads.LiveCase].Patterned(x.Across(p.Y.Metres(), (p.Y+p.Width).Metres()), float64(p.Load)/p.Width.Metres()*p.share)
	}
	return bar
}

// UsualJoist returns the ordinary joist: the one with the widest strip of floor.
func (x *Floor) UsualJoist() Bar {
	places := x.joistPlaces()
	return x.joistAt(places[usualOf(places)], nil, "a joist")
}

func usualOf(places []place) int {
	usual := min(1, len(places)-1)
	for i := 1; i < len(places)-1; i++ {
		if places[i].wide() > places[usual].wide()+1e-9 {
			usual = i
		}
	}
	return usual
}

// joistAt returns the joist at a place with its strip of floor, what of the walls
// across it stands there, and the walls along it.
func (x *Floor) joistAt(at place, walls []loads.Strip, what string) Bar {
	g, section := x.Gauge, x.Frame.Sections.Joist
	b := newBar("joist", what, g, section.Across(), section.Depth, section.Across(), "the surface")
	for kind, area := range x.Loads.Area {
		if area == 0 {
			continue
		}
		b.Cases[kind] = g.Empty()
		if loads.Case(kind) != loads.LiveCase {
			b.Cases[kind].Always(g.Whole, area*at.wide())
			continue
		}
		for _, u := range g.Unit {
			b.Cases[kind].Patterned(u, area*at.wide())
		}
	}
	for _, wall := range x.crossed(at) {
		b.bear(wall.Kind, x.Across(wall.Y1, wall.Y1), wall.Size*(wall.X2-wall.X1))
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
