package cutting_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/cutting"
	"pierbook/calc/cutting/verify"
	"pierbook/calc/measure"
)

// manyPosts wants one post each of so many different lengths.
func manyPosts(count int) cutting.Problem {
	p := cutting.Problem{Kerf: measure.Inch / 8}
	for _, s := range [][2]int64{{8, 1450}, {10, 1875}, {12, 2290}, {16, 3120}} {
		p.Stock = append(p.Stock, cutting.Stock{Length: measure.Length(s[0]) * measure.Foot, Price: s[1], Priced: true})
	}
	for i := range count {
		p.Pieces = append(p.Pieces, cutting.Piece{Length: 6*measure.Inch + measure.Length(i*37%count)*3*measure.Sixteenth, Count: 1})
	}
	return p
}

// TestTheBudgetEndsTheSearchWithABound stops a plan for three hundred different
// lengths early: it is whole, the same each time, and its bound has a certificate.
// More budget never proves less.
func TestTheBudgetEndsTheSearchWithABound(t *testing.T) {
	before := int64(0)
	for _, budget := range []int64{1, 1_000_000, 100_000_000} {
		p := manyPosts(300)
		p.Budget = budget
		r, err := cutting.Plan(p)
		require.NoError(t, err)
		require.NoError(t, verify.Plan(p, r))
		again, err := cutting.Plan(p)
		require.NoError(t, err)
		assert.Equal(t, r, again)
		cost := r.Proofs[0]
		assert.GreaterOrEqual(t, cost.Bound, before)
		assert.Less(t, cost.Gap(), 0.05, "budget %d: cost %d, bound %d", budget, cost.Value, cost.Bound)
		before = cost.Bound
	}
}

// Nothing changes from 101 different lengths on: the cost is proven on both sides.
func TestNoNumberOfLengthsFromWhichOnNothingIsProven(t *testing.T) {
	for _, count := range []int{100, 101, 102} {
		p := manyPosts(count)
		p.Goals = cutting.LeastCost
		r, err := cutting.Plan(p)
		require.NoError(t, err)
		require.NoError(t, verify.Plan(p, r))
		assert.True(t, r.Proofs[0].Proven, "%d lengths: cost %d, bound %d", count, r.Cost, r.Proofs[0].Bound)
	}
}

// Seven posts of 5 ft want seven sticks of 8 ft, or four of 12 ft: with two of each
// in the yard six posts at most can be cut, so one stick is short, the shorter.
func TestWhatIsShortIsTheLeastLength(t *testing.T) {
	p := cutting.Problem{Stock: []cutting.Stock{
		{Length: 8 * measure.Foot, Price: 900, Priced: true, Sticks: 2}, {Length: 12 * measure.Foot, Price: 1400, Priced: true, Sticks: 2},
	}, Pieces: []cutting.Piece{{Length: 5 * measure.Foot, Count: 7}}}
	_, err := cutting.Plan(p)
	var short *cutting.ShortError
	require.ErrorAs(t, err, &short)
	assert.Equal(t, []cutting.Shortage{{Length: 8 * measure.Foot, Sticks: 1}}, short.More)
	p.Stock[0].Sticks++
	r, err := cutting.Plan(p)
	require.NoError(t, err)
	require.NoError(t, verify.Plan(p, r))
	assert.Equal(t, int64(3*900+2*1400), r.Cost)
}
