package strength

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shearOf returns the greatest shear of a member of depth d under loads.
func shearOf(t *testing.T, r run, d float64, sideLoaded bool, marks []float64, loads ...push) float64 {
	t.Helper()
	r.hinges = make([]bool, len(r.supports))
	g, err := newGauges().of(r, marks)
	require.NoError(t, err)
	f, err := g.field(loads)
	require.NoError(t, err)
	s := subject{gauge: g, depth: d, sideLoaded: sideLoaded}
	worst := 0.0
	for part := range g.parts {
		for _, at := range s.shearPlaces(nil, part) {
			worst = max(worst, at.of(f.shear))
		}
	}
	return worst
}

// TestShearNearSupports checks the shear by NDS 2018 3.4.3.1: of uniform load
// what lies within a depth of a support is left out, a concentrated load at x
// within it counts by x/d, and nothing is left out of a beam with joists hung on
// its side. Values by statics.
func TestShearNearSupports(t *testing.T) {
	span := run{end: 4, supports: []float64{0, 4}}
	arm := run{start: -0.1, end: 4, supports: []float64{0, 4}}
	for _, c := range []struct {
		name  string
		run   run
		side  bool
		marks []float64
		loads []push
		want  float64
	}{
		{"uniform", span, false, nil, []push{{0, 4, 10}}, 10 * (2 - 0.2)},
		{"uniform, joists on the side", span, true, nil, []push{{0, 4, 10}}, 20},
		{"load within a depth", span, false, []float64{0.1}, []push{{0.1, 0.1, 100}}, 100 * 0.1 / 0.2 * 3.9 / 4},
		{"uniform and a load within a depth", span, false, []float64{0.1}, []push{{0, 4, 10}, {0.1, 0.1, 100}}, 18 + 50*3.9/4},
		{"load at the far end within a depth", span, false, []float64{3.9}, []push{{3.9, 3.9, 100}}, 50 * 3.9 / 4},
		{"load beyond a depth", span, false, []float64{1}, []push{{1, 1, 100}}, 75},
		{"load over the support", span, false, nil, []push{{4, 4, 100}}, 0},
		{"load over the support, joists on the side", span, true, nil, []push{{4, 4, 100}}, 0},
		{"load on a short overhang", arm, false, []float64{-0.05}, []push{{-0.05, -0.05, 100}}, 100 * 0.05 / 0.2},
	} {
		assert.InDelta(t, c.want, shearOf(t, c.run, 0.2, c.side, c.marks, c.loads...), 1.5, c.name)
	}
}
