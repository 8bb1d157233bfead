package heights

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// clash adds what stands in the way of any floor; all its keys are blank when
// nothing does.
func (l *ledger) clash(h *Heights) {
	c := h.Clash
	if c == nil {
		l.Blank("clash.kind", "what clashes", "clash.high", "the pier that keeps the floor up", "clash.low", "the pier that keeps the floor down", "clash.amount", "by how much they miss each other")
		return
	}
	l.Word("clash.kind", "what clashes", string(c.Kind), nil)
	l.Word("clash.high", "the pier that keeps the floor up", c.High.Name, h.demandKeys(c.High))
	l.Word("clash.low", "the pier that keeps the floor down", c.Low.Name, []string{terrain.LevelKey(c.Low.Name)})
	l.Add(figure.Figure{Key: "clash.amount", Means: "by how much they miss each other", Value: c.Amount, Rounding: measure.Up,
		Formula: "lowest floor at the one − highest floor at the other, or what the floor tried misses of either", Working: l.clashWorking(c),
		From: []string{terrain.LevelKey(c.High.Name), terrain.LevelKey(c.Low.Name)}})
}

// clashWorking prints how far the two miss each other, or a floor either of them.
func (l *ledger) clashWorking(c *Clash) string {
	switch c.Kind {
	case TwoPiers:
		return l.Sum(c.Amount, figure.Plus(c.High.Floor), figure.Minus(c.Low.Floor))
	case TooLow:
		return l.Sum(c.Amount, figure.Plus(c.High.Floor), figure.Minus(c.Wanted))
	case TooHigh, RoundingUp:
		return l.Sum(c.Amount, figure.Plus(c.Wanted), figure.Minus(c.Low.Floor))
	}
	return fmt.Sprintf("%s against %s at %s: %s", c.High.Limit, c.Low.Limit, c.High.Name, l.Up(c.Amount))
}
