package measure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/measure"
)

func TestSmallLengthsNeverPrintAsNothing(t *testing.T) {
	imperial := measure.Style{System: measure.Imperial, Fraction: measure.Sixteenth}
	metric := measure.Style{System: measure.Metric}
	for _, row := range []struct {
		length measure.Length
		style  measure.Style
		want   string
	}{
		{0, imperial, "0″"}, {1, imperial, "under\u00a01/16″"}, {measure.Sixteenth - 1, imperial, "under\u00a01/16″"},
		{measure.Sixteenth, imperial, "1/16″"}, {measure.Sixteenth + 1, imperial, "1/8″"},
		{0, metric, "0\u00a0mm"}, {measure.Millimetre / 3, metric, "under\u00a01\u00a0mm"}, {measure.Millimetre, metric, "1\u00a0mm"},
		{-measure.Millimetre / 3, metric, "under\u00a01\u00a0mm"},
	} {
		assert.Equal(t, row.want, measure.Small(row.length).Print(row.style), "%d nm", int64(row.length))
	}
	value, unit := measure.Small(measure.Millimetre / 4).Base()
	assert.Equal(t, 0.25, value)
	assert.Equal(t, "mm", unit)
}
