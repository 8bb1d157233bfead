package heights

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
	"pierbook/calc/trade"
)

// pier adds the ground, the hole, the stone, the seat and the post of one pier.
func (l *ledger) pier(h *Heights, i int) {
	p := h.Piers[i]
	key := func(what string) string { return "pier." + p.Name + "." + what }
	if p.Hole == nil {
		l.seatAlone(h, i)
		l.Blank(key("dig"), "depth of the hole at "+p.Name,
			key("dig_least"), "least depth that still serves at "+p.Name, key("dig_most"), "most depth before you stop at "+p.Name,
			key("move_on"), "how far "+p.Name+" may move along its line, to higher numbers", key("move_back"), "how far "+p.Name+" may move along its line, to lower numbers",
			key("stone"), "compacted stone at "+p.Name)
		return
	}
	hole := *p.Hole
	l.Add(figure.Figure{Key: key("dig"), Means: "depth of the hole at " + p.Name, Value: hole.Dig,
		Formula: "dig = the greatest of least dig, firm depth, and least stone + what lowers the seat to the post", Working: l.digWorking(hole),
		From: append([]string{terrain.LevelKey(p.Name), "post_tops.height"}, l.digKeys(hole)...)})
	l.Add(figure.Figure{Key: key("dig_least"), Means: "least depth that still serves at " + p.Name, Value: hole.Least,
		Formula: "as the dig, whatever firm depth was expected", Working: l.Print(hole.Least), From: []string{key("dig"), "dig.least"}})
	l.Add(figure.Figure{Key: key("dig_most"), Means: "most depth before you stop at " + p.Name, Value: hole.Most, Rounding: measure.Down,
		Formula: "the lesser of the deepest dig and most stone + the deepest cover", Working: fmt.Sprintf("%s, by %s", l.Down(hole.Most), l.mostBy(hole)),
		From: []string{terrain.LevelKey(p.Name), "dig.deepest", "stone.most"}})
	l.moves(h, i)
	l.Add(figure.Figure{Key: key("stone"), Means: "compacted stone at " + p.Name, Value: hole.Stone,
		Formula: "stone = the greater of least stone and dig − deepest cover", Working: l.stoneWorking(hole),
		From: []string{key("dig"), "stone.least", "block.seat_height", "stone.above_ground"}})
	l.seatAndPost(h, i)
}

// moves adds how far the pier may stand off its place along its line.
func (l *ledger) moves(h *Heights, i int) {
	p, m := h.Piers[i], h.mayShift(i, WindowStep(l.job.Units))
	why := fmt.Sprintf("at most %s ÷ %d", l.Print(m.Bay), bayTolerance)
	if m.Joint {
		why = "a beam joint lies over it"
	}
	for _, way := range []struct {
		key, to string
		by      measure.Length
	}{{"move_on", "higher", m.On}, {"move_back", "lower", m.Back}} {
		l.Add(figure.Figure{Key: "pier." + p.Name + "." + way.key, Means: "how far " + p.Name + " may move along its line, to " + way.to + " numbers", Value: way.by, Rounding: measure.Down,
			Formula: "as far as the surface meets the limits with an ordinary hole, and a quarter of the shorter bay beside it",
			Working: fmt.Sprintf("%s: %s", why, l.Down(way.by)), Source: "common practice, no source", From: append([]string{"floor.height", "stone.least"}, h.ground.Keys()...)})
	}
}

// WindowStep is the step of the tables of what to do beforehand.
func WindowStep(units measure.System) measure.Length { return trade.FloorStep.In(units) }

// seatAlone adds the seat and the post of a pier whose hole is not known: by the
// seat as read, when all of them are.
func (l *ledger) seatAlone(h *Heights, i int) {
	name := h.Piers[i].Name
	key := func(what string) string { return "pier." + name + "." + what }
	if h.Posts == nil {
		l.Blank(key("seat"), "height of the seat at "+name, key("post"), "length of the post at "+name)
		return
	}
	seat, line := *h.Seats.height(name), h.Lines[h.frame.Piers[i].Line]
	l.Add(figure.Figure{Key: key("seat"), Means: "height of the seat at " + name, Value: seat, Formula: "seat as read", Working: l.Print(seat), From: []string{key("seat_read")}})
	l.Add(figure.Figure{Key: key("post"), Means: "length of the post at " + name, Value: h.Posts[i].Length(), Formula: "post = floor − build-up − seat",
		Working: l.Sum(h.Posts[i].Length(), figure.Plus(*h.terms.Given), figure.Minus(line.BuildUp), figure.Minus(seat)), From: []string{"floor.height", "line." + line.Name + ".post_tops", key("seat")}})
}

// seatAndPost adds where the post of a pier stands and how long it is: by the
// seat as read once it is, and by the build-up of its own line.
func (l *ledger) seatAndPost(h *Heights, i int) {
	p := h.Piers[i]
	key := func(what string) string { return "pier." + p.Name + "." + what }
	hole, line := *p.Hole, h.frame.Lines[h.frame.Piers[i].Line].Name
	seat := figure.Figure{Key: key("seat"), Means: "height of the seat at " + p.Name, Value: hole.Seat, Formula: "seat = ground − dig + stone + seat height, on a whole mark",
		Working: l.Sum(hole.Seat, figure.Plus(hole.Ground), figure.Minus(hole.Dig), figure.Plus(hole.Stone), figure.Plus(hole.SeatHeight)),
		From:    []string{terrain.LevelKey(p.Name), key("dig"), key("stone"), "block.seat_height"}}
	if h.places[i].seat != nil {
		seat.Formula, seat.Working, seat.From = "seat as read", l.Print(hole.Seat), []string{key("seat_read")}
	}
	l.Add(seat)
	l.Add(figure.Figure{Key: key("post"), Means: "length of the post at " + p.Name, Value: hole.Post, Formula: "post = top of its line − seat",
		Working: l.Sum(hole.Post, figure.Plus(hole.Seat+hole.Post), figure.Minus(hole.Seat)),
		From:    []string{"floor.height", "line." + line + ".post_tops", key("seat")}})
}

// digWorking prints the rule that made the dig.
func (l *ledger) digWorking(h Hole) string {
	if h.Dig == h.DigLeast {
		return fmt.Sprintf("%s, by %s", l.Print(h.Dig), h.DigLeastBy)
	}
	low := h.Dig - h.StoneLeast
	if low == h.CoverLeast {
		return "stone and what covers it: " + l.Sum(h.Dig, figure.Plus(h.StoneLeast), figure.Plus(low))
	}
	return "to let the shortest post fit: " + l.Sum(h.Dig, figure.Plus(h.StoneLeast), figure.Plus(low))
}

func (l *ledger) digKeys(h Hole) []string {
	switch {
	case h.Dig != h.DigLeast:
		return []string{"stone.least", "stone.embed", "post.shortest", "block.seat_height"}
	case h.DigLeastBy == FrostDepth:
		return []string{"site.frost_depth"}
	case h.DigLeastBy == FirmGround, h.DigLeastBy == Rock:
		return []string{"ground.probes." + h.Name + ".depth"}
	case h.DigLeastBy == HoleAsDug:
		return []string{"measured.holes." + h.Name + ".depth"}
	}
	return []string{"dig.least"}
}

func (l *ledger) mostBy(h Hole) Limit {
	if h.Most == h.DigMost {
		return h.DigMostBy
	}
	return StoneMost
}

func (l *ledger) stoneWorking(h Hole) string {
	if h.Stone == h.StoneLeast {
		return l.Print(h.Stone) + ", the least"
	}
	return "fills the hole up to the block: " + l.Sum(h.Stone, figure.Plus(h.Dig), figure.Minus(h.Cover()))
}
