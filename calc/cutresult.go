package calc

import (
	"fmt"
	"strings"

	"pierbook/calc/cutting"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Use says what the pieces are for: "joists, rims".
func (c Cut) Use() string { return strings.Join(c.Uses, ", ") }

// purchase is so many sticks of one length.
type purchase struct {
	Length measure.Length
	Count  int
	Price  *measure.Money
}

// bought counts the sticks to buy by length, in the order of the plan.
func (c Cut) bought() []purchase {
	plan := c.Result
	if c.Reserve != nil {
		plan = c.Reserve
	}
	if plan == nil {
		return nil
	}
	var list []purchase
	index := map[measure.Length]int{}
	for _, s := range plan.Sticks {
		if !s.Bought {
			continue
		}
		i, seen := index[s.Length]
		if !seen {
			i = len(list)
			index[s.Length] = i
			list = append(list, purchase{Length: s.Length, Price: c.prices[s.Length]})
		}
		list[i].Count++
	}
	return list
}

// StickName names a stick as it is written on it and on the sheet.
func (c Cut) StickName(s cutting.CutStick) string {
	if s.Name != "" {
		return s.Name
	}
	return fmt.Sprintf("%s no. %d", c.Section.Size, s.Number)
}

// Alike returns the sticks of the plan in groups that are cut alike and follow
// one another; sticks on hand, which have names, stand alone.
func (c Cut) Alike() [][]cutting.CutStick {
	if c.Result == nil {
		return nil
	}
	var groups [][]cutting.CutStick
	for _, s := range c.Result.Sticks {
		if n := len(groups); n > 0 && s.Name == "" {
			if before := groups[n-1][0]; before.Name == "" && before.Pattern == s.Pattern && before.Length == s.Length {
				groups[n-1] = append(groups[n-1], s)
				continue
			}
		}
		groups = append(groups, []cutting.CutStick{s})
	}
	return groups
}

// StickNames names sticks that are cut alike: "2x8 no. 3 to 15".
func (c Cut) StickNames(like []cutting.CutStick) string {
	name := c.StickName(like[0])
	if len(like) > 1 {
		name += fmt.Sprintf(" to %d", like[len(like)-1].Number)
	}
	return name
}

// Proof says in words how good the plan is.
func (c Cut) Proof(style measure.Style) string {
	if c.Result == nil {
		return c.Trouble
	}
	if len(c.Result.Proofs) == 0 {
		return "nothing to cut"
	}
	cost := c.Result.Proofs[0]
	amount := func(v int64) string {
		if c.Result.ByLength {
			return measure.Length(v).Print(style)
		}
		return measure.Money(float64(v) / 100).Print(style)
	}
	words := fmt.Sprintf("%d sticks to buy, %s", c.Result.Bought, amount(cost.Value))
	switch {
	case c.Result.Bought == 0:
		return "nothing to buy: the sticks in hand yield every piece"
	case c.Result.Bought < len(c.Result.Sticks):
		words = fmt.Sprintf("%d of the sticks are in hand; still to buy: %d, %s", len(c.Result.Sticks)-c.Result.Bought, c.Result.Bought, amount(cost.Value))
	case c.Result.Bought == 1:
		words = "one stick to buy, " + amount(cost.Value)
	}
	if !cost.Proven {
		return words + fmt.Sprintf("; not proven best: no plan costs less than %s", amount(cost.Bound))
	}
	switch cost.Reached {
	case cutting.ByDuals:
		return words + "; proven best by a price for each length that no stick can beat"
	case cutting.ByClosedSearch:
		return words + "; proven best: every other way of cutting was ruled out"
	default:
		return words + "; proven best: no fewer sticks hold the length"
	}
}

func (p *Plan) cutFigures() []figure.Figure {
	var figures []figure.Figure
	for _, c := range p.Cuts {
		key := "cut." + c.Section.Size
		sticks := figure.Figure{Key: key + ".sticks", Means: "sticks of " + c.Section.Size + " to buy", Origin: figure.Computed, Formula: "least cost, proven", Working: c.Proof(p.Style)}
		offcut := figure.Figure{Key: key + ".offcut", Means: "longest offcut of " + c.Section.Size, Rounding: measure.Down, Origin: figure.Computed, Formula: "longest single offcut among the cheapest plans"}
		if c.Result != nil {
			sticks.Value, offcut.Value = measure.Count(c.Result.Bought), c.Result.Offcut
		}
		figures = append(figures, sticks, offcut)
	}
	return figures
}
