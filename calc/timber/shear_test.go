package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/statics"
)

// shearOf returns the greatest shear of a member of depth d under loads.
func shearOf(t *testing.T, r statics.Run, d float64, sideLoaded bool, marks []float64, loads ...statics.Push) float64 {
	t.Helper()
	r.Hinges = make([]bool, len(r.Supports))
	g, err := statics.NewGauges().Of(r, marks)
	require.NoError(t, err)
	f := g.Under(loads)
	s := statics.Bar{Gauge: g, Depth: d, SideLoaded: sideLoaded}
	worst := 0.0
	for part := range g.Parts {
		for _, at := range shearPlaces(&s, nil, part) {
			worst = max(worst, at.of(f.Shear))
		}
	}
	return worst
}

// TestShearNearSupports checks the shear by NDS 2018 3.4.3.1: of uniform load
// what lies within a depth of a support is left out, a concentrated load at x
// within it counts by x/d, and nothing is left out of a beam with joists hung on
// its side. Values by statics.
func TestShearNearSupports(t *testing.T) {
	span := statics.Run{End: 4, Supports: []float64{0, 4}}
	arm := statics.Run{Start: -0.1, End: 4, Supports: []float64{0, 4}}
	for _, c := range []struct {
		name  string
		run   statics.Run
		side  bool
		marks []float64
		loads []statics.Push
		want  float64
	}{
		{"uniform", span, false, nil, []statics.Push{{From: 0, To: 4, Size: 10}}, 10 * (2 - 0.2)},
		{"uniform, joists on the side", span, true, nil, []statics.Push{{From: 0, To: 4, Size: 10}}, 20},
		{"load within a depth", span, false, []float64{0.1}, []statics.Push{{From: 0.1, To: 0.1, Size: 100}}, 100 * 0.1 / 0.2 * 3.9 / 4},
		{"uniform and a load within a depth", span, false, []float64{0.1}, []statics.Push{{From: 0, To: 4, Size: 10}, {From: 0.1, To: 0.1, Size: 100}}, 18 + 50*3.9/4},
		{"load at the far end within a depth", span, false, []float64{3.9}, []statics.Push{{From: 3.9, To: 3.9, Size: 100}}, 50 * 3.9 / 4},
		{"load beyond a depth", span, false, []float64{1}, []statics.Push{{From: 1, To: 1, Size: 100}}, 75},
		{"load over the support", span, false, nil, []statics.Push{{From: 4, To: 4, Size: 100}}, 0},
		{"load over the support, joists on the side", span, true, nil, []statics.Push{{From: 4, To: 4, Size: 100}}, 0},
		{"load on a short overhang", arm, false, []float64{-0.05}, []statics.Push{{From: -0.05, To: -0.05, Size: 100}}, 100 * 0.05 / 0.2},
	} {
		assert.InDelta(t, c.want, shearOf(t, c.run, 0.2, c.side, c.marks, c.loads...), 1.5, c.name)
	}
}
