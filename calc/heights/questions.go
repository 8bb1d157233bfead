package heights

import (
	"slices"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/terrain"
	"pierbook/calc/trade"
)

// Questions are what pages ask of the heights with {when}.
func (h *Heights) Questions(j *job.Job) []figure.Figure {
	style := j.Style()
	drop := terrain.WorstDrop(h.Drops)
	guarded, cavesIn := trade.GuardHeight.In(j.Units), trade.DeepHole.In(j.Units)
	short := slices.ContainsFunc(h.Posts, func(post Post) bool { return len(post.Ways) > 0 })
	var estimated, tall, beyond, deep, reach bool
	for _, pier := range h.Piers {
		estimated = estimated || pier.Level != nil && !pier.Level.Read
		if hole := pier.Hole; hole != nil {
			tall = tall || hole.Post > j.Design.BracedAbove
			beyond = beyond || hole.Post+j.Block.SeatHeight > j.Design.NotSizedAbove
			deep = deep || hole.Dig > cavesIn
			reach = reach || j.Site.FrostDepth > hole.Dig
		}
	}
	return []figure.Figure{
		figure.Answer("has.guard", "the floor stands more than "+guarded.Print(style)+" over the ground beside it", h.Floor != nil && drop.Drop > guarded, "drop above "+guarded.Print(style), "drop.most", trade.GuardHeight.Key()),
		figure.Answer("has.low_floor", "the floor stands nowhere more than "+guarded.Print(style)+" over the ground beside it", h.Floor != nil && drop.Drop <= guarded, "drop known and not above "+guarded.Print(style), "drop.most", trade.GuardHeight.Key()),
		figure.Answer("has.estimated", "the ground at a pier is estimated", estimated, "some pier was not read", "ground.estimated"),
		figure.Answer("has.clash", "the heights cannot be met", h.Clash != nil, "something clashes", "clash.kind"),
		figure.Answer("has.tall_posts", "a post is tall enough to be braced", tall, "longest post above the limit", "design.braced_above"),
		figure.Answer("has.no_sizing", "a block and its post are too tall to be sized here", beyond, "block and post above the limit", "design.not_sized_above"),
		figure.Answer("has.deep_holes", "a hole is deeper than "+cavesIn.Print(style), deep, "deepest hole above "+cavesIn.Print(style), "hole.deepest", trade.DeepHole.Key()),
		figure.Answer("has.frost_reach", "frost reaches below a bed", reach, "frost deeper than a hole", "site.frost_depth"),
		figure.Answer("has.seats", "a seat was read", h.Seats != nil && len(h.Seats.Read) > 0, "the job file has readings on seats"),
		figure.Answer("has.ways_out", "a post was cut short, or its seat does not allow it", short, "a cut post or a seat that does not fit its plan"),
	}
}
