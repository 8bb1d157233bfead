package strength

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/figure"
	"pierbook/calc/sample"
)

// TestFiguresHaveOneKeyEachAndAPedigree checks what every page relies on.
func TestFiguresHaveOneKeyEachAndAPedigree(t *testing.T) {
	s := work(t, sample.Shed())
	var registry figure.Registry
	registry.Add(s.Figures()...) // panics on a doubled key
	for _, f := range registry.All() {
		assert.NotNil(t, f.Value, f.Key)
		assert.NotEmpty(t, f.Means, f.Key)
		if f.Origin == figure.Computed {
			assert.NotEmpty(t, f.Formula+f.Source, f.Key)
		}
	}
	for _, key := range []string{"pier.A1.load", "pier.B3.reaction", "check.joist.bending.ratio", "check.beam.B.shear.ratio", "checks.worst", "checks.failing", "load.floor", "load.worst_pier"} {
		_, ok := registry.Get(key)
		require.True(t, ok, key)
	}
}
