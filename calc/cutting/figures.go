package cutting

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Figures returns the figures of one plan under cut.NAME, where name is the
// use of the sticks in lower case: "joists", "posts", "beams".
func (r *Result) Figures(name string) []figure.Figure {
	key := func(last string) string { return "cut." + name + "." + last }
	figures := []figure.Figure{
		{Key: key("sticks"), Means: "sticks of " + name + " to cut", Value: measure.Count(len(r.Sticks)), Origin: figure.Computed, Formula: "bought + on hand"},
		{Key: key("bought"), Means: "sticks of " + name + " to buy", Value: measure.Count(r.Bought), Origin: figure.Computed, Formula: "fewest at the least cost"},
		{Key: key("patterns"), Means: "ways in which sticks of " + name + " are cut", Value: measure.Count(r.Patterns), Origin: figure.Computed, Formula: "sticks cut alike count once"},
		{Key: key("offcut"), Means: "longest offcut of the " + name, Value: r.Offcut, Rounding: measure.Down, Origin: figure.Computed,
			Formula: "stick − Σ (piece + kerf)", From: []string{key("sticks")}},
		{Key: key("used"), Means: "share of the sticks of " + name + " that goes into pieces", Value: r.UsedShare(), Origin: figure.Computed,
			Formula: "Σ pieces ÷ Σ sticks", From: []string{key("sticks")}},
		{Key: key("cost"), Means: r.costMeans(name), Value: r.amount(r.Cost), Rounding: measure.Up, Origin: figure.Computed,
			Formula: "Σ price of the sticks bought", Working: r.costWorking(), From: []string{key("bought")}},
	}
	if len(r.Proofs) > 0 {
		p := r.Proofs[0]
		figures = append(figures,
			figure.Figure{Key: key("bound"), Means: "no plan for the " + name + " costs less than this", Value: r.amount(p.Bound), Rounding: measure.Down, Origin: figure.Computed,
				Source: p.Reached.String(), Formula: "bound ≤ cost of every plan", From: []string{key("cost")}},
			figure.Figure{Key: key("proof"), Means: "how good the plan for the " + name + " is", Value: measure.Word(p.Verdict()), Origin: figure.Computed,
				Source: p.Reached.String(), Formula: "proven best where cost = bound", From: []string{key("cost"), key("bound")}})
	}
	return figures
}

func (r *Result) costMeans(name string) string {
	if r.ByLength {
		return "length of " + name + " to buy"
	}
	return "cost of the " + name
}

// amount returns a cost as money, or as a length where prices are unknown.
func (r *Result) amount(cost int64) measure.Quantity {
	if r.ByLength {
		return measure.Length(cost)
	}
	return measure.Money(float64(cost) / 100)
}

func (r *Result) costWorking() string {
	working := ""
	for i, p := range r.Purchases() {
		if i > 0 {
			working += " + "
		}
		if r.ByLength {
			working += fmt.Sprintf("%d × %.3f m", p.Count, p.Length.Metres())
		} else {
			working += fmt.Sprintf("%d × %.2f", p.Count, float64(p.Price)/100)
		}
	}
	return working
}

// Verdict says in words how good the value of an aim is.
func (p Proof) Verdict() string {
	if p.Proven {
		return "proven best"
	}
	return fmt.Sprintf("within %.1f %% of the bound", p.Gap()*100)
}

// Gap returns by how much of the value the bound falls short of it.
func (p Proof) Gap() float64 {
	if p.Value == p.Bound {
		return 0
	}
	return float64(max(p.Value-p.Bound, p.Bound-p.Value)) / float64(max(p.Value, 1))
}

// String says how a bound was reached.
func (r Reached) String() string {
	switch r {
	case ByDuals:
		return "a value in whole numbers for each length of piece, which no stick can pass"
	case ByClosedSearch:
		return "a search of all plans that could be better, closed"
	case ByCount:
		return "nothing less is possible"
	default:
		return "no bound"
	}
}
