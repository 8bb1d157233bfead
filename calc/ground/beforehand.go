package ground

import "pierbook/calc/measure"

// Beforehand is what to do at a pier where something firm is met before the hole
// is deep enough.
type Beforehand struct {
	Pier       string
	Shallowest measure.Length // depth below the ground from which nothing needs to change
	Rows       []MetAt
}

// MetAt is one depth at which the digging stops, and the ways on.
type MetAt struct {
	Depth     measure.Length
	UnderRule bool            // shallower than the least dig or the frost allows, whatever bed or floor
	Bed       *measure.Length // bed that keeps the floor, nil when even none would not
	LiftFloor *measure.Length // how much higher the floor must be for the least bed, nil when that does not help
}

// Beforehand solves what to do at every pier whose seat is not set, for each of
// several steps of depth short of what would still serve: a bed thinner than the
// least, which is for the engineer to allow, or a higher floor with the least
// bed. With low the cover that the shortest post asks for,
//
//	bed  = depth − low          lift = lowest floor with the hole ending at depth − floor
func (g *Ground) Beforehand(step measure.Length, rows int) []Beforehand {
	if g.Floor == nil {
		return nil
	}
	var list []Beforehand
	for i, p := range g.places {
		if p.seat != nil {
			continue
		}
		hole := g.Piers[i].Hole
		b := Beforehand{Pier: p.name, Shallowest: hole.Least}
		for n := 1; n <= rows; n++ {
			depth := hole.Least - measure.Length(n)*step
			if depth <= 0 {
				break
			}
			b.Rows = append(b.Rows, g.metAt(p, depth))
		}
		list = append(list, b)
	}
	return list
}

func (g *Ground) metAt(p place, depth measure.Length) MetAt {
	bounds := g.terms.bounds(p)
	row := MetAt{Depth: depth, UnderRule: depth < bounds.DigRule}
	low := max(bounds.CoverLeast, bounds.Ground+bounds.SeatHeight-(g.Floor.Height-p.buildUp-g.terms.Shortest))
	if bed := depth - low; bed > 0 {
		row.Bed = &bed
	}
	bounds.DigMost, bounds.DigMostBy = depth, Rock
	if depth-bounds.StoneLeast >= bounds.CoverLeast {
		seat, _ := bounds.LowestSeat()
		lift := p.buildUp + seat + g.terms.Shortest - g.Floor.Height
		if lift > 0 {
			row.LiftFloor = &lift
		}
	}
	return row
}
