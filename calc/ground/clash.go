package ground

import (
	"slices"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// ClashKind says what fights with what.
type ClashKind string

// The kinds of clash.
const (
	TwoPiers   ClashKind = "two piers"      // the highest ground against the lowest
	OnePier    ClashKind = "one pier"       // a pier whose own limits contradict each other
	TooLow     ClashKind = "floor too low"  // the floor given is below the lowest possible
	TooHigh    ClashKind = "floor too high" // the floor given is above the highest possible
	RoundingUp ClashKind = "rounding up"    // a floor is possible, but not one rounded up
)

// Clash is why the heights cannot be met. It is a failing check of the job, not
// a fault: what does not depend on the heights still binds.
type Clash struct {
	Kind   ClashKind
	High   Demand         // the pier that keeps the floor up
	Low    Demand         // the pier that keeps it down; the same pier when it contradicts itself
	Wanted measure.Length // the floor that was tried
	Amount measure.Length // by how much they miss each other
	Ways   []Way          // each of them alone would free the heights
}

// Way is a single change that would free the heights.
type Way struct {
	Path  string         // key of the job to change
	Means string         // what it is, in words
	From  measure.Length // as it is
	To    measure.Length // as it would have to be, at the least
}

// contradiction looks for a pier that cannot be met whatever the floor.
func (t terms) contradiction(places []place, inside []Spot) *Clash {
	worst, lacks := -1, measure.Length(0)
	for i, p := range places {
		if l := t.bounds(p).Lacks(); l > lacks && p.seat == nil {
			worst, lacks = i, l
		}
	}
	if worst < 0 {
		return nil
	}
	b, buildUp := t.bounds(places[worst]), places[worst].buildUp
	seat, limit := b.LowestSeat()
	top, topLimit := b.HighestSeat()
	if b.DigLeast > b.DigMost {
		limit, topLimit = b.DigMostBy, b.DigLeastBy
	}
	c := &Clash{Kind: OnePier, Amount: lacks,
		High: Demand{Name: b.Name, Limit: limit, Floor: buildUp + seat + t.Shortest},
		Low:  Demand{Name: b.Name, Limit: topLimit, Floor: buildUp + top + t.Longest}}
	c.Wanted = c.High.Floor
	c.Ways = t.ways(c, places, inside)
	return c
}

// clash names what stands in the way of the floor tried.
func (t terms) clash(f *Floor, ceiling Demand, places []place, inside []Spot) *Clash {
	c := &Clash{High: f.Governs, Low: ceiling, Wanted: f.Height}
	switch {
	case f.Lowest > f.Highest:
		c.Kind, c.Amount = TwoPiers, f.Lowest-f.Highest
	case f.Given && f.Height < f.Lowest:
		c.Kind, c.Amount = TooLow, f.Lowest-f.Height
	case f.Given:
		c.Kind, c.Amount = TooHigh, f.Height-f.Highest
	default:
		c.Kind, c.Amount = RoundingUp, f.Height-f.Highest
	}
	c.Ways = t.ways(c, places, inside)
	return c
}

// lever is a length of the job that can free the heights, and which way.
type lever struct {
	path, means string
	grows       bool // by the amount of the clash; else it shrinks by it
	length      func(*terms) *measure.Length
}

// levers are tried in this order.
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

// ways tries every length of the job that could free the heights, one at a
// time, and keeps those that do. Each is put to the test on the whole site, so
// that a way which only uncovers the next limit is not offered. Rounding up can
// take a freed floor past its ceiling again, so what that may add is tried next.
func (t terms) ways(c *Clash, places []place, inside []Spot) []Way {
	ways := t.floorWays(c, places, inside)
	for _, by := range []measure.Length{c.Amount, c.Amount + t.RoundUp} {
		if len(ways) > 0 && by != c.Amount {
			break
		}
		for _, l := range levers {
			changed := t
			length := l.length(&changed)
			way := Way{Path: l.path, Means: l.means, From: *length, To: *length - by}
			if l.grows {
				way.To = way.From + by
			}
			if *length = way.To; way.To >= 0 && changed.meets(places, inside) {
				ways = append(ways, way)
			}
		}
		ways = append(ways, t.thinnerBed(c, by, places, inside)...)
	}
	return ways
}

// floorWays tries another height for a floor that was given, and no rounding for
// one that was not.
func (t terms) floorWays(c *Clash, places []place, inside []Spot) []Way {
	changed, way := t, Way{Path: "platform.floor.round_up", Means: "rounding of the floor", From: t.RoundUp}
	changed.RoundUp = 0
	if t.Given != nil {
		way = Way{Path: "platform.floor.height", Means: "height of the floor", From: *t.Given, To: *t.Given + c.towards()}
		changed.Given = &way.To
	}
	if !changed.meets(places, inside) {
		return nil
	}
	return []Way{way}
}

// towards returns how far a given floor would have to move.
func (c *Clash) towards() measure.Length {
	switch c.Kind {
	case TooLow:
		return c.Amount
	case TooHigh:
		return -c.Amount
	}
	return 0
}

// thinnerBed offers a thinner bed at the one pier that keeps the floor up.
func (t terms) thinnerBed(c *Clash, by measure.Length, places []place, inside []Spot) []Way {
	i := slices.IndexFunc(places, func(p place) bool { return p.name == c.High.Name })
	if i < 0 {
		return nil
	}
	from := t.bounds(places[i]).StoneLeast
	to := from - by
	if to < 0 {
		return nil
	}
	changed := slices.Clone(places)
	changed[i].exception = job.Exception{Bed: &to, Deepest: places[i].exception.Deepest}
	if !t.meets(changed, inside) {
		return nil
	}
	return []Way{{Path: "piers." + c.High.Name + ".bed", Means: "bed under " + c.High.Name, From: from, To: to}}
}
