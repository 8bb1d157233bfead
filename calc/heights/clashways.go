package heights

import (
	"slices"
	"sort"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// lever is a length of the job that can free the heights, and which way.
type lever struct {
	path, means string
	grows       bool // else it shrinks, at the most to nothing
	length      func(*terms) *measure.Length
}

// levers are tried in this order. Moving any of them its way only loosens what
// the piers allow.
var levers = []lever{
	{"frame.posts.longest", "longest post", true, func(t *terms) *measure.Length { return &t.Longest }},
	{"frame.posts.shortest", "shortest post", false, func(t *terms) *measure.Length { return &t.Shortest }},
	{"dig.deepest", "deepest dig", true, func(t *terms) *measure.Length { return &t.DigDeepest }},
	{"dig.least", "least dig", false, func(t *terms) *measure.Length { return &t.DigLeast }},
	{"stone.most", "most stone", true, func(t *terms) *measure.Length { return &t.StoneMost }},
	{"stone.least", "least stone", false, func(t *terms) *measure.Length { return &t.StoneLeast }},
	{"stone.above_ground", "seat above the ground", false, func(t *terms) *measure.Length { return &t.AboveGround }},
	{"stone.embed", "stone below the ground", false, func(t *terms) *measure.Length { return &t.Embed }},
	{"frame.clear", "clearance under the beams", false, func(t *terms) *measure.Length { return &t.Clear }},
}

// farthestWay bounds how far a length of the job is moved in the search of a
// way: more than this is another job.
const farthestWay = 10 * measure.Metre

// ways tries every length of the job that could free the heights, one at a
// time, and keeps those that do with the least change that does. Each is put to
// the test on the whole site, rounding up included, so that a way which only
// uncovers the next limit is not offered.
func (t terms) ways(c *Clash, places []place, inside []terrain.SpotHeight) []Loosening {
	ways := t.floorWays(c, places, inside)
	for _, l := range levers {
		way := Loosening{Path: l.path, Means: l.means, From: *l.length(&t)}
		to, frees := t.leastChange(way.From, l.grows, func(to measure.Length) bool {
			changed := t
			*l.length(&changed) = to
			return changed.meets(places, inside)
		})
		if frees {
			way.To = to
			ways = append(ways, way)
		}
	}
	return append(ways, t.thinnerBed(c, places, inside)...)
}

// leastChange returns the value nearest to from that frees the heights, on a
// printed mark so that it can be written as it is read, and whether one does.
// Once a change is enough a greater one is too, so that it is found by halving.
func (t terms) leastChange(from measure.Length, grows bool, frees func(measure.Length) bool) (measure.Length, bool) {
	reach := farthestWay
	if !grows {
		reach = from
	}
	steps := int(reach/t.Mark) + 1
	at := func(n int) measure.Length {
		by := measure.Length(n) * t.Mark
		if grows {
			return (from + by).RoundDownTo(t.Mark)
		}
		return max(0, (from - by).RoundUpTo(t.Mark))
	}
	n := sort.Search(steps, func(i int) bool { return frees(at(i + 1)) }) + 1
	return at(n), n <= steps && at(n) != from
}

// floorWays tries another height for a floor that was given; for one that was
// not, no rounding, and the height that could be given in its place.
func (t terms) floorWays(c *Clash, places []place, inside []terrain.SpotHeight) []Loosening {
	given := t
	height := Loosening{Path: "platform.floor.height", Means: "height of the floor", From: c.Wanted}
	given.Given = &height.To
	if t.Given != nil {
		height.To = c.towards(*t.Given, t.Mark)
		return given.thatMeet(places, inside, height)
	}
	exact := t
	exact.RoundUp = 0
	height.To = t.demands(places, inside)[0].Floor.RoundUpTo(t.Mark)
	return append(exact.thatMeet(places, inside, Loosening{Path: "platform.floor.round_up", Means: "rounding of the floor", From: t.RoundUp}),
		given.thatMeet(places, inside, height)...)
}

// thatMeet returns the way when the terms with it are met.
func (t terms) thatMeet(places []place, inside []terrain.SpotHeight, way Loosening) []Loosening {
	if !t.meets(places, inside) {
		return nil
	}
	return []Loosening{way}
}

// towards returns the mark that a floor which was given would have to move to.
func (c *Clash) towards(given, mark measure.Length) measure.Length {
	switch c.Kind {
	case TooLow:
		return (given + c.Amount).RoundUpTo(mark)
	case TooHigh:
		return (given - c.Amount).RoundDownTo(mark)
	}
	return given
}

// thinnerBed offers a thinner bed at the one pier that keeps the floor up, when
// it is rock that does: everywhere else the bed spreads the load.
func (t terms) thinnerBed(c *Clash, places []place, inside []terrain.SpotHeight) []Loosening {
	i := slices.IndexFunc(places, func(p place) bool { return p.name == c.High.Name })
	if i < 0 || c.High.Limit != Rock {
		return nil
	}
	from := t.bounds(places[i]).StoneLeast
	changed := slices.Clone(places)
	to, frees := t.leastChange(from, false, func(to measure.Length) bool {
		changed[i].exception = job.Exception{Bed: &to, Deepest: places[i].exception.Deepest}
		return t.meets(changed, inside)
	})
	if !frees {
		return nil
	}
	return []Loosening{{Path: "piers." + c.High.Name + ".bed", Means: "bed under " + c.High.Name, From: from, To: to}}
}
