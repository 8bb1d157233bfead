package yard

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Figures are what the cut sheet says of each section.
func Figures(cuts []Cut, j *job.Job, g *heights.Heights) []figure.Figure {
	var figures []figure.Figure
	style := j.Style()
	for _, c := range cuts {
		key := "cut." + c.Section.Size
		sticks := figure.Figure{Key: key + ".sticks", Means: "sticks of " + c.Section.Size + " to buy", Origin: figure.Computed,
			Formula: "least cost, then fewest sticks, the longest single offcut, the fewest ways of cutting", Working: c.Proof(style), From: []string{"yard.kerf", "yard.end_trim"}}
		offcut := figure.Figure{Key: key + ".offcut", Means: "longest offcut of " + c.Section.Size, Rounding: measure.Down, Origin: figure.Computed,
			Formula: "longest single offcut among the cheapest plans", From: []string{key + ".sticks"}}
		bound := figure.Figure{Key: key + ".bound", Means: "no plan for " + c.Section.Size + " costs less than", Origin: figure.Computed,
			Formula: "Σ count × value of a length, no stick yielding more than its price", Working: c.ByHand(style)}
		used := figure.Figure{Key: key + ".used", Means: "share of the " + c.Section.Size + " taken that goes into pieces", Origin: figure.Computed,
			Formula: "Σ pieces / Σ sticks taken", From: []string{key + ".sticks"}}
		if c.Result != nil {
			sticks.Value, offcut.Value, used.Value = measure.Count(c.Result.Bought), c.Result.Offcut, c.Result.UsedShare()
			if len(c.Result.Proofs) > 0 {
				bound.Value = measure.Word(c.Amount(max(0, c.Result.Proofs[0].Bound-c.came), style))
			}
		}
		figures = append(figures, sticks, offcut, bound, used)
		if c.Allowance > 0 {
			working, from := allowanceWorking(j, g)
			figures = append(figures, figure.Figure{Key: key + ".allowance", Means: "more " + c.Section.Size + " post in all, so that the order is enough nine times in ten",
				Value: c.Allowance, Rounding: measure.Up, Origin: figure.Computed, Working: working, From: from,
				Formula: fmt.Sprintf("%.4f", trade.OftenDeviate) + " × √(Σ standard error²) over the estimated piers, the errors taken as independent; no post taken past the longest allowed", Source: "0.9 quantile of the normal distribution"})
		}
	}
	return figures
}
