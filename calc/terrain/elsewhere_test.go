package terrain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/fieldtest"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// On ground that falls 2 in 100 along the lines and rises 3 in 100 across them, a frame shifted
// on by 2 ft stands 0.48 in lower, and one turned by 90° about its middle meets at
// A1 the ground that lies there: x = middle + half the width, y = middle − half the length.
func TestGroundOfAFrameThatLiesOtherwise(t *testing.T) {
	j, f := fieldtest.AllRead(), fieldtest.SampleFrame()
	g, wrong := groundOf(t, j)
	require.Empty(t, wrong)
	on, ok := g.Elsewhere(j, f, terrain.Lie{Along: 2 * measure.Foot})
	require.True(t, ok)
	for i, l := range on.Levels {
		assert.InDelta(t, float64(g.Levels[i].Height-fieldtest.In(0.48)), float64(l.Height), 1000, l.Pier)
	}
	turned, ok := g.Elsewhere(j, f, terrain.Lie{Turn: 90})
	require.True(t, ok)
	a1 := f.Piers[0]
	u, v := a1.X-f.Length/2, a1.Y-f.Width/2
	assert.InDelta(t, float64(g.Surface.At(f.Length/2-v, f.Width/2+u)), float64(turned.Levels[0].Height), 1000)
	same, ok := g.Elsewhere(j, f, terrain.Lie{})
	require.True(t, ok)
	for i, l := range same.Levels {
		assert.Equal(t, g.Levels[i].Height, l.Height)
		assert.True(t, l.Read)
	}
}
