package cutting_test

import (
	"cmp"
	"errors"
	"fmt"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/cutting"
	"pierbook/calc/cutting/verify"
	"pierbook/calc/measure"
)

// small draws a problem that can be gone through whole.
func small(t *rapid.T) cutting.Problem {
	p := cutting.Problem{
		Kerf: measure.Length(rapid.IntRange(0, 3).Draw(t, "kerf")),
		Trim: measure.Length(rapid.SampledFrom([]int{0, 0, 2}).Draw(t, "trim")),
	}
	for _, length := range rapid.SliceOfNDistinct(rapid.IntRange(24, 60), 1, 3, rapid.ID[int]).Draw(t, "stock") {
		p.Stock = append(p.Stock, cutting.Stock{
			Length: measure.Length(length),
			Price:  int64(rapid.IntRange(20, 60).Draw(t, "price")), Priced: true,
			Sticks: rapid.SampledFrom([]int{0, 0, 1, 2}).Draw(t, "sticks in the yard"),
		})
	}
	for range rapid.IntRange(0, 2).Draw(t, "sticks") {
		p.OnHand = append(p.OnHand, cutting.Stick{Length: measure.Length(rapid.IntRange(5, 50).Draw(t, "on hand")), Count: 1})
	}
	for n := rapid.IntRange(1, 6).Draw(t, "pieces"); n > 0; {
		count := rapid.IntRange(1, n).Draw(t, "count")
		p.Pieces = append(p.Pieces, cutting.Piece{Length: measure.Length(rapid.IntRange(3, 20).Draw(t, "piece")), Count: count})
		n -= count
	}
	return p
}

// outcome is what the goals look at.
type outcome struct {
	cost     int64
	bought   int
	offcut   measure.Length
	patterns int
}

func (a outcome) better(b outcome) bool {
	return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.bought, b.bought), cmp.Compare(b.offcut, a.offcut), cmp.Compare(a.patterns, b.patterns)) < 0
}

// opened is a stick in the exhaustive search and what is left of it.
type opened struct {
	length measure.Length
	left   measure.Length // with one kerf more
	bought bool
	cuts   []measure.Length // the longest first
}

// ways counts sticks cut alike once.
func ways(sticks []opened) int {
	different := map[string]bool{}
	for _, s := range sticks {
		different[fmt.Sprint(s.length, s.bought, s.cuts)] = true
	}
	return len(different)
}

// bought counts the sticks bought of a length.
func bought(sticks []opened, length measure.Length) int {
	n := 0
	for _, s := range sticks {
		if s.bought && s.length == length {
			n++
		}
	}
	return n
}

// yard returns how many sticks of a length the yard has.
func yard(p cutting.Problem, length measure.Length) int {
	n := 0
	for _, s := range p.Stock {
		if s.Length == length {
			n += s.Sticks
		}
	}
	return n
}

// exhaust puts every piece on every stick, open or new, and keeps the best.
func exhaust(p cutting.Problem, pieces []measure.Length, sticks []opened, onHand int, now outcome, best *outcome) {
	if now.cost > best.cost {
		return
	}
	if len(pieces) == 0 {
		for _, s := range sticks {
			if s.bought {
				now.offcut = max(now.offcut, s.left-p.Kerf)
			}
		}
		now.patterns = ways(sticks)
		if now.better(*best) {
			*best = now
		}
		return
	}
	take := pieces[0] + p.Kerf
	for i := range sticks {
		if sticks[i].left >= take {
			before := sticks[i]
			sticks[i].left -= take
			sticks[i].cuts = append(slices.Clone(before.cuts), pieces[0])
			exhaust(p, pieces[1:], sticks, onHand, now, best)
			sticks[i] = before
		}
	}
	trim := measure.Length(0)
	if p.Trim > 0 {
		trim = p.Trim + p.Kerf
	}
	open := func(length measure.Length, price int64, bought bool, onHand int) {
		if left := length - trim + p.Kerf - take; left >= 0 {
			next := now
			next.cost += price
			if bought {
				next.bought++
			}
			exhaust(p, pieces[1:], append(sticks[:len(sticks):len(sticks)], opened{length, left, bought, pieces[:1]}), onHand, next, best)
		}
	}
	for _, s := range p.Stock {
		if s.Sticks == 0 || bought(sticks, s.Length) < yard(p, s.Length) {
			open(s.Length, s.Price, true, onHand)
		}
	}
	for i, s := range p.OnHand {
		if onHand>>i&1 == 0 {
			open(s.Length, 0, false, onHand|1<<i)
		}
	}
}

func TestSmallProblemsAgainstExhaustiveSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := small(t)
		var pieces []measure.Length
		for _, piece := range p.Pieces {
			for range piece.Count {
				pieces = append(pieces, piece.Length)
			}
		}
		slices.SortFunc(pieces, func(a, b measure.Length) int { return cmp.Compare(b, a) })
		want := outcome{cost: 1 << 60}
		exhaust(p, pieces, nil, 0, outcome{}, &want)
		r, err := cutting.Plan(p)
		if want.cost == 1<<60 {
			require.Error(t, err)
			return
		}
		require.NoError(t, err)
		require.NoError(t, verify.Plan(p, r))
		require.Equal(t, want, outcome{r.Cost, r.Bought, r.Offcut, r.Patterns})
		for _, q := range r.Proofs {
			require.True(t, q.Proven, "goal %d", q.Goal)
		}
	})
}

// TestClosedSearchesAgainstASecondMethod takes jobs that no duals prove and asks
// a table of all sets of pieces for the least cost and the fewest sticks.
func TestClosedSearchesAgainstASecondMethod(t *testing.T) {
	closed := 0
	for seed := range int64(400) {
		p := middling(seed)
		r, err := cutting.Plan(p)
		var short *cutting.ShortError
		cost, sticks, ok := verify.Cheapest(p)
		if errors.As(err, &short) {
			require.False(t, ok, "job %d is said to lack sticks", seed)
			continue
		}
		require.NoError(t, err)
		require.NoError(t, verify.Plan(p, r))
		if !ok {
			continue
		}
		if r.Proofs[0].Reached == cutting.ByClosedSearch {
			closed++
		}
		require.True(t, r.Proofs[0].Proven && r.Proofs[1].Proven, "job %d", seed)
		require.Equal(t, cost, r.Cost, "job %d", seed)
		require.Equal(t, sticks, r.Bought, "job %d", seed)
	}
	require.Greater(t, closed, 60, "jobs that only a closed search proves")
}

// middling makes a job of some twenty pieces in up to six lengths, at prices that
// do not quite go by the length, from a yard that may be short of some.
func middling(seed int64) cutting.Problem {
	r := rand.New(rand.NewSource(seed))
	p := cutting.Problem{Kerf: measure.Length(r.Intn(3)), Goals: cutting.FewestSticks}
	for _, length := range []int{96, 120, 144, 192} {
		if length == 192 || r.Intn(3) > 0 {
			stock := cutting.Stock{Length: measure.Length(length), Price: int64(length*10 + r.Intn(80)), Priced: true}
			if r.Intn(3) == 0 {
				stock.Sticks = 1 + r.Intn(4)
			}
			p.Stock = append(p.Stock, stock)
		}
	}
	for range r.Intn(3) {
		p.OnHand = append(p.OnHand, cutting.Stick{Length: measure.Length(30 + r.Intn(60)), Count: 1})
	}
	for range 3 + r.Intn(4) {
		p.Pieces = append(p.Pieces, cutting.Piece{Length: measure.Length(22 + r.Intn(75)), Count: 1 + r.Intn(5)})
	}
	return p
}
