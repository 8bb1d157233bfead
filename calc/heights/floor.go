package heights

import (
	"slices"

	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// ChosenFloor is the height chosen for the top of the surface.
type ChosenFloor struct {
	Height   measure.Length // F
	PostTops measure.Length // F − t, on a whole mark
	Given    bool           // the job gives the height; else it is the lowest that leaves room, rounded up
	Lowest   measure.Length // lowest floor the ground allows, exact
	Roomy    Demand         // the place that asks for the highest floor once the seats have their room
	Highest  measure.Length // highest floor the ground allows, exact
	Governs  Demand         // the place that keeps the floor from being lower
	RunnerUp Demand         // the next place that would
}

// Demand is the lowest floor that one place allows.
type Demand struct {
	Name  string // of the pier, or of the spot under the frame
	Limit Limit
	Floor measure.Length
}

// floor chooses the height of the floor.
//
//	lowest  = t + max over piers of max(lowest seat + shortest, g + clear), and of g + clear at spots inside the frame
//	highest = t + min over piers of (highest seat + longest)
//
// A floor that is not given is lifted over the lowest until every seat may come out
// higher by the room asked for, or half way to the highest where that is nearer, and
// rounded up to the job's step and to a whole mark. When no height will do, it
// returns what clashes instead.
func (t terms) floor(places []place, inside []terrain.SpotHeight) (*ChosenFloor, *Clash) {
	if clash := t.contradiction(places, inside); clash != nil {
		return nil, clash
	}
	demands := t.demands(places, inside)
	f := &ChosenFloor{Governs: demands[0], Lowest: demands[0].Floor}
	if len(demands) > 1 {
		f.RunnerUp = demands[1]
	}
	ceiling := t.ceiling(places)
	f.Highest = ceiling.Floor
	roomy := t
	roomy.Shortest, _ = t.aimed()
	f.Roomy = roomy.demands(places, inside)[0]
	f.Height = t.step(min(f.Roomy.Floor, max(f.Lowest, (f.Lowest+f.Highest)/2)))
	if f.Height > f.Highest {
		f.Height = t.step(f.Lowest)
	}
	if t.Given != nil {
		f.Height, f.Given = *t.Given, true
	}
	if !t.serves(f.Height, places, inside) {
		return nil, t.clash(f, ceiling, places, inside)
	}
	f.PostTops = t.tops(f.Height, t.BuildUp)
	return f, nil
}

// step rounds a floor up to the job's step, and to a mark that can be read back.
func (t terms) step(floor measure.Length) measure.Length {
	return floor.RoundUpTo(t.RoundUp).RoundUpTo(t.Mark)
}

// serves holds when a floor is within reach of every place not settled yet. A
// post that a set seat makes too short or too long is mended at that pier.
func (t terms) serves(floor measure.Length, places []place, inside []terrain.SpotHeight) bool {
	open := unsettled(places)
	if len(open) == 0 {
		return true
	}
	return floor >= t.demands(open, inside)[0].Floor && floor <= t.ceiling(open).Floor
}

// unsettled returns the piers whose seats are not set yet.
func unsettled(places []place) []place {
	return slices.DeleteFunc(slices.Clone(places), func(p place) bool { return p.seat != nil })
}

// demands returns the lowest floor each place allows, the highest first; places
// that ask for the same keep their order.
func (t terms) demands(places []place, inside []terrain.SpotHeight) []Demand {
	list := make([]Demand, 0, len(places)+len(inside))
	for _, p := range places {
		seat, limit := t.bounds(p).LowestSeat()
		if p.seat != nil {
			seat, limit = *p.seat, SeatAsSet
		}
		d := Demand{Name: p.name, Limit: limit, Floor: p.buildUp + seat + t.Shortest}
		if over := p.buildUp + p.ground + t.Clear; over > d.Floor {
			d.Floor, d.Limit = over, BeamClearance
		}
		list = append(list, d)
	}
	for _, s := range inside {
		list = append(list, Demand{Name: s.Name, Limit: BeamClearance, Floor: t.BuildUp + s.Height + t.Clear})
	}
	slices.SortStableFunc(list, func(a, b Demand) int {
		switch {
		case a.Floor > b.Floor:
			return -1
		case a.Floor < b.Floor:
			return 1
		}
		return 0
	})
	return list
}

// ceiling returns the pier that allows the least height of floor.
func (t terms) ceiling(places []place) Demand {
	var least Demand
	for i, p := range places {
		seat, limit := t.bounds(p).HighestSeat()
		if p.seat != nil {
			seat, limit = *p.seat, SeatAsSet
		}
		if floor := p.buildUp + seat + t.Longest; i == 0 || floor < least.Floor {
			least = Demand{Name: p.name, Limit: limit, Floor: floor}
		}
	}
	return least
}

// meets holds when the job can be built: some floor, after rounding, serves every
// place. Every way out of a clash is put to this test.
func (t terms) meets(places []place, inside []terrain.SpotHeight) bool {
	for _, p := range unsettled(places) {
		if t.bounds(p).Lacks() > 0 {
			return false
		}
	}
	height := t.step(t.demands(places, inside)[0].Floor)
	if t.Given != nil {
		height = *t.Given
	}
	return t.serves(height, places, inside)
}
