package yard

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/cutting"
	"pierbook/calc/frame"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Cut is the cutting plan of one section.
type Cut struct {
	Section  job.Section
	Uses     []string // "joists", "rims": what its pieces are for
	Pieces   []cutting.Piece
	Result   *cutting.Result // nil before the plan is made, and when Trouble says why none can be
	Trouble  string          // ready to print
	Estimate bool            // posts are not known yet: every one is taken at its longest

	// Allowance is the length of post bought beyond what is planned, because posts on
	// estimated ground may come out longer: enough nine times in ten.
	Allowance   measure.Length
	longestPost measure.Length
	came        int64                             // what the sticks of the plan cost that have come
	anew        bool                              // what has come is in hand, not of the plan
	proofPieces []cutting.Piece                   // that the proof speaks of, with the allowance in them; nil when Pieces
	prices      map[measure.Length]*measure.Money // of the stock lengths
}

// Plan makes the cutting plan of every section, in the order joists, rims, beams,
// posts. The posts are planned with the allowance for estimated ground.
func Plan(j *job.Job, f *frame.Frame, g *heights.Heights) []Cut {
	cuts := List(j, f, g)
	more := postAllowance(j, g)
	for i := range cuts {
		c := &cuts[i]
		c.plan(j, more)
		if c.receive(j) {
			c.anew = true
			c.plan(j, more)
		}
	}
	return cuts
}

func (c *Cut) plan(j *job.Job, more map[string]measure.Length) {
	c.proofPieces, c.Allowance = nil, 0
	c.solve(j)
	if slices.Contains(c.Uses, posts) {
		c.reserve(j, more)
	}
}

func (c *Cut) solve(j *job.Job) {
	result, err := cutting.Plan(c.Problem(j))
	if err != nil {
		c.Trouble = fmt.Sprintf("no cutting plan for %s: %s", c.Section.Size, troubleWords(err, j.Style()))
		return
	}
	c.Result = &result
}

// troubleWords says why no plan can be made.
func troubleWords(err error, style measure.Style) string {
	var long *cutting.TooLongError
	var short *cutting.ShortError
	switch {
	case errors.As(err, &long):
		return fmt.Sprintf("a piece of %s is longer than every stick that is sold or in hand", long.Piece.Print(style))
	case errors.Is(err, cutting.ErrTooLittle):
		return "the sticks in hand do not yield all the pieces, and none are sold"
	case errors.As(err, &short):
		return "the yard has too few sticks: " + shortWords(short.More, style) + " would do"
	case errors.Is(err, cutting.ErrNotFound):
		return "the yard has so few sticks that no way to cut all the pieces was found"
	default:
		return err.Error()
	}
}

// shortWords says which sticks the yard would have to have more of.
func shortWords(more []cutting.Shortage, style measure.Style) string {
	var parts []string
	for i, m := range more {
		words := fmt.Sprintf("%d more of %s", m.Sticks, m.Length.Print(style))
		if i > 0 {
			words = fmt.Sprintf("%d of %s", m.Sticks, m.Length.Print(style))
		}
		parts = append(parts, words)
	}
	return strings.Join(parts, " and ")
}

// Problem returns the cutting of this section from what the yard sells and what
// is in hand, and notes the prices for [Cut.Bought].
func (c *Cut) Problem(j *job.Job) cutting.Problem {
	c.prices = map[measure.Length]*measure.Money{}
	problem := cutting.Problem{Pieces: c.Pieces, Kerf: j.Yard.Kerf, Trim: j.Yard.EndTrim}
	for _, s := range j.Yard.Stock[c.Section.Size] {
		stock := cutting.Stock{Length: s.Length, Sticks: s.Sticks}
		c.prices[s.Length] = s.Price
		if s.Price != nil {
			stock.Price, stock.Priced = int64(*s.Price*100+0.5), true
		}
		problem.Stock = append(problem.Stock, stock)
	}
	for i, length := range c.inHand(j) {
		problem.OnHand = append(problem.OnHand, cutting.Stick{Length: length, Count: 1, Name: fmt.Sprintf("%s in hand, %d", c.Section.Size, i+1)})
	}
	return problem
}

// inHand returns the sticks and offcuts that need not be bought, in the order
// given. Those counted on site are what there is now, and stand in the place of
// those that the yard's file names and of what was left of a delivery.
func (c *Cut) inHand(j *job.Job) []measure.Length {
	if counted, ok := j.Measured.Stock[c.Section.Size]; ok {
		return counted
	}
	hand := j.Yard.OnHand[c.Section.Size]
	if c.anew || c.begun(j) {
		hand = append(slices.Clone(hand), c.leftOf(j)...)
	}
	return hand
}
