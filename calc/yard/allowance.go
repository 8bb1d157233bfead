package yard

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pierbook/calc/cutting"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// postAllowance returns how much longer the posts at estimated piers are taken
// for the order, so that their total is enough nine times in ten.
//
//	total = 1.2816 √(Σ e²)      post i = 1.2816 e² / √(Σ e²)
//
// e is the standard error of the estimated ground; the errors are taken as
// normal and as independent of one another. Posts that are cut or stand on a
// seat that was read have none.
func postAllowance(j *job.Job, g *heights.Heights) map[string]measure.Length {
	more, sum := map[string]measure.Length{}, 0.0
	for _, p := range g.Piers {
		_, cut := j.Measured.PostsCut[p.Name]
		_, seat := j.Measured.Seats[p.Name]
		if p.Hole == nil || p.Level == nil || p.Level.Read || p.Level.Error <= 0 || cut || seat {
			continue
		}
		more[p.Name] = p.Level.Error
		sum += p.Level.Error.Metres() * p.Level.Error.Metres()
	}
	for name, e := range more {
		share := measure.FromMetres(trade.OftenDeviate * e.Metres() * e.Metres() / math.Sqrt(sum))
		more[name] = share.RoundUpTo(j.Mark())
	}
	return more
}

// allowanceWorking returns the sum behind the allowance with its numbers, and the
// figures of the ground that it comes from.
func allowanceWorking(j *job.Job, g *heights.Heights) (working string, from []string) {
	var errors []string
	more := postAllowance(j, g)
	for _, pier := range g.Piers {
		if _, counts := more[pier.Name]; counts {
			errors = append(errors, pier.Level.Error.Print(j.Style())+"²")
			from = append(from, "pier."+pier.Name+".ground")
		}
	}
	return fmt.Sprintf("%.4f", trade.OftenDeviate) + " × √(" + strings.Join(errors, " + ") + "), each share rounded up to the mark", from
}

// reserve plans the posts once more, each longer by its share of the allowance.
// Where that costs more, the sticks of that plan are bought, so that nobody
// drives back to the yard for one post. The cut sheet still shows the posts as
// they are foreseen, cut from these sticks; once the seats are read they are
// planned anew.
func (c *Cut) reserve(j *job.Job, shares map[string]measure.Length) {
	if c.Result == nil || c.Estimate || len(shares) == 0 {
		return
	}
	long := *c
	long.Pieces = nil
	planned, grown := map[string]measure.Length{}, map[string]measure.Length{}
	for _, piece := range c.Pieces {
		for _, name := range piece.Names {
			more := min(shares[name], max(0, j.Frame.Posts.Longest-piece.Length))
			c.Allowance += more
			planned[name], grown[name] = piece.Length, more
			long.Pieces = append(long.Pieces, cutting.Piece{Length: piece.Length + more, Count: 1, Names: []string{name}})
		}
	}
	if roomFor(c.Result.Sticks, grown) {
		return
	}
	slices.SortStableFunc(long.Pieces, func(a, b cutting.Piece) int { return cmp.Compare(b.Length, a.Length) })
	problem := long.Problem(j)
	problem.Goals, problem.Budget = cutting.LeastCost, cutting.DefaultBudget/5
	result, err := cutting.Plan(problem)
	if err != nil || result.Cost <= c.Result.Cost {
		return
	}
	c.proofPieces = long.Pieces
	c.Result = foreseen(result, planned, j.Yard.Kerf)
}

// roomFor says whether every stick, cut as planned, has room left for what its
// pieces may grow by: then the sticks are enough as they are.
func roomFor(sticks []cutting.CutStick, grown map[string]measure.Length) bool {
	for _, s := range sticks {
		left := s.Left
		for _, cut := range s.Cuts {
			left -= grown[cut.Name]
		}
		if left < 0 {
			return false
		}
	}
	return true
}

// foreseen cuts the posts as they are planned from the sticks of a plan that has
// the allowance in it.
func foreseen(r cutting.Result, planned map[string]measure.Length, kerf measure.Length) *cutting.Result {
	r.Offcut = 0
	for i := range r.Sticks {
		s := &r.Sticks[i]
		slices.SortStableFunc(s.Cuts, func(a, b cutting.Cut) int { return cmp.Compare(planned[b.Name], planned[a.Name]) })
		at := measure.Length(0)
		if s.Trim > 0 {
			at = s.Trim + kerf
		}
		for k := range s.Cuts {
			cut := &s.Cuts[k]
			cut.Length = planned[cut.Name]
			cut.Mark = at + cut.Length
			at = cut.Mark + kerf
		}
		s.Left, s.Pattern = max(0, s.Length-at), i+1
		if s.Bought {
			r.Offcut = max(r.Offcut, s.Left)
		}
	}
	r.Patterns = len(r.Sticks)
	return &r
}
