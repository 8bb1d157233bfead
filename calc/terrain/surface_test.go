package terrain_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/fieldtest"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// franke is R. Franke's first test function on the unit square. The manuals of
// some packages misprint its last term; this is the form of the paper (Mathematics
// of Computation 38, 1982, 181–200).
func franke(x, y float64) float64 {
	return 0.75*math.Exp(-(sq(9*x-2)+sq(9*y-2))/4) + 0.75*math.Exp(-sq(9*x+1)/49-(9*y+1)/10) +
		0.5*math.Exp(-(sq(9*x-7)+sq(9*y-3))/4) - 0.2*math.Exp(-sq(9*x-4)-sq(9*y-7))
}

func sq(v float64) float64 { return v * v }

// node places one reading; a unit stands for ten metres, so that rounding to the
// nanometre stays far below the tolerances.
func node(x, y, z float64) terrain.Node {
	return terrain.Node{X: measure.FromMetres(10 * x), Y: measure.FromMetres(10 * y), Height: measure.FromMetres(10 * z)}
}

func height(s *terrain.Spline, x, y float64) float64 {
	return s.At(measure.FromMetres(10*x), measure.FromMetres(10*y)).Metres() / 10
}

func TestFrankeFunctionAtItsPublishedPoints(t *testing.T) {
	e := fieldtest.ByID(t, "ground-surface.yaml", "surfaces", "SURF-03")
	points := fieldtest.Into[struct{ Points [][2]float64 }](t, e.Inputs).Points
	values := fieldtest.Into[struct{ Values []float64 }](t, e.Result).Values
	for i, p := range points {
		assert.InDelta(t, values[i], franke(p[0], p[1]), e.Tolerance, e.Source)
	}
}

func frankeNodes(t testing.TB) ([]terrain.Node, fieldtest.Example) {
	e := fieldtest.ByID(t, "ground-surface.yaml", "surfaces", "SURF-04")
	var nodes []terrain.Node
	for _, p := range fieldtest.Into[struct{ Nodes [][2]float64 }](t, e.Inputs).Nodes {
		nodes = append(nodes, node(p[0], p[1], franke(p[0], p[1])))
	}
	return nodes, e
}

func TestThinPlateThroughFrankesNodes(t *testing.T) {
	nodes, e := frankeNodes(t)
	type errors struct{ Max, Mean, RMS float64 }
	want := fieldtest.Into[struct {
		TPS, Plane errors
		At         map[string]float64 `yaml:"tps_at"`
	}](t, e.Result)
	s, ok := terrain.NewSpline(nodes)
	require.True(t, ok)
	var spline, plane errors
	count := 0.0
	for i := range 33 {
		for k := range 33 {
			x, y := float64(i)/32, float64(k)/32
			note := func(e *errors, z float64) {
				off := math.Abs(z - franke(x, y))
				e.Max, e.Mean, e.RMS = max(e.Max, off), e.Mean+off, e.RMS+off*off
			}
			note(&spline, height(s, x, y))
			note(&plane, s.Plane.At(measure.FromMetres(10*x), measure.FromMetres(10*y)).Metres()/10)
			count++
		}
	}
	for _, row := range []struct{ want, got errors }{{want.TPS, spline}, {want.Plane, plane}} {
		assert.InDelta(t, row.want.Max, row.got.Max, e.Tolerance, e.Source)
		assert.InDelta(t, row.want.Mean, row.got.Mean/count, e.Tolerance, e.Source)
		assert.InDelta(t, row.want.RMS, math.Sqrt(row.got.RMS/count), e.Tolerance, e.Source)
	}
	assert.InDelta(t, want.At["0.5,0.5"], height(s, 0.5, 0.5), e.Tolerance)
	assert.InDelta(t, want.At["0.25,0.75"], height(s, 0.25, 0.75), e.Tolerance)
}

func TestSurfaceIsExactAtTheReadings(t *testing.T) {
	nodes, _ := frankeNodes(t)
	s, _ := terrain.NewSpline(nodes)
	for _, n := range nodes {
		assert.Equal(t, n.Height, s.At(n.X, n.Y))
		// A hair beside the reading the spline itself is met, not the reading.
		assert.InDelta(t, float64(n.Height), float64(s.At(n.X+1, n.Y)), 100)
	}
}

func TestPlaneThroughPublishedSpotHeights(t *testing.T) {
	e := fieldtest.ByID(t, "ground-surface.yaml", "surfaces", "SURF-01")
	var nodes []terrain.Node
	mean, constant := 0.0, 0.0
	points := fieldtest.Into[struct {
		Points [][3]float64 `yaml:"points_x_y_z"`
	}](t, e.Inputs).Points
	for _, p := range points {
		nodes = append(nodes, terrain.Node{X: measure.FromMetres(p[0]), Y: measure.FromMetres(p[1]), Height: measure.FromMetres(p[2])})
		mean += p[2] / float64(len(points))
	}
	for _, p := range points {
		constant += sq(p[2] - mean)
	}
	want := fieldtest.Into[struct {
		Constant float64 `yaml:"rss_constant"`
		Plane    float64 `yaml:"rss_plane"`
		At       float64 `yaml:"plane_at_3_3"`
		F        float64 `yaml:"F_value"`
		Terms    struct {
			CX float64 `yaml:"cx"`
			CY float64 `yaml:"cy"`
		} `yaml:"plane"`
	}](t, e.Result)
	s, ok := terrain.NewSpline(nodes)
	require.True(t, ok)
	assert.InDelta(t, want.Constant, constant, e.Tolerance, e.Source)
	assert.InDelta(t, want.Plane, s.Plane.Squares, e.Tolerance, e.Source)
	assert.InDelta(t, want.At, s.Plane.At(3*measure.Metre, 3*measure.Metre).Metres(), 0.0005)
	assert.InDelta(t, want.Terms.CX, s.Plane.SlopeX, 0.0005)
	assert.InDelta(t, want.Terms.CY, s.Plane.SlopeY, 0.0005)
	assert.InDelta(t, want.F, (constant-s.Plane.Squares)/2/(s.Plane.Squares/49), 0.0005)
	// The leverages of a plane add up to its three terms.
	sum := 0.0
	for _, n := range nodes {
		sum += s.Plane.Leverage(n.X, n.Y)
	}
	assert.InDelta(t, 3, sum, 1e-9)
}

// SURF-12: on readings from a plane the surface is the plane, everywhere.
func TestSurfaceOfAPlaneIsThePlane(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 12).Draw(t, "readings")
		tenths := rapid.IntRange(0, 200)
		draw := func(label string) measure.Length {
			return measure.Length(tenths.Draw(t, label)) * 100 * measure.Millimetre
		}
		plane := func(x, y measure.Length) measure.Length { return 2*measure.Metre + x.Scale(0.03) - y.Scale(0.05) }
		var nodes []terrain.Node
		for range n {
			x, y := draw("x"), draw("y")
			nodes = append(nodes, terrain.Node{X: x, Y: y, Height: plane(x, y)})
		}
		s, ok := terrain.NewSpline(nodes)
		if !ok {
			t.Skip("in a line")
		}
		x, y := draw("at x"), draw("at y")
		tolerance := 2e3 * (1 + s.Plane.Leverage(x, y)) // 2 µm, more where slim triangles reach far
		if got := s.At(x, y); math.Abs(float64(got-plane(x, y))) > tolerance {
			t.Fatalf("at %v, %v: %v, plane %v", x, y, got, plane(x, y))
		}
	})
}

func TestLeavingOutInOneGoAgreesWithLeavingOutInTurn(t *testing.T) {
	nodes, _ := frankeNodes(t)
	s, _ := terrain.NewSpline(nodes)
	residuals := s.LeftOut()
	for i, n := range nodes {
		others := append(append([]terrain.Node(nil), nodes[:i]...), nodes[i+1:]...)
		rest, ok := terrain.NewSpline(others)
		require.True(t, ok)
		assert.InDelta(t, (n.Height - rest.At(n.X, n.Y)).Metres(), residuals[i], 1e-6)
	}
}

func TestOutsideTheReadings(t *testing.T) {
	s, ok := terrain.NewSpline([]terrain.Node{node(0, 0, 0), node(1, 0, 0), node(1, 1, 0), node(0, 1, 0), node(0.5, 0, 0.1), node(0.5, 0.5, 0.2)})
	require.True(t, ok)
	assert.Len(t, s.Hull, 4, "neither the middle nor a place along a side is a corner")
	for _, row := range []struct{ x, y, want float64 }{
		{0.5, 0.5, 0}, {0, 0.3, 0}, {1.2, 0.5, 2}, {0.5, -0.3, 3}, {1.3, 1.4, 5},
	} {
		assert.InDelta(t, row.want, s.Outside(measure.FromMetres(10*row.x), measure.FromMetres(10*row.y)).Metres(), 1e-9)
	}
}

func TestReadingsInALineMakeNoSurface(t *testing.T) {
	_, ok := terrain.NewSpline([]terrain.Node{node(0, 0, 0), node(0.5, 0.5, 0), node(1, 1, 0.3)})
	assert.False(t, ok)
	_, ok = terrain.NewSpline([]terrain.Node{node(0, 0, 0), node(0, 0, 0.1), node(1, 1, 0.3)})
	assert.False(t, ok, "two readings at one place count once")
}
