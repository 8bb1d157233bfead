package measure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
)

func TestSizesPrintAsTheyAre(t *testing.T) {
	for _, row := range []struct {
		size             measure.Length
		imperial, metric string
	}{
		{23 * measure.Inch / 32, "23/32″", "18\u00a0mm"},
		{measure.Inch / 8, "1/8″", "3.175\u00a0mm"},
		{measure.Inch + measure.SixtyFourth, "1\u00a01/64″", "26\u00a0mm"},
		{-measure.Inch / 8, "−1/8″", "−3.175\u00a0mm"},
		{22 * measure.Millimetre, "7/8″", "22\u00a0mm"},
		{16 * measure.Foot, "16′\u00a00″", "4876.8\u00a0mm"},
	} {
		assert.Equal(t, row.imperial, measure.Exact(row.size).Print(imperial))
		assert.Equal(t, row.metric, measure.Exact(row.size).Print(metric))
	}
}

func TestSizesOnAnInchTapeAreReadBackExactly(t *testing.T) {
	coarse := measure.Style{System: measure.Imperial, Fraction: measure.Inch / 4}
	rapid.Check(t, func(t *rapid.T) {
		size := measure.Length(rapid.Int64Range(-1e5, 1e5).Draw(t, "sixty-fourths")) * measure.SixtyFourth
		got, err := measure.ParseLength(measure.Exact(size).Print(coarse))
		require.NoError(t, err)
		require.Equal(t, size, got)
	})
}
