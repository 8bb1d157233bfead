package heights

import (
	"fmt"
	"strings"

	"pierbook/calc/measure"
)

// Sentence says what clashes, by how much, and what would free it.
func (c *Clash) Sentence(style measure.Style) string {
	amount := c.Amount.Print(style)
	var what string
	switch c.Kind {
	case OnePier:
		what = fmt.Sprintf("the limits of pier %s (%s against %s) contradict each other by %s", c.High.Name, c.High.Limit, c.Low.Limit, amount)
	case TooLow:
		what = fmt.Sprintf("the floor given is %s too low: pier %s (%s) needs it higher", amount, c.High.Name, c.High.Limit)
	case TooHigh:
		what = fmt.Sprintf("the floor given is %s too high: pier %s (%s) cannot reach it", amount, c.Low.Name, c.Low.Limit)
	case RoundingUp:
		what = fmt.Sprintf("rounding the floor up overshoots pier %s by %s", c.Low.Name, amount)
	default:
		what = fmt.Sprintf("piers %s (%s) and %s (%s) clash by %s", c.High.Name, c.High.Limit, c.Low.Name, c.Low.Limit, amount)
	}
	if len(c.Ways) == 0 {
		return what + ". No single change frees them: probe again beside it, move the pier or the plan, or ask an engineer."
	}
	ways := make([]string, len(c.Ways))
	for i, w := range c.Ways {
		ways[i] = fmt.Sprintf("%s from %s to %s (%s)", w.Means, w.From.Print(style), w.To.Print(style), w.Path)
	}
	if len(ways) == 1 {
		return what + ". This alone frees it: " + ways[0] + "."
	}
	return what + ". Any one of these frees it: " + strings.Join(ways, "; ") + "."
}
