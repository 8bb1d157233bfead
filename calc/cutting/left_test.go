package cutting

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
)

// No plan that costs as little leaves more than the bound, whatever the mix of
// sticks: every mix of so many sticks for so much is tried.
func TestNothingLeftPassesTheBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := &solver{model: &model{budget: newBudget(DefaultBudget)}, kerf: 1}
		for range rapid.IntRange(1, 4).Draw(t, "lengths") {
			s.stocks = append(s.stocks, stock{room: rapid.Int64Range(20, 99).Draw(t, "room"), price: rapid.Int64Range(1, 30).Draw(t, "price"), bought: true})
		}
		mix := rapid.SliceOfN(rapid.IntRange(0, len(s.stocks)-1), 1, 5).Draw(t, "sticks")
		var rooms int64
		for _, i := range mix {
			s.cost += s.stocks[i].price
			s.sticks++
			rooms += s.stocks[i].room
		}
		assert.GreaterOrEqual(t, s.mostLeft(), rooms-s.kerf)
	})
}

// Two pieces of 47 15/16 in fill a stick of 96 in with the cut between them; the
// third leaves 41 7/8 in of a stick of 72 in. All that is left lies in one piece, so no
// search is needed to prove it the longest.
func TestAllThatIsLeftInOnePieceIsProvenByCount(t *testing.T) {
	p := Problem{Kerf: measure.Inch / 8, Stock: []Stock{
		{Length: 72 * measure.Inch, Price: 1120, Priced: true}, {Length: 96 * measure.Inch, Price: 1360, Priced: true}, {Length: 120 * measure.Inch, Price: 1790, Priced: true}},
		Pieces: []Piece{{Length: 48*measure.Inch - measure.Sixteenth, Count: 2}, {Length: 30 * measure.Inch, Count: 1}}}
	r, err := Plan(p)
	require.NoError(t, err)
	assert.Equal(t, int64(1360+1120), r.Cost)
	i := slices.IndexFunc(r.Proofs, func(proof Proof) bool { return proof.Goal == LongestOffcut })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, 42*measure.Inch-measure.Inch/8, measure.Length(r.Proofs[i].Value))
	assert.True(t, r.Proofs[i].Proven)
	assert.Equal(t, ByCount, r.Proofs[i].Reached)
	assert.Zero(t, r.Proofs[i].Nodes)
}
