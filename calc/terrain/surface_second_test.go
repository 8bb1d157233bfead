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

// Three other ways from a few heights to a surface. Each is first held against a
// published number, and then the surface of the program against it.

// spot is a place in plan with its height.
type spot struct{ x, y, z float64 }

// inverseDistance weighs all heights by 1/distance^power.
func inverseDistance(spots []spot, x, y, power float64) float64 {
	sum, weights := 0.0, 0.0
	for _, s := range spots {
		d := math.Hypot(s.x-x, s.y-y)
		if d == 0 {
			return s.z
		}
		w := math.Pow(d, -power)
		sum, weights = sum+w*s.z, weights+w
	}
	return sum / weights
}

// bilinear goes through the four corners of one cell: (x0, y0), (x1, y0), (x0, y1), (x1, y1).
func bilinear(c [4]spot, x, y float64) float64 {
	u, v := (x-c[0].x)/(c[1].x-c[0].x), (y-c[0].y)/(c[2].y-c[0].y)
	return c[0].z*(1-u)*(1-v) + c[1].z*u*(1-v) + c[2].z*(1-u)*v + c[3].z*u*v
}

// facets is a triangulation with flat faces.
type facets [][3]spot

// delaunay keeps every triangle whose circumscribed circle holds no other spot.
// It tries all of them, and is unique where no four spots lie on one circle.
func delaunay(spots []spot) facets {
	var faces facets
	for i := range spots {
		for k := i + 1; k < len(spots); k++ {
			for m := k + 1; m < len(spots); m++ {
				a, b, c := spots[i], spots[k], spots[m]
				turn := cross(a, b, c)
				if turn == 0 {
					continue
				}
				if turn < 0 {
					b, c = c, b
				}
				empty := true
				for n, s := range spots {
					if n != i && n != k && n != m && inCircle(a, b, c, s) > 0 {
						empty = false
						break
					}
				}
				if empty {
					faces = append(faces, [3]spot{a, b, c})
				}
			}
		}
	}
	return faces
}

func cross(a, b, c spot) float64 { return (b.x-a.x)*(c.y-a.y) - (c.x-a.x)*(b.y-a.y) }

// inCircle is positive when s lies inside the circle through a, b and c, which
// turn to the left.
func inCircle(a, b, c, s spot) float64 {
	row := func(p spot) (x, y, q float64) { x, y = p.x-s.x, p.y-s.y; return x, y, x*x + y*y }
	ax, ay, aq := row(a)
	bx, by, bq := row(b)
	cx, cy, cq := row(c)
	return ax*(by*cq-bq*cy) - ay*(bx*cq-bq*cx) + aq*(bx*cy-by*cx)
}

// at returns the height on the face over a place, and whether there is one.
func (f facets) at(x, y float64) (float64, bool) {
	p := spot{x: x, y: y}
	for _, t := range f {
		a, b, c := cross(t[1], t[2], p), cross(t[2], t[0], p), cross(t[0], t[1], p)
		if a >= -1e-12 && b >= -1e-12 && c >= -1e-12 {
			return (a*t[0].z + b*t[1].z + c*t[2].z) / (a + b + c), true
		}
	}
	return 0, false
}

// misses gathers how far off a surface is from a function.
type misses struct {
	count          int
	Max, Mean, RMS float64
}

func (m *misses) note(off float64) {
	off = math.Abs(off)
	m.count++
	m.Max, m.Mean, m.RMS = max(m.Max, off), m.Mean+off, m.RMS+off*off
}

func (m *misses) over() misses {
	n := float64(m.count)
	return misses{m.count, m.Max, m.Mean / n, math.Sqrt(m.RMS / n)}
}

func frankeSpots(t testing.TB) []spot {
	nodes, _ := frankeNodes(t)
	spots := make([]spot, len(nodes))
	for i, n := range nodes {
		spots[i] = spot{n.X.Metres() / 10, n.Y.Metres() / 10, n.Height.Metres() / 10}
	}
	return spots
}

// onGrid calls each with the points of the 33 by 33 grid on the unit square.
func onGrid(each func(x, y float64)) {
	for i := range 33 {
		for k := range 33 {
			each(float64(i)/32, float64(k)/32)
		}
	}
}

// SURF-07: flat faces on Franke's nodes, and the thin plate on the same places.
func TestThinPlateIsNearerThanFlatFaces(t *testing.T) {
	e := fieldtest.ByID(t, "ground-surface.yaml", "surfaces", "SURF-07")
	want := fieldtest.Into[struct {
		Triangles      int
		Inside         int `yaml:"grid_points_inside_hull"`
		Outside        int `yaml:"grid_points_outside"`
		Max, Mean, RMS float64
		At             map[string]float64
	}](t, e.Result)
	faces := delaunay(frankeSpots(t))
	nodes, _ := frankeNodes(t)
	s, ok := terrain.NewSpline(nodes)
	require.True(t, ok)
	var flat, plate misses
	outside := 0
	onGrid(func(x, y float64) {
		z, inside := faces.at(x, y)
		if !inside {
			outside++
			assert.Positive(t, s.Outside(measure.FromMetres(10*x), measure.FromMetres(10*y)), "(%g, %g) lies outside the same hull", x, y)
			return
		}
		flat.note(z - franke(x, y))
		plate.note(height(s, x, y) - franke(x, y))
	})
	assert.Len(t, faces, want.Triangles)
	assert.Equal(t, [2]int{want.Inside, want.Outside}, [2]int{flat.count, outside})
	got := flat.over()
	assert.InDelta(t, want.Max, got.Max, e.Tolerance, e.Source)
	assert.InDelta(t, want.Mean, got.Mean, e.Tolerance, e.Source)
	assert.InDelta(t, want.RMS, got.RMS, e.Tolerance, e.Source)
	for _, row := range []struct {
		at   string
		x, y float64
	}{{"0.5,0.5", 0.5, 0.5}, {"0.25,0.75", 0.25, 0.75}} {
		z, _ := faces.at(row.x, row.y)
		assert.InDelta(t, want.At[row.at], z, e.Tolerance)
	}
	ours := plate.over()
	assert.Less(t, ours.Mean, 0.75*got.Mean)
	assert.Less(t, ours.RMS, 0.75*got.RMS)
	assert.Less(t, ours.Max, got.Max)
}

// SURF-04, the other half: inverse distance on the same nodes is three times as
// far off as the thin plate.
func TestThinPlateIsNearerThanInverseDistance(t *testing.T) {
	e := fieldtest.ByID(t, "ground-surface.yaml", "surfaces", "SURF-04")
	want := fieldtest.Into[struct {
		Weighed struct{ Max, Mean, RMS float64 } `yaml:"idw2"`
		At      map[string]float64               `yaml:"idw2_at"`
	}](t, e.Result)
	spots := frankeSpots(t)
	nodes, _ := frankeNodes(t)
	s, _ := terrain.NewSpline(nodes)
	var weighed, plate misses
	onGrid(func(x, y float64) {
		weighed.note(inverseDistance(spots, x, y, 2) - franke(x, y))
		plate.note(height(s, x, y) - franke(x, y))
	})
	got := weighed.over()
	assert.InDelta(t, want.Weighed.Max, got.Max, e.Tolerance)
	assert.InDelta(t, want.Weighed.Mean, got.Mean, e.Tolerance)
	assert.InDelta(t, want.Weighed.RMS, got.RMS, e.Tolerance)
	assert.InDelta(t, want.At["0.5,0.5"], inverseDistance(spots, 0.5, 0.5, 2), e.Tolerance)
	assert.InDelta(t, want.At["0.25,0.75"], inverseDistance(spots, 0.25, 0.75, 2), e.Tolerance)
	assert.Less(t, plate.over().Mean, got.Mean/3)
}

// SURF-09: three spots make a plane for the thin plate; inverse distance leaves
// the plane, but both stay between the least and the most of the three.
func TestThreeSpotsByInverseDistanceAndByThePlate(t *testing.T) {
	e := fieldtest.ByID(t, "ground-surface.yaml", "surfaces", "SURF-09")
	in := fieldtest.Into[struct {
		Points [][3]float64
		At     [2]float64
		Power  float64
	}](t, e.Inputs)
	want := fieldtest.Into[struct {
		Distances []float64
		Value     float64
	}](t, e.Result)
	var spots []spot
	var nodes []terrain.Node
	for i, p := range in.Points {
		spots = append(spots, spot{p[0], p[1], p[2]})
		nodes = append(nodes, node(p[0], p[1], p[2]))
		assert.InDelta(t, want.Distances[i], math.Hypot(p[0]-in.At[0], p[1]-in.At[1]), 1e-9)
	}
	assert.InDelta(t, want.Value, inverseDistance(spots, in.At[0], in.At[1], in.Power), e.Tolerance, e.Source)
	s, ok := terrain.NewSpline(nodes)
	require.True(t, ok)
	face := facets{{spots[1], spots[2], spots[0]}}
	if cross(spots[1], spots[2], spots[0]) < 0 {
		face = facets{{spots[1], spots[0], spots[2]}}
	}
	middleX, middleY := (69.0+59+74)/3, (76.0+67+79)/3
	flat, inside := face.at(middleX, middleY)
	require.True(t, inside)
	assert.InDelta(t, flat, height(s, middleX, middleY), 1e-6, "a plate through three spots is the plane")
}

// SURF-11: on the middle lines of a cell, what four corners have beyond a plane
// is nought by symmetry, in the plate as in the bilinear surface: both must give
// the published value there.
func TestThinPlateOnTheMiddleLineOfACell(t *testing.T) {
	e := fieldtest.ByID(t, "ground-surface.yaml", "surfaces", "SURF-11")
	in := fieldtest.Into[struct {
		Corners map[string]float64
		At      [2]float64
	}](t, e.Inputs)
	want := fieldtest.Into[struct{ Value float64 }](t, e.Result)
	corners := [4]spot{{14, 20, in.Corners["14,20"]}, {15, 20, in.Corners["15,20"]}, {14, 21, in.Corners["14,21"]}, {15, 21, in.Corners["15,21"]}}
	assert.InDelta(t, want.Value, bilinear(corners, in.At[0], in.At[1]), e.Tolerance, e.Source)
	var nodes []terrain.Node
	for _, c := range corners {
		nodes = append(nodes, node(c.x, c.y, c.z))
	}
	s, ok := terrain.NewSpline(nodes)
	require.True(t, ok)
	assert.InDelta(t, want.Value, height(s, in.At[0], in.At[1]), 1e-7, e.Source)
	assert.InDelta(t, bilinear(corners, 14.8, 20.5), height(s, 14.8, 20.5), 1e-7, "the other middle line")
}

// SURF-12, the other methods: on a plane flat faces and the bilinear surface are
// the plane as the plate is; inverse distance is not, and stays within the heights.
func TestEveryMethodOnAPlane(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plane := func(x, y float64) float64 { return 2 + 0.03*x - 0.05*y }
		draw := func(label string) float64 { return float64(rapid.IntRange(0, 100).Draw(t, label)) / 10 }
		cell := [4]spot{{0, 0, plane(0, 0)}, {10, 0, plane(10, 0)}, {0, 10, plane(0, 10)}, {10, 10, plane(10, 10)}}
		spots := append([]spot(nil), cell[:]...)
		for range rapid.IntRange(0, 5).Draw(t, "more") {
			x, y := draw("x"), draw("y")
			spots = append(spots, spot{x, y, plane(x, y)})
		}
		var nodes []terrain.Node
		low, high := math.Inf(1), math.Inf(-1)
		for _, s := range spots {
			nodes = append(nodes, terrain.Node{X: measure.FromMetres(s.x), Y: measure.FromMetres(s.y), Height: measure.FromMetres(s.z)})
			low, high = min(low, s.z), max(high, s.z)
		}
		s, ok := terrain.NewSpline(nodes)
		require.True(t, ok)
		x, y := draw("at x"), draw("at y")
		plate := s.At(measure.FromMetres(x), measure.FromMetres(y)).Metres()
		require.InDelta(t, bilinear(cell, x, y), plate, 1e-5)
		if z, inside := delaunay(spots).at(x, y); inside {
			require.InDelta(t, z, plate, 1e-5)
		}
		weighed := inverseDistance(spots, x, y, 2)
		require.True(t, weighed >= low-1e-9 && weighed <= high+1e-9)
	})
}
