package setout

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
)

func inches(v float64) measure.Length { return measure.FromMetres(v * 0.0254) }

func sixInches(v ...float64) (s Six) {
	for i := range s {
		s[i] = inches(v[i])
	}
	return s
}

var sixteenByTwelve = Rectangle{Name: "frame", Corners: [4]string{"A1", "A5", "C5", "C1"}, Length: 16 * measure.Foot, Width: 12 * measure.Foot}

// Six distances printed as program data by Zaki, El Kady and Ahmed, "A new
// treatment for the adjustment of trilateration networks", ISPRS Congress XVII
// part B3 (1992); the residuals were computed from them by two methods (their
// own page of corrections could not be read).
func TestAdjustmentOfPublishedQuadrilateral(t *testing.T) {
	measured := Six{}
	for i, m := range []float64{1341.785, 1937.887, 1511.014, 2167.437, 2775.364, 2173.715} {
		measured[i] = measure.FromMetres(m)
	}
	a, err := Adjust(measured, 10*measure.Millimetre)
	require.NoError(t, err)
	for i, want := range []float64{-0.0035, -0.0049, -0.0028, -0.0041, 0.0062, 0.0047} {
		assert.InDelta(t, want, a.Residual[i].Metres(), 0.0001, "residual %d", i)
	}
	for i, want := range []float64{0.1012, 0.1988, 0.064, 0.1397, 0.3134, 0.1829} {
		assert.InDelta(t, want, a.Redundancy[i], 0.0001, "redundancy %d", i)
	}
	assert.InDelta(t, 1.105, a.TestValue, 0.001)
}

// Frames of 16 by 12 ft with given readings; values computed twice, by
// Gauss–Newton and by the condition that the Cayley–Menger determinant is zero.
func TestAdjustmentOfMeasuredFrames(t *testing.T) {
	rows := []struct {
		name      string
		measured  Six
		test      float64
		verdict   Verdict
		slips     []float64
		hold, fit [][2]float64
	}{
		{
			name: "racked and over length", measured: sixInches(192.125, 144.1875, 192.5, 143.8125, 241.1875, 239.3125),
			test: 0.03, verdict: Agree, slips: []float64{-0.005, -0.006, -0.005, -0.006, 0.004, 0.004},
			hold: [][2]float64{{0, 0}, {-0.1258, 0}, {-1.3449, -0.1829}, {-0.8445, 0.1894}},
			fit:  [][2]float64{{0.4381, 0.1864}, {0.3119, -0.1893}, {-0.6254, -0.3725}, {-0.1246, 0.3755}},
		},
		{
			name: "an inch on one short side", measured: sixInches(192, 144, 192, 145, 240, 240),
			test: 4.797, verdict: Mistake, slips: []float64{0.75, 0.994, 0.75, 1.001, -0.6, -0.6},
			hold: [][2]float64{{0, 0}, {0.1198, 0}, {-0.2555, 0.0909}, {-0.3778, -0.9097}},
			fit:  [][2]float64{{-0.059, 0.4552}, {0.0601, -0.0454}, {0.0603, 0.0451}, {-0.0614, -0.4549}},
		},
		{
			name: "doubtful", measured: sixInches(192.125, 144.1875, 192.5, 143.8125, 241.1875, 239.6875),
			test: 3.02, verdict: MeasureAgain, slips: []float64{-0.471, -0.631, -0.472, -0.629, 0.376, 0.379},
			hold: [][2]float64{{0, 0}, {-0.2006, 0}, {-1.1849, -0.2406}, {-0.6098, 0.1322}},
			fit:  [][2]float64{{0.4003, 0.1586}, {0.1995, -0.1043}, {-0.5876, -0.345}, {-0.0123, 0.2907}},
		},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			a, err := Adjust(row.measured, measure.Sixteenth)
			require.NoError(t, err)
			assert.InDelta(t, row.test, a.TestValue, 0.001)
			assert.Equal(t, row.verdict, a.Verdict)
			for i, want := range row.slips {
				assert.InDelta(t, want, a.Slips[i].Size.Inches(), 0.001, "slip %d", i)
			}
			holds := a.Holds(sixteenByTwelve, measure.Sixteenth)
			assertMoves(t, row.hold, holds[0].Moves)
			// The reference gives best-fit moves in the figure's axes, a turn of
			// about a tenth of a degree from the rectangle's own.
			assertMoves(t, row.fit, holds[1].Moves)
		})
	}
}

func assertMoves(t *testing.T, want [][2]float64, got [4]Move) {
	t.Helper()
	for i, w := range want {
		assert.InDelta(t, w[0], got[i].Along.Inches(), 0.003, "corner %d along", i)
		assert.InDelta(t, w[1], got[i].Across.Inches(), 0.003, "corner %d across", i)
	}
}

func TestOnlyTheSidesMisreadByAnInchLookLikeTheUsualSlip(t *testing.T) {
	a, err := Adjust(sixInches(192, 144, 192, 145, 240, 240), measure.Sixteenth)
	require.NoError(t, err)
	var named []int
	for i, s := range a.Slips {
		if s.Usual == "an inch (the tape held at its 1 in mark)" {
			named = append(named, i)
		}
	}
	assert.Contains(t, named, 1)
	assert.Contains(t, named, 3)
	assert.NotContains(t, named, 4)
	assert.NotContains(t, named, 5)
}

// A second way to the same figure: the least-squares step by QR in a general
// linear-algebra library, repeated from the same start.
func TestAdjustmentAgreesWithGeneralLeastSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var m Six
		for i, l := range []float64{192, 144, 192, 144, 240, 240} {
			m[i] = inches(l + rapid.Float64Range(-0.5, 0.5).Draw(t, "error"))
		}
		a, err := Adjust(m, measure.Sixteenth)
		require.NoError(t, err)
		p, err := startFigure(m)
		require.NoError(t, err)
		for range 20 {
			rows, misfit := linearise(p, m)
			design := mat.NewDense(6, 5, nil)
			for i, row := range rows {
				design.SetRow(i, row[:])
			}
			var step mat.VecDense
			require.NoError(t, step.SolveVec(design, mat.NewVecDense(6, misfit[:])))
			p[1].x += step.AtVec(0)
			p[2].x += step.AtVec(1)
			p[2].y += step.AtVec(2)
			p[3].x += step.AtVec(3)
			p[3].y += step.AtVec(4)
		}
		for i := range 4 {
			assert.InDelta(t, p[i].x, a.corners[i].x, 1e-9)
			assert.InDelta(t, p[i].y, a.corners[i].y, 1e-9)
		}
		var sum float64
		for _, r := range a.Redundancy {
			sum += r
		}
		assert.InDelta(t, 1, sum, 1e-9, "six readings, five unknowns")
	})
}

func TestTrueFrameNeedsNoMove(t *testing.T) {
	a, err := Adjust(sixInches(192, 144, 192, 144, 240, 240), measure.Sixteenth)
	require.NoError(t, err)
	for _, h := range a.Holds(sixteenByTwelve, measure.Sixteenth) {
		assert.Equal(t, 4, h.Stay, h.Name)
	}
	assert.Equal(t, sixInches(192, 144, 192, 144, 240, 240), a.Adjusted)
}

func TestLengthsThatMakeNoFigureAreRefused(t *testing.T) {
	for _, m := range []Six{
		{},
		sixInches(192, 144, 192, 144, 400, 240),
		sixInches(192, 144, 192, 144, 240, 30),
	} {
		_, err := Adjust(m, measure.Sixteenth)
		assert.ErrorIs(t, err, ErrNoFigure)
	}
}

func TestFewestStakesNeverLeavesFewerThanTheOthers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var m Six
		for i, l := range []float64{192, 144, 192, 144, 240, 240} {
			m[i] = inches(l + rapid.Float64Range(-1, 1).Draw(t, "error"))
		}
		a, err := Adjust(m, measure.Sixteenth)
		require.NoError(t, err)
		h := a.Holds(sixteenByTwelve, measure.Inch/4)
		assert.GreaterOrEqual(t, h[2].Stay, h[0].Stay)
		assert.LessOrEqual(t, sumOfSquares(h[1].Moves), sumOfSquares(h[0].Moves)*(1+1e-9)+1e-15)
	})
}

func BenchmarkAdjust(b *testing.B) {
	m := sixInches(192.125, 144.1875, 192.5, 143.8125, 241.1875, 239.6875)
	b.ReportAllocs()
	for b.Loop() {
		if a, err := Adjust(m, measure.Sixteenth); err != nil || math.IsNaN(a.TestValue) {
			b.Fatal(err)
		}
	}
}
