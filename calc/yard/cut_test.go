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

// Two hundred posts of two hundred lengths are planned without a proof, but the
// plan is whole and says how far it may be from the best.
func TestManyLengthsArePlannedWithTheirGap(t *testing.T) {
	j := &job.Job{}
	j.Yard.Kerf = measure.Inch / 8
	j.Yard.Stock = map[string][]job.StockLength{"4x4": {{Length: 8 * measure.Foot}, {Length: 10 * measure.Foot}, {Length: 12 * measure.Foot}}}
	c := Cut{Section: job.Section{Size: "4x4"}}
	for i := range 2 * manyLengths {
		c.Pieces = append(c.Pieces, cutting.Piece{Length: 4*measure.Inch + measure.Length(i)*measure.Sixteenth, Count: 1, Names: []string{fmt.Sprint(i)}})
	}
	c.solve(j)
	require.NotNil(t, c.Result, c.Trouble)
	require.NoError(t, verify.Plan(c.Problem(j), *c.Result))
	cost := c.Result.Proofs[0]
	assert.LessOrEqual(t, cost.Bound, cost.Value)
	assert.Less(t, float64(c.Gap()), 0.02*float64(cost.Value), "a first plan that is near the bound")
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
