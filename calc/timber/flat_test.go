package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
	"pierbook/calc/sample"
)

// Flat-use factors of the NDS Supplement 2018, Table 4A, as two public
// transcriptions have them.
func TestFlatUse(t *testing.T) {
	for _, row := range []struct {
		size string
		want measure.Ratio
	}{{"2x4", 1.1}, {"2x6", 1.15}, {"2x8", 1.15}, {"2x10", 1.2}, {"4x6", 1.05}, {"4x8", 1.05}} {
		section := sample.Section(row.size, 1)
		ref, err := LookUp(sample.Shed().Timber, section)
		require.NoError(t, err)
		assert.Equal(t, row.want, FlatUse(ref, section), row.size)
	}
}
