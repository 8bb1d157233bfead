package levelling

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/measure"
)

func TestDigitsExchangedAsTheRodIsWritten(t *testing.T) {
	const in, ft, mm = measure.Inch, measure.Foot, measure.Millimetre
	for _, row := range []struct {
		reading, unit measure.Length
		want          []measure.Length
	}{
		{4*ft + 3*in + in/4, in, []measure.Length{3*ft + 4*in + in/4}},
		{2*ft + 10*in, in, []measure.Length{10*ft + 2*in, 2*ft + in}},
		{2*ft + in/2 + in, in, []measure.Length{ft + 2*in + in/2, 2*ft + 10*in + in/2}},
		{5*ft + 5*in, in, nil},
		{ft / 100 * 425, ft / 100, []measure.Length{ft / 100 * 452, ft / 100 * 245}},
		{1524 * mm, mm, []measure.Length{1542 * mm, 1254 * mm, 5124 * mm}},
		{-3 * in, in, nil},
	} {
		assert.Equal(t, row.want, digitsExchanged(row.reading, row.unit), row.reading)
	}
}

// A step that no rod of that kind is misread by is not offered.
func TestSlipsFollowTheRod(t *testing.T) {
	kinds := func(reads string) map[string]bool {
		seen := map[string]bool{}
		for _, c := range candidates(4*measure.Foot, reads) {
			seen[c.kind] = true
		}
		return seen
	}
	assert.True(t, kinds("feet_inches")["an inch"])
	assert.False(t, kinds("tenths")["an inch"])
	assert.True(t, kinds("tenths")["a tenth of a foot"])
	assert.True(t, kinds("millimetres")["10 mm"])
	for _, c := range candidates(measure.Inch/2, "feet_inches") {
		assert.GreaterOrEqual(t, c.should, measure.Length(0), "upright rods read no less than 0")
	}
}
