package cutting_test

import (
	"cmp"
	"fmt"
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
	for range rapid.IntRange(1, 3).Draw(t, "lengths") {
		p.Stock = append(p.Stock, cutting.Stock{
			Length: measure.Length(rapid.IntRange(24, 60).Draw(t, "stock")),
			Price:  int64(rapid.IntRange(20, 60).Draw(t, "price")), Priced: true,
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

// outcome is what the aims look at.
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
		open(s.Length, s.Price, true, onHand)
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
			require.True(t, q.Proven, "aim %d", q.Aim)
		}
	})
}
