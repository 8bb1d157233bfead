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
// of allowed length under the floor, with room for the seat to come out higher or
// lower: as much as was asked for, or all that the pier leaves. With the cover of
// the stone between
//
//	low  = max(embed,            g + h − (tops − shortest − room))
//	high = min(h − above ground, g + h − (tops − longest + room))
//
// and neither beyond what the digging allows, the dig is the greater of its own
// least and low + least stone, and the stone the greater of its own least and
// dig − high. The seat stands on a whole mark of the rod, since it is read there.
// The caller has made sure that the pier can be met.
func (t terms) hole(p place, floor measure.Length) Hole {
	h := Hole{Bounds: t.bounds(p)}
	tops := t.tops(floor, p.buildUp)
	cover := func(post measure.Length) measure.Length { return h.Ground + h.SeatHeight - (tops - post) }
	shortest, longest := t.aimed()
	deepest, shallowest := min(h.CoverMost, h.DigMost-h.StoneLeast), max(h.CoverLeast, h.DigLeast-h.StoneMost)
	low := min(max(h.CoverLeast, cover(shortest)), deepest)
	high := max(min(h.CoverMost, cover(longest)), shallowest)
	h.Dig = max(h.DigLeast, low+h.StoneLeast)
	h.Stone = max(h.StoneLeast, h.Dig-high)
	h.Seat = t.onMark(h.Ground - h.Dig + h.Stone + h.SeatHeight)
	h.Post = tops - h.Seat
	h.Least = max(h.DigRule, max(h.CoverLeast, cover(t.Shortest))+h.StoneLeast)
	h.Most = min(h.DigMost, min(h.CoverMost, cover(t.Longest))+h.StoneMost)
	return h
}

// holeAsDelivered is the hole of the plan with the timber as it was delivered: a
// beam a little deeper or thinner is taken up by the post, and moves no seat whose
// number is on paper already. Only where the post would pass a limit the seat moves.
func (t terms) holeAsDelivered(p place, floor measure.Length) Hole {
	measured := t.hole(p, floor)
	p.buildUp = t.BuildUp
	h := t.hole(p, floor)
	h.Post = measured.Seat + measured.Post - h.Seat
	if !t.fits(h.Post) {
		return measured
	}
	h.Least, h.Most = measured.Least, measured.Most
	return h
}

// aimed returns the shortest and the longest post that leave a seat its room;
// between limits too near each other for it, the middle.
func (t terms) aimed() (shortest, longest measure.Length) {
	room := min(t.Room, ((t.Longest - t.Shortest) / 2).RoundDownTo(t.Mark))
	return t.Shortest + room, t.Longest - room
}

// tops returns the height of the post tops under a floor. They are held at the
// rod and stand on a whole mark, even under a floor that was given off one.
func (t terms) tops(floor, buildUp measure.Length) measure.Length { return t.onMark(floor - buildUp) }

// onMark moves a height to the nearest whole mark of the rod held on the bench
// mark. Halves go up, whatever the sign.
func (t terms) onMark(height measure.Length) measure.Length {
	return t.BenchMark + (height - t.BenchMark + t.Mark/2).RoundDownTo(t.Mark)
}
