package cutting

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
)

// TestAPlanIsFoundWhereTheQuickRulesFindNone draws offcuts that hold the pieces
// with hardly any waste and nothing to buy: where the quick rules fail, the search
// finds the plan that the pieces were drawn from.
func TestAPlanIsFoundWhereTheQuickRulesFindNone(t *testing.T) {
	r, failed := rand.New(rand.NewSource(1)), 0
	for range 250 {
		var p Problem
		for range 3 + r.Intn(3) {
			length := 60 + r.Intn(60)
			p.OnHand = append(p.OnHand, Stick{Length: measure.Length(length), Count: 1})
			for left := length - r.Intn(2); left > 0; {
				piece := min(left, 11+r.Intn(40))
				left -= piece
				p.Pieces = append(p.Pieces, Piece{Length: measure.Length(piece), Count: 1})
			}
		}
		m := p.build()
		if m.task(m.prices()).start() == nil {
			failed++
		}
		plan, err := Plan(p)
		require.NoError(t, err)
		assert.Zero(t, plan.Cost)
		assert.Equal(t, ByCount, plan.Proofs[0].Reached)
	}
	require.Greater(t, failed, 15, "jobs that the quick rules cannot plan")
}
