package frame_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	. "pierbook/calc/measure"
)

// By hand, for the shed of 16 by 12 ft.
//
// One joist: centres count from the frame end, so joist 2 has its centre at
// 16 in and its near face at 16 − 3/4 = 15 1/4 in, where the tape is marked; it
// covers 15 1/4 to 16 3/4. The eleventh running joist stands at 176 in; the
// twelfth would have its far face at 192 3/4, over the end joist that begins at
// 192 − 1 1/2 = 190 1/2. Two ends and eleven between make 13. Each reaches from
// rim to rim: 144 − 2 × 1 1/2 = 141 in.
func TestJoistsOfTheShed(t *testing.T) {
	f := lay(t, shed())
	require.Len(t, f.Joists, 13)
	assert.Equal(t, []Length{0, 61 * in / 4, 125 * in / 4, 189 * in / 4}, near(f)[:4], "15 1/4, 31 1/4, 47 1/4: common practice, no source")
	assert.Equal(t, 190*in+in/2, near(f)[12])
	for _, j := range f.Joists {
		assert.Equal(t, 141*in, j.Long())
		assert.Equal(t, "beyond", j.MarkSide)
	}
	assert.Equal(t, 16*in, f.WidestBay)
}

func near(f *frame.Frame) []Length {
	var marks []Length
	for _, j := range f.Joists {
		marks = append(marks, j.Near)
	}
	return marks
}

// Common practice, no source: piers about 4 ft apart under a 16 ft beam are five.
func TestFivePiersFourFeetApartUnderSixteenFeet(t *testing.T) {
	j := shed()
	j.Frame.Piers = job.PierWish{Spacing: 4 * ft}
	assert.Equal(t, 5, lay(t, j).PerLine(0))
}

// Common practice, no source: a 16 ft beam may be a 10 ft and a 6 ft piece with
// the joint over a pier.
//
// One splice by hand: sticks of 10 ft, piers at 24, 72, 120 and 168 in. One joint
// will do, at 72 (pieces of 72 and 120) or at 120 (120 and 72). Line A takes the
// longer piece first, line B the other way, line C as A.
func TestSixteenFootBeamOfTenAndSix(t *testing.T) {
	j := shed()
	j.Frame.Piers = job.PierWish{PerLine: 4, First: ptr(2 * ft), Last: ptr(2 * ft)}
	j.Yard.Stock["4x6"] = lengths(10)
	f := lay(t, j)
	var first []Length
	for _, line := range f.Lines {
		require.Len(t, line.Plies, 1)
		require.Len(t, line.Plies[0].Pieces, 2)
		first = append(first, line.Plies[0].Pieces[0].Long())
	}
	assert.Equal(t, []Length{10 * ft, 6 * ft, 10 * ft}, first)
	b2, _ := f.Pier("B2")
	assert.True(t, b2.Splice)
	a2, _ := f.Pier("A2")
	assert.False(t, a2.Splice)
}

func ptr(l Length) *Length { return &l }

func TestLinesStandEquallyFromFaceToFace(t *testing.T) {
	f := lay(t, shed())
	assert.Equal(t, []Length{7 * in / 4, 72 * in, 144*in - 7*in/4}, []Length{f.Lines[0].Y, f.Lines[1].Y, f.Lines[2].Y})
	assert.Equal(t, 7*in/4, f.Piers[0].X)
	assert.Equal(t, 96*in, f.Piers[2].X)
}
