package heights

import (
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// ClashKind is what fights with what.
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
	Ways   []Loosening    // each of them alone would free the heights
}

// Loosening is a single change that would free the heights.
type Loosening struct {
	Path  string         // key of the job to change
	Means string         // what it is, in words
	From  measure.Length // as it is
	To    measure.Length // as it would have to be, at the least
}

// contradiction looks for a pier that cannot be met whatever the floor.
func (t terms) contradiction(places []place, inside []terrain.SpotHeight) *Clash {
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
	if b.DigLeast-b.DigMost == lacks { // the words are those of the greatest contradiction
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
func (t terms) clash(f *ChosenFloor, ceiling Demand, places []place, inside []terrain.SpotHeight) *Clash {
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
