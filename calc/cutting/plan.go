package cutting

import (
	"errors"
	"fmt"

	"pierbook/calc/measure"
)

// Result is a cutting plan and how good it is proven to be.
type Result struct {
	Sticks   []CutStick     // in the order of the saw
	Cost     int64          // hundredths of the currency; nanometres bought when ByLength
	ByLength bool           // a price was unknown, so the cost is the length bought
	Bought   int            // sticks
	Offcut   measure.Length // longest single offcut of the sticks bought
	Patterns int            // different ways in which a stick is cut
	Proofs   []Proof        // one for each goal, in their order
}

// CutStick is one stick and what it yields.
type CutStick struct {
	Number  int            // from 1, as written on the stick and the sheet
	Name    string         // of a stick on hand, or empty
	Length  measure.Length // before it is trimmed
	Bought  bool
	Price   int64 // in hundredths, or the length in nanometres; 0 on hand
	Trim    measure.Length
	Cuts    []Cut
	Left    measure.Length // what remains after the last kerf
	Pattern int            // sticks with one number here are cut alike
}

// Cut is one piece on a stick.
type Cut struct {
	Name   string // or empty
	Length measure.Length
	Mark   measure.Length // from the hook end of the stick to the far end of the piece, every kerf before it counted
}

// Plan returns the plan that is best by the goals of the problem, as far as the
// budget lets it be found and proven. The same problem gives the same
// plan. Cost is the sum of prices; where a price is unknown it is the length
// bought. It is an error when a piece is longer than every stick, a
// [TooLongError], when there are too few sticks of some stock lengths, a
// [ShortError], or when the pieces do not fit the sticks on hand and nothing can
// be bought, [ErrTooLittle].
func Plan(p Problem) (Result, error) {
	if err := p.check(); err != nil {
		return Result{}, err
	}
	m := p.build()
	if len(m.pieces) == 0 {
		return Result{ByLength: !p.priced()}, nil
	}
	if err := p.tooLong(m); err != nil {
		return Result{}, err
	}
	s := &solver{model: m, kerf: int64(p.Kerf) / m.unit, further: p.Goals != LeastCost}
	var err error
	s.share(costShare, func() { err = s.leastCost() })
	if err != nil {
		return Result{}, p.whatIsShort(err)
	}
	part := int64(laterShare)
	if !s.proofs[0].Proven {
		part = openShare // a cheaper plan may yet make all the rest void
	}
	for _, goal := range []struct {
		Goal
		seek func()
	}{{FewestSticks, s.fewestSticks}, {LongestOffcut, s.longestOffcut}, {FewestPatterns, s.fewestPatterns}} {
		if p.Goals == 0 || goal.Goal <= p.Goals {
			s.share(part, goal.seek)
		}
	}
	return p.result(s), nil
}

// Shares of the budget, in hundredths: of the least cost, and of each goal after
// it, when the cost is proven and when it is open, as far as those before left it.
const (
	costShare  = 70
	laterShare = 30
	openShare  = 4
)

// share seeks a goal with its share of the whole budget.
func (s *solver) share(hundredths int64, seek func()) {
	s.within(s.limit/100*hundredths, func() bool { seek(); return true })
}

func (p *Problem) budget() int64 {
	if p.Budget > 0 {
		return p.Budget
	}
	return DefaultBudget
}

// ErrTooLittle is the error when the sticks on hand do not yield all the pieces
// and nothing can be bought.
var ErrTooLittle = errors.New("cutting: the sticks on hand do not yield all the pieces, and nothing can be bought")

// ErrNotFound is the error when the search ended without a plan, and without a
// proof that there is none.
var ErrNotFound = errors.New("cutting: the sticks are so few that no plan was found")

// TooLongError is the error when a piece is longer than every stick, once its
// end is trimmed.
type TooLongError struct{ Piece measure.Length }

func (e *TooLongError) Error() string {
	return fmt.Sprintf("cutting: a piece of %d nm is longer than every stick", e.Piece)
}

// tooLong reports a piece that no stick can yield.
func (p *Problem) tooLong(m *model) error {
	widest := int64(0)
	for _, s := range m.stocks {
		widest = max(widest, s.room)
	}
	if longest := m.pieces[0]; longest.uses > widest {
		return &TooLongError{measure.Length(longest.uses*m.unit) - p.Kerf}
	}
	return nil
}
