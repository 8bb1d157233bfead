package strength

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/timber"
)

// A frame of 12 ft 2 1/2 in drops the joist at 12 ft, since it would all but
// touch the end joist: the last bay is 17 3/4 in wide under panels rated for 16.
func TestSurfaceIsCheckedOverTheWidestBay(t *testing.T) {
	j := sample.Shed()
	j.Platform.Length, j.Platform.Surface.SpanRating = 146*in+in/2, 16
	require.Equal(t, 17*in+3*in/4, sample.Frame(j).WidestBay)
	c, ok := work(t, j).Find("surface.span")
	require.True(t, ok)
	assert.Equal(t, measure.Quantity(17*in+3*in/4), c.Demand)
	assert.True(t, c.Fails())
}

// The repetitive-member factor is for members at most 24 in apart (NDS 2018
// 4.3.9), and a wider last bay counts.
func TestRepetitiveMembersStandNoWiderThanTheWidestBay(t *testing.T) {
	j := sample.Shed()
	j.Frame.Joists.Spacing = 24 * in
	assert.Equal(t, measure.Ratio(1.15), work(t, j).member("joist").(timber.Member).Values.Repetitive)
	j.Platform.Length = 146*in + in/2
	assert.Equal(t, measure.Ratio(1), work(t, j).member("joist").(timber.Member).Values.Repetitive)
}
