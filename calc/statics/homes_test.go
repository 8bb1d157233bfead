package statics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestManufacturedPierLoads: 24 CFR 3285.303 Table 1 with note 2: a home 15 ft wide
// with 12 in eaves, one line of piers under each side: the floor and roof of half the
// width, a wall and the chassis, and a 300 lb pier, rounded up to 100 lb. The 40 psf
// floor load and the reading of the load path were chosen to fit.
func TestManufacturedPierLoads(t *testing.T) {
	for _, c := range [][3]float64{{4, 20, 2900}, {4, 40, 3600}, {6, 30, 4700}, {8, 20, 5500}, {8, 40, 6900}, {10, 20, 6800}} {
		width := Run{Start: -1, End: 16, Supports: []float64{0, 15}, Hinges: make([]bool, 2)} // ft
		a, err := width.Solve([]Push{{From: 0, To: 15, Size: 40 + 6}, {From: -1, To: 16, Size: c[1] + 10}, {From: 0, To: 0, Size: 35 + 10}, {From: 15, To: 15, Size: 35 + 10}})
		require.NoError(t, err)
		assert.Equal(t, c[2], 100*math.Ceil((c[0]*a.Reactions[0]+300)/100-1e-9))
	}
}
