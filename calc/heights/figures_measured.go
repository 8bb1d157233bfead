package heights

import (
	"pierbook/calc/figure"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// measured adds what came back from the site, next to what was planned.
func (l *ledger) measured(h *Heights) {
	for _, line := range h.frame.Lines {
		l.line(h, line.Name)
	}
	for i := range h.Piers {
		l.cutPost(h, i)
	}
	l.built(h)
}

// line adds the post tops of one beam line and the number its post rows start from.
func (l *ledger) line(h *Heights, name string) {
	top, printed := "line."+name+".post_tops", "line."+name+".post_number"
	for _, p := range h.Lines {
		if p.Name != name {
			continue
		}
		l.Add(figure.Figure{Key: top, Means: "tops of the posts on line " + name, Value: p.Top, Formula: "floor − build-up of the line, with measured depths",
			Working: l.Sum(p.Top, figure.Plus(p.Top+p.BuildUp), figure.Minus(p.BuildUp)), From: []string{"floor.height", "build_up"}})
		l.Add(figure.Figure{Key: printed, Means: "number the posts of line " + name + " start from", Value: p.Printed,
			Formula: "post = this number + reading in the seat − the day's bench-mark reading",
			Working: l.Sum(p.Printed, figure.Plus(p.Top), figure.Minus(l.job.Ground.BenchMark.Height)), From: []string{top, "bench_mark.height"}})
		return
	}
	l.Blank(top, "tops of the posts on line "+name, printed, "number the posts of line "+name+" start from")
}

// cutPost adds the seat as read and the post as cut at one pier.
func (l *ledger) cutPost(h *Heights, i int) {
	p := h.Piers[i]
	key := func(what string) string { return "pier." + p.Name + "." + what }
	l.planned(p)
	reading, read := l.job.Measured.Seats[p.Name]
	if seat := h.Seats.height(p.Name); read && seat != nil {
		at := l.job.At("measured.seats." + p.Name)
		l.Add(figure.Figure{Key: key("seat_reading"), Means: "reading in the seat at " + p.Name, Value: measure.Reading(reading), Origin: figure.Measured, At: at})
		l.Add(figure.Figure{Key: key("seat_read"), Means: "height of the seat at " + p.Name + " as read", Value: *seat,
			Formula: "height of the bench mark + its reading that day − reading in the seat",
			Working: l.Sum(*seat, figure.Plus(l.job.Ground.BenchMark.Height), figure.Plus(measure.Reading(h.Seats.BenchMark)), figure.Minus(measure.Reading(reading))),
			From:    []string{"bench_mark.height", key("seat_reading")}})
	} else {
		l.Blank(key("seat_reading"), "reading in the seat at "+p.Name, key("seat_read"), "height of the seat at "+p.Name+" as read")
	}
	if cut, done := l.job.Measured.PostsCut[p.Name]; done {
		l.Add(figure.Figure{Key: key("post_cut"), Means: "post at " + p.Name + " as cut", Value: cut, Origin: figure.Measured, At: l.job.At("measured.posts_cut." + p.Name)})
	} else {
		l.Blank(key("post_cut"), "post at "+p.Name+" as cut")
	}
	if len(h.Posts) == 0 {
		l.Blank(key("post_state"), "what to do about the post at "+p.Name)
		return
	}
	l.Word(key("post_state"), "what to do about the post at "+p.Name, string(h.Posts[i].State), []string{key("post")})
}

// planned adds the plan that the crew works to, with the holes as dug; of the plan
// before them only the depth that was wanted.
func (l *ledger) planned(p PierHeights) {
	add := func(key, means string, hole *Hole, of func(*Hole) measure.Length, formula string, from ...string) {
		key = "pier." + p.Name + "." + key
		if hole == nil {
			l.Blank(key, means)
			return
		}
		l.Add(figure.Figure{Key: key, Means: means, Value: of(hole), Formula: formula, Working: l.Print(of(hole)), From: from})
	}
	const before, asDug = "as worked out before anything was measured at the piers", "as worked out with the holes as dug and the beams as delivered"
	level, dig := terrain.LevelKey(p.Name), "pier."+p.Name+".dig"
	add("dig_planned", "depth of the hole at "+p.Name+" as planned", p.Planned, func(h *Hole) measure.Length { return h.Dig }, before, level)
	add("stone_planned", "stone at "+p.Name+" as planned", p.Expected, func(h *Hole) measure.Length { return h.Stone }, asDug, level, dig)
	add("seat_planned", "height of the seat at "+p.Name+" as planned", p.Expected, func(h *Hole) measure.Length { return h.Seat }, asDug, level, dig)
	add("post_planned", "post at "+p.Name+" as planned", p.Expected, func(h *Hole) measure.Length { return h.Post }, asDug, level, dig)
}
