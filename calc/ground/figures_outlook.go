package ground

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/calc/measure"
)

// outlook adds what is worth knowing before anything is dug: where to stand,
// what to read next, how safe the floor is, and what lies round it.
func (l *ledger) outlook(g *Ground, f *frame.Frame) {
	l.next(g)
	l.safety(g)
	l.price(g)
	l.drop(g, f)
	l.lie(g, f)
	l.humps(g, f)
	l.taped(g, f)
	l.odds(g)
}

func (l *ledger) next(g *Ground) {
	next := g.ReadNext()
	if len(next) == 0 {
		l.Blank("next.pier", "pier to read next", "next.moves", "how far reading it may move the floor", "next.digs", "how far reading it may move the depth of its hole")
		return
	}
	first := next[0]
	key := groundKey(first.Pier) + "_error"
	l.Word("next.pier", "pier to read next", first.Pier, []string{key})
	expected := func(key, means, formula, whole string, value, asked, rest measure.Length, from ...string) {
		l.Add(figure.Figure{Key: key, Means: means, Value: measure.Small(value), Formula: "E |max(M, d + s Z) − max(M, d)|, Z standard normal, s the error of " + first.Pier + ", " + formula,
			Working: fmt.Sprintf("d = %s, M = %s %s, s = %s: %s", l.Print(asked), l.Print(rest), whole, l.Up(first.Error), l.Print(measure.Small(value))), From: from})
	}
	expected("next.moves", "how far reading "+first.Pier+" may move the floor", "d the floor it asks for, M what the rest asks for", "at "+first.Rest.Name,
		first.Moves, first.Asks, first.Rest.Floor, key, "floor.lowest")
	if g.Floor == nil {
		l.Blank("next.digs", "how far reading "+first.Pier+" may move the depth of its hole")
		return
	}
	expected("next.digs", "how far reading "+first.Pier+" may move the depth of its hole", "d the dig that lets the shortest post fit, M the least dig by the other limits", "by the other limits",
		first.Digs, first.dig, first.leastDig, key, "pier."+first.Pier+".dig")
}

func (l *ledger) safety(g *Ground) {
	if g.Floor == nil {
		l.Blank("floor.safe", "floor that is high enough nine times in ten", "post.short_chance", "greatest chance that a post comes out under the shortest in a hole as deep as planned",
			"post.too_short_chance", "greatest chance that no hole is deep enough for the shortest post")
		return
	}
	safe := g.SafeFloor()
	l.Add(figure.Figure{Key: "floor.safe", Means: "floor that is high enough nine times in ten at each estimated pier", Value: safe, Rounding: measure.Up,
		Formula: "the greatest of the lowest floor and, at estimated piers, what they ask for + 1.28 × error", Working: l.Up(safe), From: []string{"floor.lowest"}})
	var planned, ever ShortChance
	for _, c := range g.ShortChances() {
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
		f.From = append(f.From, "pier."+pier+".post", groundKey(pier)+"_error")
	}
	l.Add(f)
}

// price adds what a step more of floor costs from the height chosen: an inch, or
// a centimetre.
func (l *ledger) price(g *Ground) {
	step := measure.Inch
	if l.job.Units == measure.Metric {
		step = 10 * measure.Millimetre
	}
	more := " for " + l.Print(step) + " more of floor"
	keys := []string{"price.dig", "digging" + more, "price.stone", "stone" + more, "price.posts", "post" + more}
	points := g.Price()
	for i := 1; i < len(points); i++ {
		if g.Floor.Height < points[i-1].Floor || g.Floor.Height >= points[i].Floor {
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

func (l *ledger) drop(g *Ground, f *frame.Frame) {
	drop := WorstDrop(g.Drops(f))
	if drop.Side == "" {
		l.Blank("drop.most", "greatest drop beside the floor", "drop.side", "where the drop is greatest")
		return
	}
	l.Add(figure.Figure{Key: "drop.most", Means: "greatest drop beside the floor, within 36 in of it", Value: drop.Drop, Rounding: measure.Up,
		Formula: "floor − lowest ground within 36 in of the edge", Working: l.Sum(drop.Drop, figure.Plus(g.Floor.Height), figure.Minus(drop.Ground)),
		Source: "IRC 2018 R312.1.1", From: []string{"floor.height"}})
	l.Word("drop.side", "where the drop is greatest", drop.Side, []string{"drop.most"})
}

func (l *ledger) lie(g *Ground, f *frame.Frame) {
	fall := g.Fall(f)
	if fall == nil {
		l.Blank("ground.slope_along", "slope of the ground along the lines", "ground.slope_across", "slope of the ground across the lines", "ground.water_gathers", "whether the lowest ground lies under the platform")
		return
	}
	slope := func(key, means string, value measure.Percent) {
		l.Add(figure.Figure{Key: key, Means: means, Value: value, Formula: "rise of the best plane through the readings, over the run", Working: l.Print(value), From: l.nodes})
	}
	slope("ground.slope_along", "slope of the ground along the lines", fall.SlopeX)
	slope("ground.slope_across", "slope of the ground across the lines", fall.SlopeY)
	word := "no"
	if fall.WaterGathers {
		word = "yes"
	}
	l.Word("ground.water_gathers", "whether the lowest ground lies under the platform", word, l.nodes)
}

func (l *ledger) humps(g *Ground, f *frame.Frame) {
	var worst Hump
	for _, h := range g.Humps(f) {
		if h.Lower > worst.Lower {
			worst = h
		}
	}
	if worst.Lower == 0 {
		l.Blank("hump.under", "where ground stands too near the frame", "hump.lower", "how much to take off it")
		return
	}
	l.Word("hump.under", "where ground stands too near the frame", worst.Under, []string{"frame.clear", "post_tops.height"})
	l.Add(figure.Figure{Key: "hump.lower", Means: "how much to take off the ground under " + worst.Under, Value: worst.Lower, Rounding: measure.Up,
		Formula: "clearance − gap", Working: l.Sum(worst.Lower, figure.Plus(g.terms.Clear), figure.Minus(worst.Gap)), From: []string{"frame.clear", "post_tops.height"}})
}

func (l *ledger) taped(g *Ground, f *frame.Frame) {
	var worst TapedLine
	for _, line := range g.TapedLines(f) {
		if line.TooLong > worst.TooLong {
			worst = line
		}
	}
	if worst.From == "" {
		l.Blank("tape.too_long", "how much a tape on the ground reads too long")
		return
	}
	l.Add(figure.Figure{Key: "tape.too_long", Means: fmt.Sprintf("how much a tape on the ground reads too long from %s to %s", worst.From, worst.To), Value: worst.TooLong, Rounding: measure.Up,
		Formula: "√(level² + rise²) − level", Working: fmt.Sprintf("level %s, rise %s: %s", l.Print(worst.Level), l.Print(worst.Rise), l.Up(worst.TooLong)),
		From: []string{groundKey(worst.From), groundKey(worst.To)}})
}

func (l *ledger) odds(g *Ground) {
	o := g.Odds(l.job)
	if o == nil {
		l.Blank("stone.even", "stone to order at even odds", "stone.nine_in_ten", "stone that is enough nine times in ten", "stone.enough", "chance that the stone ordered is enough",
			"stone.one_more_saves", "what one more probe may take off the stone that is enough nine times in ten")
		l.unforeseen(g)
		return
	}
	order := func(key, means string, at StoneOrder) {
		l.Add(figure.Figure{Key: key, Means: means, Value: at.Order, Rounding: measure.Up,
			Formula: "(Σ probed beds + m × mean + t × s × √(m + m²/n)) × side² + beside the blocks, loose, with waste, in sold units",
			Working: fmt.Sprintf("n = %d probed, m = %d not, mean %s, s %s: %s, enough %s of the time", o.Probed, o.Unknown, l.Print(o.Mean), l.Print(o.Scatter), l.Print(at.Order), l.Print(at.Chance)),
			Source:  "prediction of a sum by Student's t; Montgomery and Runger, Applied Statistics and Probability for Engineers, 3rd ed. (2003)", From: []string{"hole.side", "stone.waste", "stone.sold_by"}})
	}
	order("stone.even", "stone to order at even odds", o.Even)
	order("stone.nine_in_ten", "stone that is enough nine times in ten", o.NineInTen)
	l.Add(figure.Figure{Key: "stone.enough", Means: "chance that the stone ordered is enough", Value: o.Enough, Formula: "Student's t at the order",
		Working: l.Print(o.Enough), From: []string{"stone.order", "stone.nine_in_ten"}})
	l.Add(figure.Figure{Key: "stone.one_more_saves", Means: "what one more probe may take off the stone that is enough nine times in ten, when it finds the mean", Value: o.OneMoreSaves,
		Formula: "the same for n + 1 probes and m − 1 beds to foresee", Working: l.Print(o.OneMoreSaves), From: []string{"stone.nine_in_ten"}})
	l.unforeseen(g)
}

// unforeseen counts the beds of which the order knows only the least: where too
// few probes differ to say what the others may take.
func (l *ledger) unforeseen(g *Ground) {
	const means = "beds that the order takes at their least, since too few probes differ to foresee them"
	if g.Stone == nil {
		l.Blank("stone.unforeseen", means)
		return
	}
	count := 0
	if g.Odds(l.job) == nil {
		_, _, count, _ = g.beds()
	}
	l.Add(figure.Figure{Key: "stone.unforeseen", Means: means, Value: measure.Count(count), Formula: "piers without a probe, unless two probes or more differ", Working: measure.Counted(count, "bed"),
		From: []string{"stone.order"}})
}
