package cutting

import "pierbook/calc/measure"

// Proof is how good a plan is by one goal.
type Proof struct {
	Goal        Goal
	Value       int64 // cost as in [Result], sticks, nanometres of offcut, or patterns
	Bound       int64 // no plan is better than this by the goal
	Proven      bool  // value and bound meet
	Reached     Reached
	Nodes       int          // relaxations solved, large ones counted as several
	Certificate *Certificate // of the least cost, where one was worked out
}

// Reached is the way in which a bound was reached.
type Reached int

// The ways to a bound.
const (
	ByDuals        Reached = iota + 1 // duals in whole numbers, to be checked by hand
	ByClosedSearch                    // every branch of the search was closed
	ByCount                           // nothing less is possible at all
)

// Certificate proves a bound on the cost without trust in the search. Each
// length of piece has a value in whole numbers. No stick can yield pieces worth
// more than its price times the scale, so that all the pieces wanted, by their
// values, cannot cost less than
//
//	Bound = ⌈(Σ value · count − Σ what sticks on hand can yield) / Scale⌉ · Coin
type Certificate struct {
	Bound  int64
	Scale  int64
	Coin   int64 // hundredths, or nanometres bought, to which all prices are whole
	Values []Value
}

// Value is what a piece of a length is worth in a [Certificate].
type Value struct {
	Length measure.Length
	Worth  int64
}

// Gap returns by how much of the value the bound falls short of it.
func (p Proof) Gap() float64 {
	if p.Value == p.Bound {
		return 0
	}
	return float64(max(p.Value-p.Bound, p.Bound-p.Value)) / float64(max(p.Value, 1))
}
