package heights

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
	"pierbook/calc/trade"
)

// outlook adds what is worth knowing before anything is dug: what to read next,
// how safe the floor is, and what lies round it.
func (l *ledger) outlook(h *Heights) {
	l.next(h)
	l.safety(h)
	l.price(h)
	l.drop(h)
	l.humps(h)
}

func (l *ledger) next(h *Heights) {
	next := h.ReadNext()
	if len(next) == 0 {
		l.Blank("next.pier", "pier to read next", "next.moves", "how far reading it may move the floor", "next.digs", "how far reading it may move the depth of its hole")
		return
	}
	first := next[0]
	key := terrain.LevelKey(first.Pier) + "_error"
	l.Word("next.pier", "pier to read next", first.Pier, []string{key})
	expected := func(key, means, formula, whole string, value, asked, rest measure.Length, from ...string) {
		l.Add(figure.Figure{Key: key, Means: means, Value: measure.Small(value), Formula: "E |max(M, d + s Z) − max(M, d)|, Z standard normal, s the error of " + first.Pier + ", " + formula,
			Working: fmt.Sprintf("d = %s, M = %s %s, s = %s: %s", l.Print(asked), l.Print(rest), whole, l.Up(first.Error), l.Print(measure.Small(value))), From: from})
	}
	expected("next.moves", "how far reading "+first.Pier+" may move the floor", "d the floor it asks for, M what the rest asks for", "at "+first.Rest.Name,
		first.Moves, first.Asks, first.Rest.Floor, key, "floor.lowest")
	if h.Floor == nil {
		l.Blank("next.digs", "how far reading "+first.Pier+" may move the depth of its hole")
		return
	}
	expected("next.digs", "how far reading "+first.Pier+" may move the depth of its hole", "d the dig that lets the shortest post fit, M the least dig by the other limits", "by the other limits",
		first.Digs, first.dig, first.leastDig, key, "pier."+first.Pier+".dig")
}

func (l *ledger) safety(h *Heights) {
	if h.Floor == nil {
		l.Blank("floor.safe", "floor that is high enough nine times in ten", "post.short_chance", "greatest chance that a post comes out under the shortest in a hole as deep as planned",
			"post.too_short_chance", "greatest chance that no hole is deep enough for the shortest post")
		return
	}
	safe := h.SafeFloor()
	l.Add(figure.Figure{Key: "floor.safe", Means: "floor that is high enough nine times in ten at each estimated pier", Value: safe, Rounding: measure.Up,
		Formula: fmt.Sprintf("the greatest of the lowest floor and, at estimated piers, what they ask for + %.2f × error", trade.OftenDeviate), Working: l.Up(safe), From: []string{"floor.lowest"}})
	var planned, ever ShortChance
	for _, c := range h.ShortChances() {
		if c.AsPlanned > planned.AsPlanned {
			planned = c
		}
		if c.AtAll > ever.AtAll {
			ever = c
		}
	}
	l.chance("post.short_chance", "greatest chance that a post comes out under the shortest in a hole as deep as planned",
		"P(error of the ground > post − shortest), normal", planned.Pier, planned.AsPlanned)
	l.chance("post.too_short_chance", "greatest chance that no hole is deep enough for the shortest post",
		"P(error of the ground > floor − lowest floor of that pier), normal", ever.Pier, ever.AtAll)
}

func (l *ledger) chance(key, means, formula, pier string, chance measure.Percent) {
	f := figure.Figure{Key: key, Means: means, Value: chance, Formula: formula, Working: l.Print(chance), From: []string{"post.shortest"}}
	if pier != "" {
		f.Means += ", " + pier
		f.Working += " at " + pier
		f.From = append(f.From, "pier."+pier+".post", terrain.LevelKey(pier)+"_error")
	}
	l.Add(f)
}

// price adds what a step more of floor costs from the height chosen.
func (l *ledger) price(h *Heights) {
	step := trade.FloorStep.In(l.job.Units)
	more := " for " + l.Print(step) + " more of floor"
	keys := []string{"price.dig", "digging" + more, "price.stone", "stone" + more, "price.posts", "post" + more}
	points := h.Price()
	for i := 1; i < len(points); i++ {
		if h.Floor.Height < points[i-1].Floor || h.Floor.Height >= points[i].Floor {
			continue
		}
		dig, stone, posts := Per(step, points[i-1], points[i])
		for k, value := range []measure.Length{dig, stone, posts} {
			l.Add(figure.Figure{Key: keys[2*k], Means: keys[2*k+1] + ", all piers together", Value: value, Formula: "slope of the total over the floor's height",
				Working: fmt.Sprintf("between floors of %s and %s: %s", l.Print(points[i-1].Floor), l.Print(points[i].Floor), l.Print(value)), From: []string{"floor.height"}})
		}
		return
	}
	l.Blank(keys...)
}

func (l *ledger) drop(h *Heights) {
	drop := terrain.WorstDrop(h.Drops)
	if drop.Side == "" {
		l.Blank("drop.most", "greatest drop beside the floor", "drop.side", "where the drop is greatest")
		return
	}
	reach := l.Print(trade.GuardReach.In(l.job.Units))
	l.Add(figure.Figure{Key: "drop.most", Means: "greatest drop beside the floor, within " + reach + " of it", Value: drop.Drop, Rounding: measure.Up,
		Formula: "floor − lowest ground within " + reach + " of the edge", Working: l.Sum(drop.Drop, figure.Plus(h.Floor.Height), figure.Minus(drop.Ground)),
		Source: trade.GuardReach.Source(), From: []string{"floor.height", trade.GuardReach.Key()}})
	l.Word("drop.side", "where the drop is greatest", drop.Side, []string{"drop.most"})
}

func (l *ledger) humps(h *Heights) {
	var worst terrain.Hump
	for _, hump := range h.Humps {
		if hump.Lower > worst.Lower {
			worst = hump
		}
	}
	if worst.Lower == 0 {
		l.Blank("hump.under", "where ground stands too near the frame", "hump.lower", "how much to take off it")
		return
	}
	l.Word("hump.under", "where ground stands too near the frame", worst.Under, []string{"frame.clear", "post_tops.height"})
	l.Add(figure.Figure{Key: "hump.lower", Means: "how much to take off the ground under " + worst.Under, Value: worst.Lower, Rounding: measure.Up,
		Formula: "clearance − gap", Working: l.Sum(worst.Lower, figure.Plus(h.terms.Clear), figure.Minus(worst.Gap)), From: []string{"frame.clear", "post_tops.height"}})
}
