package setout

import (
	"math"
	"math/rand/v2"
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

// The note of case QUAD-04: of the single mistakes only those on the two short
// sides come out at an inch, and these two cannot be told apart.
func TestOnlyTheSidesMisreadByAnInchLookLikeTheUsualSlip(t *testing.T) {
	a, err := Adjust(sixInches(192, 144, 192, 145, 240, 240), measure.Sixteenth)
	require.NoError(t, err)
	a.nameSlips(measure.Imperial)
	c := &Check{Adjustment: a, Rectangle: sixteenByTwelve}
	assert.Equal(t, []string{"A5-C5", "C1-A1"}, c.Suspects())
	assert.Equal(t, "an inch (the tape held at its 1 in mark)", a.Slips[1].Usual)
	assert.Empty(t, a.Slips[4].Usual+a.Slips[5].Usual)
}

// A tape held at its 1 in mark reads an inch too much and never too little; a case
// that was not added makes a reading too short.
func TestSlipsAreNamedByTheirDirection(t *testing.T) {
	for _, row := range []struct {
		off  float64
		want string
	}{
		{1, "an inch (the tape held at its 1 in mark)"}, {-1, "an inch (taken off once too often)"},
		{2, "two inches"}, {-2, "two inches (the tape's case not added)"}, {3, "9 read for 6"}, {-3, "6 read for 9"},
	} {
		a, err := Adjust(sixInches(192, 144, 192, 144, 240+row.off, 240), measure.Sixteenth)
		require.NoError(t, err)
		a.nameSlips(measure.Imperial)
		assert.Equal(t, row.want, a.Slips[4].Usual)
	}
}

func TestReadingsThatAgreeHoldNoSlip(t *testing.T) {
	a, err := Adjust(sixInches(192.125, 144.1875, 192.5, 143.8125, 241.1875, 239.3125), measure.Sixteenth)
	require.NoError(t, err)
	a.nameSlips(measure.Imperial)
	assert.Empty(t, (&Check{Adjustment: a, Rectangle: sixteenByTwelve}).Suspects())
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

// Any six lengths are refused, or they give a figure of which everything is a
// number: redundancies that add up to one, and slips that a tape could make.
func TestAnySixLengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var m Six
		for i := range m {
			m[i] = inches(rapid.Float64Range(0.5, 600).Draw(t, "length"))
		}
		a, err := Adjust(m, measure.Sixteenth)
		if err != nil {
			assert.ErrorIs(t, err, ErrNoFigure)
			return
		}
		var sum float64
		for i, r := range a.Redundancy {
			sum += r
			assert.Positive(t, r)
			assert.Less(t, a.Slips[i].Size.Abs(), 1000*1000*measure.Metre)
		}
		assert.InDelta(t, 1, sum, 1e-6)
		assert.GreaterOrEqual(t, a.TestValue, 0.0)
		for _, hold := range a.Holds(sixteenByTwelve, measure.Sixteenth) {
			for _, move := range hold.Moves {
				assert.GreaterOrEqual(t, move.AlongError, measure.Length(0))
			}
		}
	})
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

// A second way to the standard deviations of the moves: measure the same frame
// again and again with a tape of known error, and look at how the moves scatter.
func TestMovesScatterAsTheirDeviationsSay(t *testing.T) {
	const times = 4000
	random := rand.New(rand.NewPCG(7, 11))
	truth := []float64{192.125, 144.1875, 192.5, 143.8125, 241.1875, 239.3125}
	known, err := Adjust(sixInches(truth...), measure.Sixteenth)
	require.NoError(t, err)
	expected := known.Holds(sixteenByTwelve, measure.Sixteenth)
	var sums, squares [2][4][2]float64
	for range times {
		noisy := make([]float64, 6)
		for i, l := range truth {
			noisy[i] = l + random.NormFloat64()/16
		}
		a, err := Adjust(sixInches(noisy...), measure.Sixteenth)
		require.NoError(t, err)
		holds := a.Holds(sixteenByTwelve, measure.Sixteenth)
		for h := range sums {
			for i, m := range holds[h].Moves {
				for k, v := range []float64{m.Along.Inches(), m.Across.Inches()} {
					sums[h][i][k] += v
					squares[h][i][k] += v * v
				}
			}
		}
	}
	for h := range sums {
		for i := range sums[h] {
			for k, want := range []float64{expected[h].Moves[i].AlongError.Inches(), expected[h].Moves[i].AcrossError.Inches()} {
				mean := sums[h][i][k] / times
				scatter := math.Sqrt(squares[h][i][k]/times - mean*mean)
				assert.InDelta(t, want, scatter, 0.002+0.05*want, "hold %d corner %d axis %d", h, i, k)
			}
		}
	}
	held := expected[0].Moves
	assert.Zero(t, held[0].AlongError+held[0].AcrossError+held[1].AcrossError, "what is held does not move")
}

// The least mistake that shows, as worked by hand for a frame of 16 by 12 ft:
// 2.58 σ / √r with r = 1/4 for a diagonal, 0.16 and 0.09 for the sides.
func TestLeastMistakeThatShows(t *testing.T) {
	a, err := Adjust(sixInches(192, 144, 192, 144, 240, 240), measure.Sixteenth)
	require.NoError(t, err)
	for i, want := range []float64{0.40, 0.54, 0.40, 0.54, 0.32, 0.32} {
		assert.InDelta(t, want, a.Shows()[i].Inches(), 0.005)
	}
}

// One mistake in one reading is found, and its size is among the single slips.
func TestASingleMistakeIsAmongTheSlips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		long, wide := rapid.Float64Range(60, 400).Draw(t, "long"), rapid.Float64Range(60, 400).Draw(t, "wide")
		d := math.Hypot(long, wide)
		lengths := []float64{long, wide, long, wide, d, d}
		which, by := rapid.IntRange(0, 5).Draw(t, "which"), rapid.Float64Range(-2, 2).Draw(t, "by")
		lengths[which] += by
		a, err := Adjust(sixInches(lengths...), measure.Sixteenth)
		require.NoError(t, err)
		assert.InDelta(t, by, a.Slips[which].Size.Inches(), 0.02+0.02*math.Abs(by))
	})
}

// Turning the names round the frame, or seeing it from behind, changes neither
// the test value nor how much the corners move.
func TestNamesOfTheCornersDoNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var m Six
		for i, l := range []float64{192, 144, 192, 144, 240, 240} {
			m[i] = inches(l + rapid.Float64Range(-0.5, 0.5).Draw(t, "error"))
		}
		a, err := Adjust(m, measure.Sixteenth)
		require.NoError(t, err)
		half, err := Adjust(Six{m[2], m[3], m[0], m[1], m[4], m[5]}, measure.Sixteenth) // begun at the far corner
		require.NoError(t, err)
		back, err := Adjust(Six{m[0], m[3], m[2], m[1], m[5], m[4]}, measure.Sixteenth) // seen from behind
		require.NoError(t, err)
		assert.InDelta(t, a.TestValue, half.TestValue, 1e-6)
		assert.InDelta(t, a.TestValue, back.TestValue, 1e-6)
		fit := a.Holds(sixteenByTwelve, measure.Sixteenth)[1]
		turned := half.Holds(sixteenByTwelve, measure.Sixteenth)[1]
		for i := range 4 {
			assert.InDelta(t, fit.Moves[i].Size().Inches(), turned.Moves[(i+2)%4].Size().Inches(), 1e-4)
		}
	})
}
