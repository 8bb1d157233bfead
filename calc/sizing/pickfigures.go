package sizing

import (
	"fmt"
	"strconv"

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
		computed("worked", "frames worked through in full", measure.Count(p.Checked), "the rest cost more, or stand on a floor or beam that failed", fmt.Sprint(p.Checked)),
	}
	for i, r := range p.RunnersUp {
		figures = append(figures, computed(fmt.Sprintf("runner_up.%d", i+1), "runner-up in cost", measure.Word(r.Name(style)), "next least cost that passes", p.Decides[i], "pick.chosen"))
	}
	return figures
}

// Set returns the frame that was chosen and the next ones, none when the job left
// no size open.
func (p *Picked) Set() figure.Set {
	set := figure.Set{Name: "frames", Key: "pick.frame", Fields: []figure.Field{
		{Key: "piers", Means: "piers of: %", Formula: "lines × piers under each"},
		{Key: "cost", Means: "cost of: %", Formula: "cheapest stick by length · length + piers; its timber where something has no price"},
		{Key: "worst", Means: "greatest ratio of: %", Formula: "greatest of its checks"},
		{Key: "decides", Means: "what decides on: %", Formula: "against the frame chosen"},
	}}
	if p == nil {
		return set
	}
	style := p.Job.Style()
	add := func(i int, c Choice, decides string) {
		var cost measure.Quantity = measure.Word(c.Cost.Timber.Print(style) + " of timber")
		if c.Cost.Priced {
			cost = c.Cost.Money
		}
		set.Row(strconv.Itoa(i), c.Name(style), measure.Count(c.Cost.Piers), cost, c.Worst, measure.Word(decides))
	}
	add(1, p.Chosen, "chosen")
	for i, r := range p.RunnersUp {
		add(i+2, r, p.Decides[i])
	}
	return set
}
