package heights

import "pierbook/calc/measure"

// Hole is what one pier gets at the floor chosen.
type Hole struct {
	Bounds
	Dig, Stone measure.Length // below the ground; compacted
	Seat, Post measure.Length // height of the seat; length of the post
	// Least is how shallow the hole may stay and still serve when something firm
	// is met on the way, Most how deep it may go before the work must stop.
	Least, Most measure.Length
}

// Cover returns how deep the top of the stone lies under the ground.
func (h Hole) Cover() measure.Length { return h.Dig - h.Stone }

// hole takes the least dig and then the least stone that put the top of a post
// of allowed length at the given height. With the cover of the stone between
//
//	low  = max(embed,            g + h − (F − t − shortest))
//	high = min(h − above ground, g + h − (F − t − longest))
//
// the dig is the greater of its own least and low + least stone, and the stone
// the greater of its own least and dig − high. The caller has made sure that
// the pier can be met.
func (b Bounds) hole(postTops, shortest, longest measure.Length) Hole {
	low := max(b.CoverLeast, b.Ground+b.SeatHeight-(postTops-shortest))
	high := min(b.CoverMost, b.Ground+b.SeatHeight-(postTops-longest))
	h := Hole{Bounds: b}
	h.Dig = max(b.DigLeast, low+b.StoneLeast)
	h.Stone = max(b.StoneLeast, h.Dig-high)
	h.Seat = b.Ground - h.Dig + h.Stone + b.SeatHeight
	h.Post = postTops - h.Seat
	h.Least = max(b.DigRule, low+b.StoneLeast)
	h.Most = min(b.DigMost, high+b.StoneMost)
	return h
}
