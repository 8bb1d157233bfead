package heights

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// floor adds the height of the floor and what governs it.
func (l *ledger) floor(h *Heights) {
	if h.Floor == nil {
		l.noFloor(h)
		return
	}
	f := h.Floor
	demand := h.demandKeys(f.Governs)
	switch {
	case f.Given:
		l.Add(l.job.Figure("floor.height", "top of the floor", "platform.floor.height", f.Height))
	default:
		l.Add(figure.Figure{Key: "floor.height", Means: "top of the floor", Value: f.Height,
			Formula: "floor = build-up + the greatest over the piers of (lowest seat + shortest post + room of the seats) and of (ground + clearance), but no nearer to the highest than to the lowest, rounded up to a whole mark",
			Working: l.floorWorking(h), From: append([]string{"floor.lowest", "floor.room"}, demand...)})
	}
	l.Add(figure.Figure{Key: "floor.lowest", Means: "lowest floor the ground allows", Value: f.Lowest, Rounding: measure.Up,
		Formula: "build-up + the greatest over the piers of (lowest seat + shortest post) and of (ground + clearance)",
		Working: fmt.Sprintf("%s, by %s at %s", l.Up(f.Lowest), f.Governs.Limit, f.Governs.Name), From: demand})
	l.Add(figure.Figure{Key: "floor.highest", Means: "highest floor the ground allows", Value: f.Highest, Rounding: measure.Down,
		Formula: "build-up + the least over the piers of (highest seat + longest post)", Working: l.Down(f.Highest), From: []string{"build_up", "post.longest"}})
	l.Add(l.job.Figure("floor.room", "room of the seats at the shortest and the longest post", "platform.floor.room", h.terms.Room))
	if first := h.setFirst(l.job); len(first) > 0 {
		l.Word("piers.set_first", "piers whose blocks are set before the others", strings.Join(first, ", "), []string{"floor.governed_by", "floor.runner_up"})
	} else {
		l.Blank("piers.set_first", "piers whose blocks are set before the others")
	}
	l.Word("floor.governed_by", "the pier that keeps the floor from being lower", f.Governs.Name, []string{"floor.lowest"})
	l.Word("floor.limit", "the limit that keeps the floor from being lower", string(f.Governs.Limit), []string{"floor.lowest"})
	l.Word("floor.runner_up", "the pier that comes next", f.RunnerUp.Name, []string{"floor.lowest"})
	low, _ := h.ground.Under()
	l.Add(figure.Figure{Key: "floor.above_lowest_ground", Means: "floor over the lowest ground under it", Value: f.Height - low,
		Formula: "floor − lowest ground", Working: l.Sum(f.Height-low, figure.Plus(f.Height), figure.Minus(low)), From: []string{"floor.height", "ground.low"}})
	l.Add(figure.Figure{Key: "post_tops.below_floor", Means: "tops of the posts below the floor", Value: h.terms.BuildUp,
		Formula: "build-up", Working: l.Print(h.terms.BuildUp), From: []string{"build_up"}})
	l.Add(figure.Figure{Key: "post_tops.height", Means: "tops of all posts", Value: f.PostTops, Formula: "post tops = floor − build-up",
		Working: l.Sum(f.PostTops, figure.Plus(f.Height), figure.Minus(h.terms.BuildUp)), From: []string{"floor.height", "build_up"}})
}

func (l *ledger) noFloor(h *Heights) {
	if h.terms.Given != nil {
		l.Add(l.job.Figure("floor.height", "top of the floor", "platform.floor.height", *h.terms.Given))
	} else {
		l.Blank("floor.height", "top of the floor")
	}
	l.Add(l.job.Figure("floor.room", "room of the seats at the shortest and the longest post", "platform.floor.room", h.terms.Room))
	l.Blank("piers.set_first", "piers whose blocks are set before the others")
	l.Blank("floor.lowest", "lowest floor the ground allows", "floor.highest", "highest floor the ground allows",
		"floor.governed_by", "the pier that keeps the floor from being lower",
		"floor.limit", "the limit that keeps the floor from being lower", "floor.runner_up", "the pier that comes next",
		"floor.above_lowest_ground", "floor over the lowest ground under it")
	l.Add(figure.Figure{Key: "post_tops.below_floor", Means: "tops of the posts below the floor", Value: h.terms.BuildUp,
		Formula: "build-up", Working: l.Print(h.terms.BuildUp), From: []string{"build_up"}})
	if h.Posts == nil {
		l.Blank("post_tops.height", "tops of all posts")
		return
	}
	tops := *h.terms.Given - h.terms.BuildUp
	l.Add(figure.Figure{Key: "post_tops.height", Means: "tops of all posts", Value: tops, Formula: "post tops = floor − build-up",
		Working: l.Sum(tops, figure.Plus(*h.terms.Given), figure.Minus(h.terms.BuildUp)), From: []string{"floor.height", "build_up"}})
}

// floorWorking prints how the place that asks for most makes the floor.
func (l *ledger) floorWorking(h *Heights) string {
	f, t := h.Floor, h.terms
	parts := []figure.Term{figure.Plus(t.BuildUp)}
	if f.Roomy.Limit == BeamClearance {
		parts = append(parts, figure.Plus(f.Roomy.Floor-t.BuildUp-t.Clear), figure.Plus(t.Clear))
	} else {
		shortest, _ := t.aimed()
		parts = append(parts, figure.Plus(f.Roomy.Floor-t.BuildUp-shortest), figure.Plus(t.Shortest))
		if shortest > t.Shortest {
			parts = append(parts, figure.Plus(shortest-t.Shortest))
		}
	}
	working := "at " + f.Roomy.Name + ": " + l.Sum(f.Roomy.Floor, parts...)
	switch {
	case f.Height < f.Roomy.Floor:
		working += fmt.Sprintf("; between %s and %s there is less room: %s", l.Up(f.Lowest), l.Down(f.Highest), l.Print(f.Height))
	case f.Height != f.Roomy.Floor:
		working += ", rounded up to " + l.Print(f.Height)
	}
	return working
}

// demandKeys returns the keys of what makes a place's lowest floor.
func (h *Heights) demandKeys(d Demand) []string {
	keys := []string{"build_up"}
	if _, pier := h.Pier(d.Name); pier {
		keys = append(keys, terrain.LevelKey(d.Name))
	} else {
		keys = append(keys, "spot."+d.Name+".ground")
	}
	switch d.Limit {
	case BeamClearance:
		return append(keys, "frame.clear")
	case SeatAboveGround:
		return append(keys, "post.shortest", "stone.above_ground")
	case DeepestDig:
		return append(keys, "post.shortest", "dig.deepest", "stone.least", "block.seat_height")
	}
	return append(keys, "post.shortest", "stone.least", "block.seat_height", "ground.probes."+d.Name+".depth")
}

// posts adds what all posts have in common.
func (l *ledger) posts(h *Heights) {
	if h.Posts == nil {
		l.Blank("post.longest_cut", "longest post to cut", "post.shortest_cut", "shortest post to cut", "post.total", "length of all posts", "hole.deepest", "deepest hole")
		return
	}
	longest, shortest := h.Posts[0], h.Posts[0]
	var total measure.Length
	var keys []string
	for _, p := range h.Posts {
		total += p.Length()
		keys = append(keys, "pier."+p.Name+".post")
		if p.Length() > longest.Length() {
			longest = p
		}
		if p.Length() < shortest.Length() {
			shortest = p
		}
	}
	extreme := func(key, means, pier string, value measure.Length, of string) {
		l.Add(figure.Figure{Key: key, Means: means + ", " + pier, Value: value, Formula: "taken from all piers",
			Working: fmt.Sprintf("%s at %s", l.Print(value), pier), From: []string{"pier." + pier + "." + of}})
	}
	extreme("post.longest_cut", "longest post to cut", longest.Name, longest.Length(), "post")
	extreme("post.shortest_cut", "shortest post to cut", shortest.Name, shortest.Length(), "post")
	l.Add(figure.Figure{Key: "post.total", Means: "length of all posts", Value: total, Rounding: measure.Up, Formula: "Σ posts",
		Working: fmt.Sprintf("%s, %s in all", measure.Counted(len(h.Posts), "post"), l.Print(total)), From: keys})
	if h.Floor == nil {
		l.Blank("hole.deepest", "deepest hole")
		return
	}
	deepest := slices.MaxFunc(h.Piers, func(a, b PierHeights) int { return cmp.Compare(a.Hole.Dig, b.Hole.Dig) })
	extreme("hole.deepest", "deepest hole", deepest.Name, deepest.Hole.Dig, "dig")
}
