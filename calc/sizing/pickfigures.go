package sizing

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Figures returns what a search chose, what came next, and why nothing cheaper
// does.
func (p *Picked) Figures() []figure.Figure {
	style := p.Job.Style()
	computed := func(key, means string, value measure.Quantity, formula, working string, from ...string) figure.Figure {
		return figure.Figure{Key: "pick." + key, Means: means, Value: value, Origin: figure.Computed, Formula: formula, Working: working, From: from}
	}
	figures := []figure.Figure{
		computed("chosen", "the cheapest frame that passes every check", measure.Word(p.Chosen.Name(style)), "least cost of all frames within the bounds that pass", p.Proof, p.Open...),
		computed("cost", "cost of its timber and piers", measure.Word(p.Chosen.Cost.Print(style)), "cheapest stick by length · length + piers", p.Chosen.Cost.Print(style), "pick.chosen"),
		computed("worst", "greatest ratio of the frame chosen", p.Chosen.Worst, "greatest of its checks", p.Chosen.Governs+": "+p.Chosen.Worst.Print(style), "pick.chosen"),
		computed("considered", "frames within the bounds", measure.Count(p.Considered), "sizes × spacings × beams × lines × piers", fmt.Sprint(p.Considered)),
		computed("worked", "frames worked through in full", measure.Count(p.Checked), "the rest cost more, or a necessary condition rules them out", fmt.Sprint(p.Checked)),
	}
	for i, r := range p.RunnersUp {
		figures = append(figures, computed(fmt.Sprintf("runner_up.%d", i+1), "runner-up in cost", measure.Word(r.Name(style)), "next least cost that passes", p.Decides[i], "pick.chosen"))
	}
	return figures
}
