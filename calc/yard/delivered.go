package yard

import (
	"slices"

	"pierbook/calc/cutting"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// delivered returns the sticks of this section that have come. Those counted on
// site are all there are, whatever was delivered.
func (c *Cut) delivered(j *job.Job) []measure.Length {
	if _, counted := j.Measured.Stock[c.Section.Size]; counted {
		return nil
	}
	return j.Measured.Delivered[c.Section.Size].Sticks
}

// begun says whether posts of this section were cut, so that what has come is no
// longer whole.
func (c *Cut) begun(j *job.Job) bool {
	return j.Frame.Posts.Section.Size == c.Section.Size && len(j.Measured.PostsCut) > 0
}

// receive takes the sticks that have come off those to buy. As long as they are
// sticks of the plan, and all or a part of them, the plan stays as it was issued;
// others in their place are planned anew, as sticks in hand.
//
// No plan with these sticks costs less than the bound less what they cost: it
// would be a plan under the bound for somebody who bought them.
func (c *Cut) receive(j *job.Job) (again bool) {
	came := map[measure.Length]int{}
	for _, long := range c.delivered(j) {
		came[long]++
	}
	if c.Result == nil || len(came) == 0 || c.begun(j) {
		return false
	}
	bought := map[measure.Length]int{}
	for _, s := range c.Result.Sticks {
		if s.Bought {
			bought[s.Length]++
		}
	}
	if !within(came, bought) && !within(bought, came) {
		return true
	}
	for i := range c.Result.Sticks {
		if s := &c.Result.Sticks[i]; s.Bought && came[s.Length] > 0 {
			came[s.Length]--
			s.Bought = false
			c.Result.Bought--
			c.Result.Cost -= s.Price
			c.came += s.Price
		}
	}
	return false
}

func within(some, all map[measure.Length]int) bool {
	for long, count := range some {
		if count > all[long] {
			return false
		}
	}
	return true
}

// leftOf returns what is left of the sticks that have come after the posts that
// are cut were cut from them with the least waste: whole sticks and offcuts. Only
// a count on site knows better. Nothing is counted on when the sticks do not
// yield the posts.
func (c *Cut) leftOf(j *job.Job) []measure.Length {
	sticks := c.delivered(j)
	if len(sticks) == 0 || !c.begun(j) {
		return sticks
	}
	problem := cutting.Problem{Kerf: j.Yard.Kerf, Trim: j.Yard.EndTrim, Budget: cutting.DefaultBudget / 5}
	for _, long := range j.Measured.PostsCut {
		problem.Pieces = append(problem.Pieces, cutting.Piece{Length: long, Count: 1})
	}
	slices.SortFunc(problem.Pieces, func(a, b cutting.Piece) int { return int(b.Length - a.Length) })
	for _, long := range sticks {
		problem.OnHand = append(problem.OnHand, cutting.Stick{Length: long, Count: 1})
	}
	result, err := cutting.Plan(problem)
	if err != nil {
		return nil
	}
	left := slices.Clone(sticks)
	for _, s := range result.Sticks {
		left = slices.Delete(left, slices.Index(left, s.Length), slices.Index(left, s.Length)+1)
		if s.Left > 0 {
			left = append(left, s.Left)
		}
	}
	return left
}
