package cutting

import (
	"errors"
	"fmt"
	"strings"

	"pierbook/calc/measure"
)

// ShortError is the error when the yard has too few sticks: with so many more of
// each length all pieces could be cut.
type ShortError struct{ More []Shortage }

// Shortage is how many more sticks of a length are wanted.
type Shortage struct {
	Length measure.Length
	Sticks int
}

func (e *ShortError) Error() string {
	var parts []string
	for _, m := range e.More {
		parts = append(parts, fmt.Sprintf("%d of %d nm", m.Sticks, m.Length))
	}
	return "cutting: too few sticks: wanted are " + strings.Join(parts, ", ") + " more"
}

// shortBudget is the limit of the search for what is short: any plan will do to
// say it.
const shortBudget = DefaultBudget / 20

// whatIsShort tells what the yard would have to have more of, where that is why
// there is no plan: the sticks that it has are counted as on hand, and the least
// length of more is sought.
func (p *Problem) whatIsShort(why error) error {
	more := Problem{Pieces: p.Pieces, OnHand: p.OnHand, Kerf: p.Kerf, Trim: p.Trim, Goals: LeastCost, Budget: shortBudget}
	limited := map[measure.Length]bool{}
	for _, s := range p.Stock {
		more.Stock = append(more.Stock, Stock{Length: s.Length})
		if s.Sticks > 0 {
			limited[s.Length] = true
			more.OnHand = append(more.OnHand, Stick{Length: s.Length, Count: s.Sticks})
		}
	}
	if len(limited) == 0 {
		return why
	}
	r, err := Plan(more)
	if err != nil {
		return errors.Join(why, err)
	}
	short := &ShortError{}
	for _, b := range r.Purchases() {
		if limited[b.Length] {
			short.More = append(short.More, Shortage{Length: b.Length, Sticks: b.Count})
		}
	}
	if len(short.More) == 0 {
		return why
	}
	return short
}
