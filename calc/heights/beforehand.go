package heights

import "pierbook/calc/measure"

// Beforehand is what to do at a pier where something that cannot be dug is met
// before the hole is deep enough. Firm ground that can be dug is no such thing:
// there the digging goes on.
type Beforehand struct {
	Pier       string
	Shallowest measure.Length // depth below the ground from which nothing needs to change
	Rows       []MetAt
	Move       Shift // where else the hole may be, whatever is met here
}

// MetAt is one depth at which the digging stops, and the ways on.
type MetAt struct {
	Depth     measure.Length
	UnderRule bool            // shallower than the least dig or the frost allows, whatever bed or floor
	Bed       *measure.Length // bed that keeps the floor, nil when even none would not
	Thin      bool            // Bed is thinner than the least: an exception on rock alone, for an engineer to allow
	LiftFloor *measure.Length // how much higher the floor must be for the least bed, nil when that does not help or another pier cannot follow
}

// Beforehand solves what to do at every pier whose seat is not set, for each of
// several steps of depth short of what would still serve. The ordinary way is a
// higher floor with the least bed, or to move the pier along its line. A bed
// thinner than the least is an exception: it spreads nothing, so that it takes
// rock under it and an engineer who allows it, and the row says so. With low the
// cover that the shortest post asks for,
//
//	bed  = depth − low          lift = lowest floor with the hole ending at depth − floor
func (h *Heights) Beforehand(step measure.Length, rows int) []Beforehand {
	if h.Floor == nil {
		return nil
	}
	var list []Beforehand
	for i, p := range h.places {
		if p.seat != nil {
			continue
		}
		hole := h.Piers[i].Hole
		b := Beforehand{Pier: p.name, Shallowest: hole.Least, Move: h.mayShift(i, step)}
		for n := 1; n <= rows; n++ {
			depth := hole.Least - measure.Length(n)*step
			if depth <= 0 {
				break
			}
			b.Rows = append(b.Rows, h.metAt(p, depth))
		}
		list = append(list, b)
	}
	return list
}

func (h *Heights) metAt(p place, depth measure.Length) MetAt {
	bounds := h.terms.bounds(p)
	row := MetAt{Depth: depth, UnderRule: depth < bounds.DigRule}
	low := max(bounds.CoverLeast, bounds.Ground+bounds.SeatHeight-(h.terms.tops(h.Floor.Height, p.buildUp)-h.terms.Shortest))
	if bed := depth - low; bed > 0 {
		row.Bed, row.Thin = &bed, bed < bounds.StoneLeast
	}
	bounds.DigMost, bounds.DigMostBy = depth, Rock
	if !row.UnderRule && depth-bounds.StoneLeast >= bounds.CoverLeast {
		seat, _ := bounds.LowestSeat()
		lift := p.buildUp + seat + h.terms.Shortest - h.Floor.Height
		if lift > 0 && h.Floor.Height+lift <= h.terms.ceiling(unsettled(h.places)).Floor {
			row.LiftFloor = &lift
		}
	}
	return row
}
