package heights

import (
	"fmt"

	"pierbook/calc/measure"
)

// Sentence says what clashes, and by how much.
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
	return what
}
