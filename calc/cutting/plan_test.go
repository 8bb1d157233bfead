package cutting_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/cutting"
	"pierbook/calc/cutting/verify"
	"pierbook/calc/measure"
)

func posts() cutting.Problem {
	return cutting.Problem{
		Kerf:   measure.Inch / 8,
		Stock:  []cutting.Stock{{Length: 8 * measure.Foot, Price: 1450, Priced: true}},
		OnHand: []cutting.Stick{{Length: 31 * measure.Inch, Count: 1, Name: "offcut"}},
		Pieces: []cutting.Piece{
			{Length: 14*measure.Inch + measure.Inch/2, Count: 2, Names: []string{"A1", "A3"}},
			{Length: 9 * measure.Inch, Count: 3, Names: []string{"B1", "B2", "B3"}},
			{Length: 20 * measure.Inch, Count: 1, Names: []string{"C3"}},
		},
	}
}

func ExamplePlan() {
	r, err := cutting.Plan(posts())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range r.Sticks {
		fmt.Printf("stick %d of %g in:", s.Number, s.Length.Inches())
		for _, c := range s.Cuts {
			fmt.Printf(" %s %g at %g", c.Name, c.Length.Inches(), c.Mark.Inches())
		}
		fmt.Printf(", %g left\n", s.Left.Inches())
	}
	fmt.Println(r.Bought, r.Cost, r.Proofs[0].Proven)
	// Output:
	// stick 1 of 31 in: C3 20 at 20 B1 9 at 29.125, 1.75 left
	// stick 2 of 96 in: A1 14.5 at 14.5 A3 14.5 at 29.125 B2 9 at 38.25 B3 9 at 47.375, 48.5 left
	// 1 1450 true
}

func TestSettingsTheLongestFirstEachPieceOnce(t *testing.T) {
	p := posts()
	r, err := cutting.Plan(p)
	require.NoError(t, err)
	require.NoError(t, verify.Plan(p, r))
	var lengths []float64
	pieces := 0
	for _, s := range r.Settings() {
		lengths = append(lengths, s.Length.Inches())
		for _, c := range s.Cuts {
			cut := r.Sticks[c.Stick-1].Cuts[c.Place-1]
			assert.Equal(t, s.Length, cut.Length)
			assert.Equal(t, c.Name, cut.Name)
			pieces++
		}
	}
	assert.Equal(t, []float64{20, 14.5, 9}, lengths)
	assert.Equal(t, 6, pieces)
}

func TestSamePlanEveryTime(t *testing.T) {
	for _, in := range instances(t)[20:32] {
		first, err := cutting.Plan(in.problem())
		require.NoError(t, err)
		again, err := cutting.Plan(in.problem())
		require.NoError(t, err)
		require.Equal(t, first, again, in.ID)
	}
}

func TestWithoutPricesTheLengthBoughtIsTheCost(t *testing.T) {
	p := posts()
	p.OnHand = nil
	p.Stock = []cutting.Stock{{Length: 8 * measure.Foot}, {Length: 10 * measure.Foot, Price: 1, Priced: true}}
	r, err := cutting.Plan(p)
	require.NoError(t, err)
	require.NoError(t, verify.Plan(p, r))
	assert.True(t, r.ByLength)
	assert.Equal(t, int64(8*measure.Foot), r.Cost)
	assert.Equal(t, []cutting.Purchase{{Length: 8 * measure.Foot, Count: 1, Price: int64(8 * measure.Foot)}}, r.Purchases())
}

func TestMixedUnitsStayExact(t *testing.T) {
	p := cutting.Problem{
		Kerf: 3 * measure.Millimetre, Trim: measure.Inch / 4,
		Stock:  []cutting.Stock{{Length: 12 * measure.Foot, Price: 900, Priced: true}, {Length: 4800 * measure.Millimetre, Price: 1200, Priced: true}},
		Pieces: []cutting.Piece{{Length: 1195 * measure.Millimetre, Count: 11}, {Length: 47*measure.Inch + measure.SixtyFourth, Count: 7}, {Length: 301 * measure.Millimetre, Count: 20}},
	}
	r, err := cutting.Plan(p)
	require.NoError(t, err)
	require.NoError(t, verify.Plan(p, r))
	assert.True(t, r.Proofs[0].Proven)
}

func TestPiecesThatNoStickYields(t *testing.T) {
	p := posts()
	p.Pieces = append(p.Pieces, cutting.Piece{Length: 97 * measure.Inch, Count: 1})
	_, err := cutting.Plan(p)
	assert.Error(t, err, "longer than every stick")
	p = posts()
	p.Stock = nil
	_, err = cutting.Plan(p)
	assert.Error(t, err, "nothing to buy and too little on hand")
}
