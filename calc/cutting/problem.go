package cutting

import (
	"fmt"

	"pierbook/calc/measure"
)

// Problem is one section to cut: the pieces wanted from one section and
// the sticks they may come from.
type Problem struct {
	Pieces []Piece
	Stock  []Stock
	OnHand []Stick
	Kerf   measure.Length // width of the saw cut
	Trim   measure.Length // cut off one end of every stick before anything else, 0 for none
	Goals  Goal           // how far down the order of goals to go; 0 means all of them
	Budget int64          // limit of all the work, in steps of about a nanosecond; 0 means [DefaultBudget]
}

// Piece is a length wanted so many times.
type Piece struct {
	Length measure.Length
	Count  int
	Names  []string // one for each piece, or none: "J7", "post B3"
}

// Stock is a length that can be bought.
type Stock struct {
	Length measure.Length
	Price  int64 // of one stick, in hundredths of the currency; without meaning unless Priced
	Priced bool
	Sticks int // how many the yard has, 0 for any number
}

// Stick is lumber on hand: an offcut, or a stick left over. It costs nothing.
type Stick struct {
	Length measure.Length
	Count  int
	Name   string // what is written on it, or empty
}

// Goal is one of the goals of a plan, in the order in which they rule: each is
// sought among the plans that are best by all the goals before it.
type Goal int

// The goals.
const (
	LeastCost Goal = iota + 1
	FewestSticks
	LongestOffcut
	FewestPatterns
)

// DefaultBudget is the limit of the work when none is given: some five seconds.
const DefaultBudget = 4_000_000_000

// check reports the first thing that makes the problem one that no plan can
// solve.
func (p *Problem) check() error {
	if p.Kerf < 0 || p.Trim < 0 {
		return fmt.Errorf("cutting: kerf %d nm and trim %d nm must not be below zero", p.Kerf, p.Trim)
	}
	for _, s := range p.Stock {
		if s.Length <= 0 || s.Price < 0 || s.Sticks < 0 {
			return fmt.Errorf("cutting: %d sticks of a stock length of %d nm at a price of %d", s.Sticks, s.Length, s.Price)
		}
	}
	for _, s := range p.OnHand {
		if s.Length <= 0 || s.Count < 0 {
			return fmt.Errorf("cutting: %d sticks on hand of %d nm", s.Count, s.Length)
		}
	}
	for _, piece := range p.Pieces {
		if piece.Length <= 0 || piece.Count < 0 || len(piece.Names) > piece.Count {
			return fmt.Errorf("cutting: %d pieces of %d nm with %d names", piece.Count, piece.Length, len(piece.Names))
		}
	}
	return nil
}

// usable returns what a stick measures once its end is trimmed.
func (p *Problem) usable(length measure.Length) measure.Length {
	if p.Trim == 0 {
		return length
	}
	return length - p.Trim - p.Kerf
}

// priced is false when the price of one stock length is unknown: then cost
// is counted as the length bought.
func (p *Problem) priced() bool {
	for _, s := range p.Stock {
		if !s.Priced {
			return false
		}
	}
	return true
}
