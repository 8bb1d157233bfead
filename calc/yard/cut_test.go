package yard

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/cutting"
	"pierbook/calc/cutting/verify"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// The posts of 98 and of 104 piers, all of different lengths, are both proven best:
// there is no number of lengths from which on the first plan is taken. Those of 200
// are planned within the budget, and the plan says how far it may be from the best.
func TestManyLengthsArePlannedAsFewAre(t *testing.T) {
	for _, count := range []int{98, 104, 200} {
		t.Run(fmt.Sprint(count), func(t *testing.T) { manyLengths(t, count) })
	}
}

func manyLengths(t *testing.T, count int) {
	j := &job.Job{}
	j.Yard.Kerf = measure.Inch / 8
	j.Yard.Stock = map[string][]job.StockLength{"4x4": {{Length: 8 * measure.Foot}, {Length: 10 * measure.Foot}, {Length: 12 * measure.Foot}}}
	c := Cut{Section: job.Section{Size: "4x4"}}
	for i := range count {
		c.Pieces = append(c.Pieces, cutting.Piece{Length: 4*measure.Inch + measure.Length(i)*measure.Sixteenth, Count: 1, Names: []string{fmt.Sprint(i)}})
	}
	c.solve(j)
	require.NotNil(t, c.Result, c.Trouble)
	require.NoError(t, verify.Plan(c.Problem(j), *c.Result))
	cost := c.Result.Proofs[0]
	assert.LessOrEqual(t, cost.Bound, cost.Value)
	assert.True(t, cost.Proven || count > 150, "%d different lengths: cost %d, bound %d", count, cost.Value, cost.Bound)
	assert.Less(t, float64(c.Gap()), 0.01*float64(cost.Value))
	assert.NotEmpty(t, c.Proof(measure.Style{System: measure.Imperial, Fraction: measure.Sixteenth}))
}

// What keeps a cutting plan from being made is told in the lengths of the job.
func TestWhyNoPlanCanBeMade(t *testing.T) {
	piece := []cutting.Piece{{Length: 9*measure.Foot + 3*measure.Inch, Count: 2}}
	for _, test := range []struct {
		name  string
		stock []job.StockLength
		hand  []measure.Length
		want  string
	}{
		{"longer than every stick", []job.StockLength{{Length: 8 * measure.Foot}}, nil,
			"no cutting plan for 4x4: a piece of 9′\u00a03″ is longer than every stick that is sold or in hand"},
		{"nothing sold", nil, nil,
			"no cutting plan for 4x4: a piece of 9′\u00a03″ is longer than every stick that is sold or in hand"},
		{"too little in hand", nil, []measure.Length{10 * measure.Foot},
			"no cutting plan for 4x4: the sticks in hand do not yield all the pieces, and none are sold"},
		{"too few of the yard's only length", []job.StockLength{{Length: 10 * measure.Foot, Sticks: 1}}, nil,
			"no cutting plan for 4x4: the yard has too few sticks: 1 more of 10′\u00a00″ would do"},
	} {
		t.Run(test.name, func(t *testing.T) {
			j := &job.Job{}
			j.Yard.Stock = map[string][]job.StockLength{"4x4": test.stock}
			j.Yard.OnHand = map[string][]measure.Length{"4x4": test.hand}
			c := Cut{Section: job.Section{Size: "4x4"}, Pieces: piece}
			c.solve(j)
			assert.Nil(t, c.Result)
			assert.Equal(t, test.want, c.Proof(j.Style()))
		})
	}
}

// Six posts of 3 ft 9 in come two from a stick of 8 ft, three from one of 12 ft:
// three of 8 ft are 35.40, two of 12 ft 37.00, two of 8 ft and one of 12 ft 42.10. A
// yard with only two of 8 ft sells two of 12 ft.
func TestThePlanKeepsToTheSticksOfTheYard(t *testing.T) {
	eight, twelve := measure.Money(11.80), measure.Money(18.50)
	j := &job.Job{}
	j.Yard.Kerf = measure.Inch / 8
	for _, test := range []struct {
		sticks, eights, twelves int
		cost                    int64
	}{{0, 3, 0, 3540}, {3, 3, 0, 3540}, {2, 0, 2, 3700}, {1, 0, 2, 3700}} {
		j.Yard.Stock = map[string][]job.StockLength{"4x4": {{Length: 8 * measure.Foot, Price: &eight, Sticks: test.sticks}, {Length: 12 * measure.Foot, Price: &twelve}}}
		c := Cut{Section: job.Section{Size: "4x4"}, Pieces: []cutting.Piece{{Length: 3*measure.Foot + 9*measure.Inch, Count: 6}}}
		c.solve(j)
		require.NotNil(t, c.Result, c.Trouble)
		require.NoError(t, verify.Plan(c.Problem(j), *c.Result))
		bought := map[measure.Length]int{}
		for _, b := range c.Result.Purchases() {
			bought[b.Length] = b.Count
		}
		assert.Equal(t, map[measure.Length]int{8 * measure.Foot: test.eights, 12 * measure.Foot: test.twelves}, map[measure.Length]int{8 * measure.Foot: bought[8*measure.Foot], 12 * measure.Foot: bought[12*measure.Foot]}, "%d sticks", test.sticks)
		assert.Equal(t, test.cost, c.Result.Cost)
		assert.True(t, c.Result.Proofs[0].Proven)
	}
}
