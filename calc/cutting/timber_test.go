package cutting_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/cutting"
	"pierbook/calc/cutting/verify"
	"pierbook/calc/measure"
)

// timber makes a job of many short pieces from lengths whose prices do not
// quite go by the length. Lengths are in sixteenths of an inch.
func timber(seed int64) cutting.Problem {
	r := rand.New(rand.NewSource(seed))
	sixteenths := func(n int) measure.Length { return measure.Length(n) * measure.Inch / 16 }
	p := cutting.Problem{Kerf: measure.Inch / 8, Goals: cutting.LongestOffcut}
	rate := 0.4 + 0.8*r.Float64()
	for _, feet := range []int{8, 10, 12, 14, 16, 18, 20} {
		if r.Intn(3) > 0 || feet == 20 {
			price := rate * float64(192*feet) * (0.96 + 0.08*r.Float64())
			p.Stock = append(p.Stock, cutting.Stock{Length: sixteenths(192 * feet), Price: int64(price), Priced: true})
		}
	}
	for range r.Intn(4) {
		p.OnHand = append(p.OnHand, cutting.Stick{Length: sixteenths(240 + r.Intn(1200)), Count: 1})
	}
	for range 4 + r.Intn(9) {
		p.Pieces = append(p.Pieces, cutting.Piece{Length: sixteenths(200 + r.Intn(1000)), Count: 1 + r.Intn(9)})
	}
	return p
}

func TestTimberJobsAreProven(t *testing.T) {
	for seed := range int64(30) {
		r, err := cutting.Plan(timber(seed))
		require.NoError(t, err)
		require.NoError(t, verify.Plan(timber(seed), r))
		for _, q := range r.Proofs {
			assert.True(t, q.Proven, "job %d, goal %d: value %d, bound %d after %d nodes", seed, q.Goal, q.Value, q.Bound, q.Nodes)
		}
	}
}
