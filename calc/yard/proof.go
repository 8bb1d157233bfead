package yard

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/cutting"
	"pierbook/calc/measure"
)

// Amount prints a cost of the cutting plan: money, or the length bought where a
// price is not known.
func (c Cut) Amount(v int64, style measure.Style) string {
	if c.Result.ByLength {
		return measure.Length(v).Print(style)
	}
	return measure.Money(float64(v) / 100).Print(style)
}

// Gap returns how far the plan may be from the best by cost: 0 when proven.
func (c Cut) Gap() int64 {
	if c.Result == nil || len(c.Result.Proofs) == 0 || c.Result.Proofs[0].Proven {
		return 0
	}
	cost := c.Result.Proofs[0]
	return cost.Value - cost.Bound
}

// Proof says in words what is bought and how good the plan is.
func (c Cut) Proof(style measure.Style) string {
	switch {
	case c.Result == nil:
		return c.Trouble
	case len(c.Result.Proofs) == 0:
		return "nothing to cut"
	case c.Result.Bought == 0:
		return "nothing to buy: the sticks in hand yield every piece"
	}
	return c.purchaseWords(style) + "; " + c.ProofOfCost(style)
}

func (c Cut) purchaseWords(style measure.Style) string {
	amount := c.Amount(c.Result.Cost, style)
	switch {
	case c.Result.Bought < len(c.Result.Sticks):
		return fmt.Sprintf("%d of the sticks are in hand; still to buy: %d, %s", len(c.Result.Sticks)-c.Result.Bought, c.Result.Bought, amount)
	case c.Result.Bought == 1:
		return "one stick to buy, " + amount
	}
	return fmt.Sprintf("%d sticks to buy, %s", c.Result.Bought, amount)
}

// ProofOfCost says how it is known that no plan costs less, or how much less one
// might cost.
func (c Cut) ProofOfCost(style measure.Style) string {
	if c.Result == nil || len(c.Result.Proofs) == 0 {
		return ""
	}
	cost := c.Result.Proofs[0]
	if !cost.Proven {
		return fmt.Sprintf("not proven best within the limit of the search: no plan costs less than %s, so at most %s (%.1f %%) could be saved", c.Amount(cost.Bound, style), c.Amount(c.Gap(), style), 100*cost.Gap())
	}
	switch cost.Reached {
	case cutting.ByDuals:
		return "proven best by a value for each length that no stick can beat"
	case cutting.ByClosedSearch:
		return "best by a search that ruled out every other way of cutting, which rests on the program" + c.sure(style)
	default:
		return "proven best: no fewer sticks hold the length"
	}
}

// sure says what the values of the lengths prove by themselves where a search had
// to do the rest.
func (c Cut) sure(style measure.Style) string {
	certificate := c.Result.Proofs[0].Certificate
	if certificate == nil || certificate.Bound <= 0 {
		return ""
	}
	return "; a value for each length proves by itself that no plan costs less than " + c.Amount(certificate.Bound, style)
}

// goalWords names the goals after the cost.
var goalWords = map[cutting.Goal]string{cutting.FewestSticks: "fewest sticks", cutting.LongestOffcut: "longest single offcut", cutting.FewestPatterns: "fewest ways of cutting"}

// LesserGoals says which of the goals after the cost are proven too.
func (c Cut) LesserGoals() string {
	if c.Result == nil {
		return ""
	}
	var proven, open []string
	for _, p := range c.Result.Proofs {
		if words := goalWords[p.Goal]; words != "" && p.Proven {
			proven = append(proven, words)
		} else if words != "" {
			open = append(open, words)
		}
	}
	var parts []string
	if len(proven) > 0 {
		parts = append(parts, "proven: "+strings.Join(proven, ", "))
	}
	if len(open) > 0 {
		parts = append(parts, "not proven: "+strings.Join(open, ", "))
	}
	return strings.Join(parts, "; ")
}

// mostValues is how many lengths a proof by hand may have on paper.
const mostValues = 8

// ByHand returns the proof of the cost as a sum that can be followed by hand, or
// "" where there is none or it would be too long.
//
//	cost ≥ Σ count × value − what the sticks in hand yield, no stick yielding more than its price
func (c Cut) ByHand(style measure.Style) string {
	if c.Result == nil || len(c.Result.Proofs) == 0 || c.Result.Proofs[0].Certificate == nil || !c.Result.Proofs[0].Proven {
		return ""
	}
	certificate := c.Result.Proofs[0].Certificate
	counts := map[measure.Length]int{}
	pieces := c.Pieces
	if c.proofPieces != nil {
		pieces = c.proofPieces
	}
	for _, p := range pieces {
		counts[p.Length] += p.Count
	}
	var parts []string
	for _, v := range certificate.Values {
		if v.Worth == 0 {
			continue
		}
		parts = append(parts, fmt.Sprintf("%d × %s (%s each)", counts[v.Length], c.worth(v.Worth, certificate, style), v.Length.Print(style)))
	}
	if len(parts) == 0 || len(parts) > mostValues {
		return ""
	}
	words := strings.Join(parts, " + ") + ", and no stick yields pieces worth more than its price"
	if slices.ContainsFunc(c.Result.Sticks, func(s cutting.CutStick) bool { return s.Name != "" }) {
		words += "; less what the sticks in hand yield"
	}
	words += ": together not under " + c.Amount(certificate.Bound, style)
	if c.came > 0 {
		words += "; less " + c.Amount(c.came, style) + " for what has come"
	}
	return words
}

// worth prints the value of a piece to a tenth of a hundredth, or as a length.
func (c Cut) worth(worth int64, of *cutting.Certificate, style measure.Style) string {
	value := float64(worth) / float64(of.Scale) * float64(of.Coin)
	if c.Result.ByLength {
		return measure.Length(value).Print(style)
	}
	return fmt.Sprintf("%s%.3f", style.Currency, value/100)
}
