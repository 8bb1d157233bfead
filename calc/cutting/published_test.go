package cutting_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"pierbook/calc/cutting"
	"pierbook/calc/cutting/verify"
	"pierbook/calc/measure"
)

// instance is one row of testdata/published/cutting.yaml, where its source
// stands beside it. Lengths are in a unit of the instance; here a unit is a
// millimetre, so that a nanometre too much shows.
type instance struct {
	ID      string
	Kerf    int64
	Stock   [][2]int64 // length and price
	Offcuts []int64
	Pieces  [][2]int64 // length and how many
	Best    int64
	Sticks  *int
	Longest *int64 `yaml:"longest_left"`
	Reach   bool   // too hard to ask a proof for
}

const unit = measure.Millimetre

func instances(t testing.TB) []instance {
	t.Helper()
	data, err := os.ReadFile("../../testdata/published/cutting.yaml")
	require.NoError(t, err)
	var file struct{ Instances []instance }
	require.NoError(t, yaml.Unmarshal(data, &file))
	require.NotEmpty(t, file.Instances)
	return file.Instances
}

// problem returns the instance with as many goals as it has values for.
func (i instance) problem() cutting.Problem {
	p := cutting.Problem{Kerf: measure.Length(i.Kerf) * unit, Goals: cutting.LeastCost}
	for _, s := range i.Stock {
		p.Stock = append(p.Stock, cutting.Stock{Length: measure.Length(s[0]) * unit, Price: s[1], Priced: true})
	}
	for _, o := range i.Offcuts {
		p.OnHand = append(p.OnHand, cutting.Stick{Length: measure.Length(o) * unit, Count: 1})
	}
	for _, s := range i.Pieces {
		p.Pieces = append(p.Pieces, cutting.Piece{Length: measure.Length(s[0]) * unit, Count: int(s[1])})
	}
	if i.Sticks != nil {
		p.Goals = cutting.FewestSticks
	}
	if i.Longest != nil {
		p.Goals = cutting.LongestOffcut
	}
	return p
}

func TestPublishedInstances(t *testing.T) {
	for _, in := range instances(t) {
		t.Run(in.ID, func(t *testing.T) {
			t.Parallel()
			p := in.problem()
			r, err := cutting.Plan(p)
			require.NoError(t, err)
			require.NoError(t, verify.Plan(p, r))
			cost := r.Proofs[0]
			if in.Reach {
				assert.GreaterOrEqual(t, r.Cost, in.Best, "cost below the published best")
				assert.LessOrEqual(t, cost.Bound, in.Best, "bound above the published best")
				t.Logf("reach: cost %d, bound %d, best %d, %d nodes", r.Cost, cost.Bound, in.Best, cost.Nodes)
				return
			}
			assert.Equal(t, in.Best, r.Cost, "cost")
			if in.Sticks != nil {
				assert.Equal(t, *in.Sticks, r.Bought, "sticks bought")
			}
			if in.Longest != nil {
				assert.Equal(t, measure.Length(*in.Longest)*unit, r.Offcut, "longest offcut")
			}
			for _, q := range r.Proofs {
				assert.True(t, q.Proven, "goal %d: value %d, bound %d after %d nodes", q.Goal, q.Value, q.Bound, q.Nodes)
			}
		})
	}
}

func BenchmarkPublishedInstances(b *testing.B) {
	for _, in := range instances(b) {
		b.Run(in.ID, func(b *testing.B) {
			b.ReportAllocs()
			p, nodes := in.problem(), 0
			for b.Loop() {
				r, err := cutting.Plan(p)
				require.NoError(b, err)
				nodes = 0
				for _, q := range r.Proofs {
					nodes += q.Nodes
				}
			}
			b.ReportMetric(float64(nodes), "nodes")
		})
	}
}
