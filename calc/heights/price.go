package heights

import (
	"slices"

	"pierbook/calc/measure"
)

// PricePoint is what one floor height costs in all.
type PricePoint struct {
	Floor             measure.Length
	Dig, Stone, Posts measure.Length // summed over the piers
}

// Price returns what the floor height costs in digging, stone and posts, at the
// lowest floor, the highest, and at each break between: the totals run straight
// from point to point. It is nil when no floor will do.
func (h *Heights) Price() []PricePoint {
	if h.Floor == nil {
		return nil
	}
	open := unsettled(h.places)
	if len(open) == 0 {
		return nil
	}
	low, high := h.terms.demands(open, h.ground.Inside())[0].Floor, h.terms.ceiling(open).Floor
	breaks := []measure.Length{low, high}
	for _, p := range open {
		for _, floor := range h.terms.breaks(p) {
			if floor > low && floor < high {
				breaks = append(breaks, floor)
			}
		}
	}
	slices.Sort(breaks)
	var points []PricePoint
	for _, floor := range slices.Compact(breaks) {
		points = append(points, h.terms.price(floor, open))
	}
	return straightened(points)
}

// price sums up one floor height, without the whole marks of the rod, so that the
// totals run straight between the breaks.
func (t terms) price(floor measure.Length, places []place) PricePoint {
	t.Mark = 0
	point := PricePoint{Floor: floor}
	for _, p := range places {
		hole := t.hole(p, floor)
		point.Dig += hole.Dig
		point.Stone += hole.Stone
		point.Posts += hole.Post
	}
	return point
}

// breaks returns the floors at which one pier's rule changes. While the floor
// rises the shortest post lets the dig grow less until the cover or the least
// dig takes over; later the longest post pushes the seat up with more stone.
func (t terms) breaks(p place) []measure.Length {
	b := t.bounds(p)
	at := func(cover, post measure.Length) measure.Length {
		return p.buildUp + b.Ground + b.SeatHeight - cover + post
	}
	shortest, longest := t.aimed()
	return []measure.Length{
		at(min(b.CoverMost, b.DigMost-b.StoneLeast), shortest),
		at(b.CoverLeast, shortest),
		at(b.DigLeast-b.StoneLeast, shortest),
		at(b.CoverMost, longest),
		at(b.DigLeast-b.StoneLeast, longest),
		at(max(b.CoverLeast, b.DigLeast-b.StoneMost), longest),
	}
}

// straightened drops the points that lie on the straight line between their
// neighbours.
func straightened(points []PricePoint) []PricePoint {
	if len(points) < 3 {
		return points
	}
	kept := points[:1:1]
	for i := 1; i < len(points)-1; i++ {
		if !onLine(kept[len(kept)-1], points[i], points[i+1]) {
			kept = append(kept, points[i])
		}
	}
	return append(kept, points[len(points)-1])
}

// onLine holds when b tells nothing that a and c do not: it lies on the way between
// them, to a few nanometres.
func onLine(a, b, c PricePoint) bool {
	part := float64(b.Floor-a.Floor) / float64(c.Floor-a.Floor)
	for _, rise := range [][2]measure.Length{{b.Dig - a.Dig, c.Dig - a.Dig}, {b.Stone - a.Stone, c.Stone - a.Stone}, {b.Posts - a.Posts, c.Posts - a.Posts}} {
		if (rise[1].Scale(part) - rise[0]).Abs() > 4 {
			return false
		}
	}
	return true
}

// Per returns how much dig, stone and post a step of the floor adds between two
// points of a price.
func Per(step measure.Length, a, b PricePoint) (dig, stone, posts measure.Length) {
	run := float64(b.Floor - a.Floor)
	if run == 0 {
		return 0, 0, 0
	}
	each := func(rise measure.Length) measure.Length { return rise.Scale(float64(step) / run) }
	return each(b.Dig - a.Dig), each(b.Stone - a.Stone), each(b.Posts - a.Posts)
}
