package order

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

func TestFastenersStandAtBothEnds(t *testing.T) {
	assert.Equal(t, 0, atSpacing(0, 6*measure.Inch))
	assert.Equal(t, 2, atSpacing(measure.Inch, 6*measure.Inch))
	assert.Equal(t, 9, atSpacing(4*measure.Foot, 6*measure.Inch), "48 in at 6 in: eight gaps, nine nails")
	assert.Equal(t, 10, atSpacing(4*measure.Foot+measure.Inch, 6*measure.Inch))
}

// A nail reaches ten of its diameters into the second piece (NDS, full value).
func TestNailsReachThrough(t *testing.T) {
	for _, row := range []struct {
		thickness measure.Length
		key       string
	}{{measure.Inch * 3 / 2, "16d-common"}, {45 * measure.Millimetre, "16d-common"}, {measure.Inch * 5 / 2, "40d-common"}, {measure.Inch * 7 / 2, "60d-common"}} {
		assert.Equal(t, row.key, nailOf(t, "16d-common").Through(row.thickness).Key)
	}
	assert.Equal(t, "10d-box", trade.JointFor("ply", 38*measure.Millimetre).Nail.Key)
	assert.Equal(t, "16d-common", trade.JointFor("ply", 45*measure.Millimetre).Nail.Key)
}
