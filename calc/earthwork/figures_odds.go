package earthwork

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

func (l *ledger) odds(e *Earthwork) {
	o := e.Odds
	if o == nil {
		l.Blank("stone.even", "stone to order at even odds", "stone.nine_in_ten", "stone that is enough nine times in ten", "stone.enough", "chance that the stone ordered is enough",
			"stone.one_more_saves", "what one more probe may take off the stone that is enough nine times in ten")
		l.unforeseen(e)
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
	l.unforeseen(e)
}

// unforeseen counts the beds of which the order knows only the least: where too
// few probes differ to say what the others may take.
func (l *ledger) unforeseen(e *Earthwork) {
	const means = "beds that the order takes at their least, since too few probes differ to foresee them"
	if e.Stone == nil {
		l.Blank("stone.unforeseen", means)
		return
	}
	l.Add(figure.Figure{Key: "stone.unforeseen", Means: means, Value: measure.Count(e.unforeseen),
		Formula: "piers without a probe, unless two probes or more differ", Working: measure.Counted(e.unforeseen, "bed"),
		From: []string{"stone.order"}})
}
