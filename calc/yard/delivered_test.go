package yard

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/cutting"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Six pieces of 5 ft come two from a stick of 12 ft: three sticks, 60.00.
func deliveredCut(t *testing.T, sticks ...measure.Length) Cut {
	t.Helper()
	twenty := measure.Money(20)
	j := &job.Job{}
	j.Yard.Kerf = measure.Inch / 8
	j.Yard.Stock = map[string][]job.StockLength{"2x6": {{Length: 12 * measure.Foot, Price: &twenty}}}
	j.Measured.Delivered = map[string]job.Delivery{"2x6": {Sticks: sticks}}
	c := Cut{Section: job.Section{Size: "2x6"}, Pieces: []cutting.Piece{{Length: 5 * measure.Foot, Count: 6}}}
	c.plan(j, nil)
	if c.receive(j) {
		c.anew = true
		c.plan(j, nil)
	}
	require.NotNil(t, c.Result, c.Trouble)
	return c
}

// What has come leaves the sticks to buy, and its price the cost and the bound. As
// long as the plan's own sticks came, nothing in the plan moves; others in their
// place are cut first.
func TestWhatHasComeIsNotBoughtAgain(t *testing.T) {
	const twelve = 12 * measure.Foot
	for _, test := range []struct {
		name   string
		sticks []measure.Length
		buy    int
		cost   int64
		taken  int
	}{
		{"nothing came", nil, 3, 6000, 3},
		{"one of three came", []measure.Length{twelve}, 2, 4000, 3},
		{"all came", []measure.Length{twelve, twelve, twelve}, 0, 0, 3},
		{"one too many came", []measure.Length{twelve, twelve, twelve, twelve}, 0, 0, 3},
		{"a longer one came", []measure.Length{16 * measure.Foot}, 2, 4000, 3}, // three of 5 ft out of 16 ft, three more out of two of 12 ft
		{"longer ones came", []measure.Length{16 * measure.Foot, 16 * measure.Foot}, 0, 0, 2},
	} {
		t.Run(test.name, func(t *testing.T) {
			c := deliveredCut(t, test.sticks...)
			assert.Equal(t, test.buy, c.Result.Bought)
			assert.Equal(t, test.cost, c.Result.Cost)
			assert.Len(t, c.Result.Sticks, test.taken)
			bought := 0
			for _, b := range c.Bought() {
				bought += b.Count
			}
			assert.Equal(t, test.buy, bought)
		})
	}
}

// A stick of 8 ft gave posts of 30 and 20 in: 96 − 30 − 20 and two saw cuts of 1/8
// are left. Posts that the stick does not yield leave nothing to count on.
func TestOffcutsOfADelivery(t *testing.T) {
	j := &job.Job{}
	j.Yard.Kerf = measure.Inch / 8
	j.Frame.Posts.Section = job.Section{Size: "4x4"}
	j.Measured.Delivered = map[string]job.Delivery{"4x4": {Sticks: []measure.Length{8 * measure.Foot, 10 * measure.Foot}}}
	c := Cut{Section: job.Section{Size: "4x4"}}
	assert.Equal(t, []measure.Length{8 * measure.Foot, 10 * measure.Foot}, c.leftOf(j), "nothing was cut yet")
	j.Measured.PostsCut = map[string]measure.Length{"A1": 30 * measure.Inch, "A2": 20 * measure.Inch}
	left := c.leftOf(j)
	require.Len(t, left, 2)
	var total measure.Length
	for _, l := range left {
		total += l
	}
	assert.Equal(t, 18*measure.Foot-50*measure.Inch-measure.Inch/4, total)
	j.Measured.PostsCut["A3"] = 18 * measure.Foot
	assert.Empty(t, c.leftOf(j))
	j.Measured.Stock = map[string][]measure.Length{"4x4": {31 * measure.Inch}}
	assert.Equal(t, []measure.Length{31 * measure.Inch}, c.inHand(j), "what was counted is what there is")
}
