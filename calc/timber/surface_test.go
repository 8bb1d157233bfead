package timber_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/check"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/timber"
)

// IRC 2021 Table R503.2.1.1(1) begins at 19/32 in, Table R503.1 at 5/8 in, IRC 2018
// Table R507.7 at 1 in dressed: what is thinner fails at any spacing of joists. By
// hand: 1/(3/4) = 1.333, (5/8)/(1/2) = 1.25, (19/32)/(1/2) = 1.1875.
func TestASurfaceThinnerThanItsTableCannotPass(t *testing.T) {
	const psf = measure.PoundPerSquareFt
	for _, c := range []struct {
		surface  job.Surface
		building bool
		ratio    float64
	}{
		{job.Surface{Kind: "boards", Thickness: 3 * measure.Inch / 4}, false, 4. / 3},
		{job.Surface{Kind: "boards", Thickness: measure.Inch / 2}, true, 1.25},
		{job.Surface{Kind: "panels", Thickness: measure.Inch / 2, SpanRating: 24}, true, 1.1875},
	} {
		for _, spacing := range []measure.Length{measure.Inch / 2, 8 * measure.Inch, 16 * measure.Inch} {
			var all check.Findings
			all.Add(timber.Surface(c.surface, spacing, 40*psf, c.building)...)
			thin, found := check.Find(all.Checks, "surface.thickness")
			require.True(t, found, "%v", c.surface)
			assert.True(t, thin.Fails())
			assert.InDelta(t, c.ratio, float64(thin.Ratio), 1e-6)
		}
	}
	var all check.Findings
	all.Add(timber.Surface(job.Surface{Kind: "boards", Thickness: 254 * measure.Millimetre / 10}, 16*measure.Inch, 40*psf, false)...)
	assert.False(t, all.Failed)
}

// IRC 2021 Table R507.7: boards of 1 1/4 in nominal on two joists 12 in apart, of 2 in
// nominal 24 in.
func TestBoardsOnTwoJoists(t *testing.T) {
	for _, c := range []struct{ thickness, allowed measure.Length }{{measure.Inch, 12 * measure.Inch}, {3 * measure.Inch / 2, 24 * measure.Inch}} {
		found := timber.BoardsOnTwoJoists(job.Surface{Kind: "boards", Thickness: c.thickness}, 16*measure.Inch)
		assert.Equal(t, c.allowed, found.Check.Capacity)
		assert.Equal(t, c.allowed < 16*measure.Inch, !found.Check.Holds())
	}
}
