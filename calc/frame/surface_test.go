package frame_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	. "pierbook/calc/measure"
)

// One row by hand, the second of the shed: its first joint is at joist 5, 64 in
// from the end, two joists before the joint of the first row at 96. The first
// panel is cut to 64 − 1/16 = 63 15/16, so that the gap of 1/8 lies over the
// joist's middle; the next begins at 64 1/16 and, laid whole, ends at 160 1/16;
// the joist there covers 159 1/4 to 160 3/4, so that end has 13/16 and the next
// one, from 160 3/16, 9/16 on it. 192 − 160 3/16 = 31 13/16 is left, and comes with
// the first from one sheet: 63 15/16 + 1/8 kerf + 31 13/16 = 95 7/8.
func TestSecondRowOfTheShed(t *testing.T) {
	f := lay(t, shed())
	var row []frame.Panel
	for _, p := range f.Surface.Panels {
		if p.Row == 2 {
			row = append(row, p)
		}
	}
	require.Len(t, row, 3)
	assert.Equal(t, []Length{0, 64*in + in/16, 160*in + 3*in/16}, []Length{row[0].X, row[1].X, row[2].X})
	assert.Equal(t, []Length{63*in + 15*in/16, 96 * in, 31*in + 13*in/16}, []Length{row[0].Length, row[1].Length, row[2].Length})
	assert.Equal(t, row[0].Sheet, row[2].Sheet)
	assert.True(t, row[2].FromOffcut)
}

// Three rows of 47 1/2 in with two gaps make 142 3/4 in, 11 ft 10 3/4 in. On 12 ft
// the last row would be 144 − 142 7/8 = 1 1/8 in wide, which nobody can nail: it and
// the first are ripped to (47 1/2 + 1 1/8) / 2 = 24 5/16 in each.
func TestRippedRowIsSaidBeforeAnythingIsOrdered(t *testing.T) {
	f := lay(t, shed())
	last := f.Surface.Rows[len(f.Surface.Rows)-1]
	assert.True(t, last.Ripped)
	assert.Equal(t, []Length{24*in + 5*in/16, 47*in + in/2, 47*in + in/2, 24*in + 5*in/16}, rowWidths(f))
	assert.Contains(t, f.Surface.Rows[0].Comment, "off the edge along side A")
	assert.Contains(t, sayings(f), `A width of 11′ 10 3/4″ would save a ripped row and 2 sheets.`)
	j := shed()
	j.Platform.Width = 142*in + 3*in/4
	saved := lay(t, j)
	assert.Len(t, saved.Surface.Rows, 3)
	assert.Equal(t, f.Surface.Sheets-2, saved.Surface.Sheets)
	assert.NotContains(t, sayings(saved), "ripped row")
}

func rowWidths(f *frame.Frame) []Length {
	var widths []Length
	for _, row := range f.Surface.Rows {
		widths = append(widths, row.Width)
	}
	return widths
}

// The advice tells how many sheets the smaller floor saves, as laying it shows.
func TestSavingTellsTheNumberOfSheets(t *testing.T) {
	j := shed()
	j.Platform.Length, j.Frame.Piers.PerLine = 28*ft, 8
	j.Platform.Width = 12*ft + 2*in
	f := lay(t, j)
	j.Platform.Width = 142*in + 3*in/4
	assert.Equal(t, 3, f.Surface.Sheets-lay(t, j).Surface.Sheets)
	assert.Contains(t, sayings(f), "would save a ripped row and 3 sheets")
}

// A yard that takes no account of the saw, and a width of whole rows.
func TestWholeRowsWithoutKerf(t *testing.T) {
	j := shed()
	j.Platform.Width, j.Yard.Kerf = 142*in+3*in/4, 0
	f := lay(t, j)
	assert.Equal(t, 6, f.Surface.Sheets)
	assert.False(t, f.Surface.Rows[2].Ripped)
}

func sayings(f *frame.Frame) string {
	all := ""
	for _, a := range f.Advice {
		all += a.Saying + "\n"
	}
	return strings.ReplaceAll(all, "\u00a0", " ")
}

// Panels and the gaps between them cover the floor exactly: along a row panel,
// gap, panel; across it row, gap, row. Every end joint has both ends on one
// joist, and no piece is longer or wider than a sheet.
func TestPanelsCoverTheFloorAndJoinOnJoists(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		wish := j.Platform.Surface
		y := Length(0)
		panels := f.Surface.Panels
		for i, row := range f.Surface.Rows {
			require.Equal(t, y, row.Y)
			x := Length(0)
			for k, p := range panels[:row.Panels] {
				require.Equal(t, [4]Length{x, row.Y, row.Width, min(p.Length, wish.FaceLength)}, [4]Length{p.X, p.Y, p.Width, p.Length})
				if k > 0 {
					require.True(t, heldByOneJoist(f, x-wish.Gap, x), "%s begins at %v", p.Name, x)
				}
				x += p.Length + wish.Gap
			}
			require.GreaterOrEqual(t, f.Length, x-wish.Gap)
			if wish.Kind == "panels" {
				require.LessOrEqual(t, f.Length-(x-wish.Gap), wish.Gap)
			} else {
				require.Equal(t, f.Length, x-wish.Gap)
			}
			panels = panels[row.Panels:]
			y += row.Width + wish.Gap
			require.Equal(t, row.Width < wish.FaceWidth, row.Ripped)
			require.True(t, !row.Ripped || i == len(f.Surface.Rows)-1 || i == 0)
			if row.Ripped && len(f.Surface.Rows) > 1 {
				require.GreaterOrEqual(t, row.Width, min(24*in, wish.FaceWidth/2)-in/16, "a strip too narrow to lay")
			}
		}
		require.Empty(t, panels)
		if wish.Kind == "panels" {
			require.LessOrEqual(t, f.Width-(y-wish.Gap), wish.Gap)
			require.GreaterOrEqual(t, f.Width, y-wish.Gap)
		}
	})
}

func heldByOneJoist(f *frame.Frame, end, next Length) bool {
	for _, joist := range f.Joists {
		if joist.Near+in/2 <= end && next+in/2 <= joist.Near+f.Sections.Joist.Width {
			return true
		}
	}
	return false
}

// Panels whose length is sized for spacing are 1/8 in short of the module (95 7/8
// in, single-floor plywood data sheet, PS 1-09), so that with their gaps they end
// on joists 16 or 24 in apart; on 8 ft each row is one whole panel.
func TestPanelsSizedForSpacingAreLaidWhole(t *testing.T) {
	j := shed()
	j.Platform.Surface.FaceLength = 95*in + 7*in/8
	j.Platform.Length, j.Platform.Width, j.Frame.Piers.PerLine = 8*ft, 6*ft, 3
	f := lay(t, j)
	require.Len(t, f.Surface.Panels, 2)
	assert.Equal(t, 95*in+7*in/8, f.Surface.Panels[0].Length)
	assert.Equal(t, 2, f.Surface.Sheets)
	assert.NotContains(t, sayings(f), "laid whole")
	assert.NotContains(t, sayings(f), "A length of")

	j.Platform.Length, j.Frame.Piers.PerLine = 16*ft, 5
	for _, p := range lay(t, j).Surface.Panels {
		if p.Row == 1 {
			assert.False(t, p.CutLength && p.Length != 95*in+7*in/8, p.Name)
		}
	}
}

// A frame that ends just beyond a whole panel is not told to take the spacing it has.
func TestAdviceDoesNotNameTheSpacingThereIs(t *testing.T) {
	j := shed()
	j.Platform.Surface.FaceLength = 95*in + 7*in/8
	j.Frame.Piers.PerLine, j.Platform.Width = 3, 6*ft
	for length := 8 * ft; length < 9*ft; length += in / 4 {
		j.Platform.Length = length
		assert.NotContains(t, sayings(lay(t, j)), `at 16″ its end misses the joist. A spacing of 16″`, "%v", length)
	}
}

// What is cut from one sheet fits on it: lengths and kerfs along it, strips of
// the ripped row side by side.
func TestPiecesOfASheetFitOnIt(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		area, sheets := map[int]Area{}, map[int]bool{}
		long := map[int]Length{}
		for _, p := range f.Surface.Panels {
			require.Equal(t, p.FromOffcut, sheets[p.Sheet])
			sheets[p.Sheet] = true
			area[p.Sheet] += p.Length.Times(p.Width)
			if !p.Ripped {
				if long[p.Sheet] > 0 {
					long[p.Sheet] += j.Yard.Kerf
				}
				long[p.Sheet] += p.Length
			}
		}
		require.Len(t, sheets, f.Surface.Sheets)
		whole := j.Platform.Surface.FaceLength.Times(j.Platform.Surface.FaceWidth)
		for sheet := range sheets {
			require.LessOrEqual(t, float64(area[sheet]), float64(whole)+1e-9)
			require.LessOrEqual(t, long[sheet], j.Platform.Surface.FaceLength)
		}
	})
}

// End joints of neighbouring rows stay two joists apart, or the frame says so.
func TestRowsAreStaggered(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		least := leastStep(f)
		if least < 2*j.Frame.Joists.Spacing-in {
			require.Contains(t, sayings(f), "cannot be kept two joists apart")
		}
	})
}

// leastStep returns the least distance between end joints of neighbouring rows.
func leastStep(f *frame.Frame) Length {
	least := 2 * f.Length
	for _, p := range f.Surface.Panels {
		for _, q := range f.Surface.Panels {
			if q.Row == p.Row+1 && p.Number > 1 && q.Number > 1 {
				least = min(least, (p.X - q.X).Abs())
			}
		}
	}
	return least
}

// The rule for a last board too narrow: the first and the last share it. Nothing
// is narrower than half a board, and boards and gaps fill the width.
func TestNoBoardIsNarrowerThanHalf(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		wish, y := j.Platform.Surface, Length(0)
		for i, b := range f.Surface.Boards {
			require.Equal(t, y, b.Y)
			require.LessOrEqual(t, b.Width, wish.BoardWidth)
			require.GreaterOrEqual(t, b.Width, wish.BoardWidth/2)
			require.True(t, i == 0 || i == len(f.Surface.Boards)-1 || !b.Ripped)
			y += b.Width + wish.Gap
		}
		if wish.Kind == "boards" {
			require.LessOrEqual(t, (f.Width - (y - wish.Gap)).Abs(), wish.Gap)
		}
	})
}

// By hand: boards of 120 mm with 5 mm gaps on 3530 mm. 28 boards take 3495 mm,
// which leaves 30 mm for the 29th: under half. It and the first share
// 120 + 30 = 150 mm, 75 mm each.
func TestNarrowBoardIsShared(t *testing.T) {
	j := summerhouse()
	j.Platform.Width = 3530 * mm
	boards := lay(t, j).Surface.Boards
	require.Len(t, boards, 29)
	assert.Equal(t, []Length{75 * mm, 120 * mm, 75 * mm}, []Length{boards[0].Width, boards[1].Width, boards[28].Width})
}

// Square edges want blocks: one in each of the twelve bays under each of the
// long joints that no rim holds. The joint at 142 3/4 in lies over the rim, from
// 142 1/2 to 144 in, but holds only 1/4 in of it, so it is blocked too.
func TestSquareEdgesAreBlocked(t *testing.T) {
	j := shed()
	j.Platform.Surface.Edge = "square"
	f := lay(t, j)
	require.Len(t, f.Blocking, 3*12)
	assert.Equal(t, 14*in+in/2, f.Blocking[1].Long())
	assert.Equal(t, 61*in/4-3*in/2, f.Blocking[0].Long())
	assert.Empty(t, lay(t, shed()).Blocking)
}

// Sheets against every way of sharing the pieces out among them, for floors whose
// pieces lie one after the other in a sheet.
func TestFewestSheetsAgainstTryingAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := anyImperial(t)
		j.Platform.Surface.Edge = "tongue_and_groove"
		f, _ := frame.Lay(j)
		if f == nil || narrowStrip(f) {
			t.SkipNow()
		}
		face := j.Platform.Surface.FaceLength + j.Yard.Kerf
		var pieces []Length
		for _, p := range f.Surface.Panels {
			if p.CutLength {
				pieces = append(pieces, p.Length+j.Yard.Kerf)
			}
		}
		if len(pieces) == 0 || len(pieces) > 16 {
			t.SkipNow()
		}
		cutUp := f.Surface.Sheets - (len(f.Surface.Panels) - len(pieces))
		require.True(t, fitsIn(pieces, face, cutUp))
		require.False(t, fitsIn(pieces, face, cutUp-1), "%v go into fewer than %d sheets", pieces, cutUp)
	})
}

// narrowStrip says whether the last row may be cut side by side from one sheet.
func narrowStrip(f *frame.Frame) bool {
	last := f.Surface.Rows[len(f.Surface.Rows)-1]
	return last.Ripped && last.Width < 12*in
}

// fitsIn says whether pieces go into so many sheets, by trying.
func fitsIn(pieces []Length, face Length, sheets int) bool {
	left := make([]Length, sheets)
	for i := range left {
		left[i] = face
	}
	slices.Sort(pieces)
	slices.Reverse(pieces)
	var place func(i int) bool
	place = func(i int) bool {
		if i == len(pieces) {
			return true
		}
		for s := range left {
			if left[s] < pieces[i] || s > 0 && slices.Contains(left[:s], left[s]) {
				continue
			}
			left[s] -= pieces[i]
			if place(i + 1) {
				return true
			}
			left[s] += pieces[i]
		}
		return false
	}
	return place(0)
}

// Span ratings hold for two or more spans (APA Form E30V, 2011, p. 32).
func TestPanelsCoverTwoBays(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		if f.Surface.OneBay {
			return
		}
		for _, p := range f.Surface.Panels {
			require.GreaterOrEqual(t, joistsUnder(f, p.X, p.X+p.Length), min(3, len(f.Joists)), p.Name)
		}
	})
}

// joistsUnder counts the joists that a piece from one x to another lies on.
func joistsUnder(f *frame.Frame, from, to Length) int {
	under := 0
	for _, joist := range f.Joists {
		if joist.Bay == f.Joists[0].Bay && joist.Near < to && joist.Near+f.Sections.Joist.Width > from {
			under++
		}
	}
	return under
}

// Runs of boards and the two rims take turns in their joints where the stock
// leaves a choice.
func TestBoardsAndRimsAreStaggered(t *testing.T) {
	j := summerhouse()
	j.Platform.Length = 7200 * mm
	f := lay(t, j)
	require.Len(t, f.Rims[0].Pieces, 2)
	assert.NotEqual(t, f.Rims[0].Pieces[0].To, f.Rims[1].Pieces[0].To)
	for i, b := range f.Surface.Boards[1:] {
		before := f.Surface.Boards[i]
		require.Len(t, b.Pieces, 2)
		assert.GreaterOrEqual(t, (b.Pieces[0].To - before.Pieces[0].To).Abs(), 800*mm)
	}
}

// Where there is a choice, joints leave the least of the sticks over: 20 ft of rim
// is an 8 and a 12 ft stick, not two of 12.
func TestRimsTakeTheLeastTimber(t *testing.T) {
	j := shed()
	j.Platform.Length, j.Frame.Piers.PerLine = 20*ft, 6
	j.Yard.Stock["2x6"] = lengths(8, 12, 14)
	f := lay(t, j)
	assert.Equal(t, []Length{12 * ft, 8 * ft}, []Length{f.Rims[0].Pieces[0].Long(), f.Rims[0].Pieces[1].Long()})
	assert.Equal(t, []Length{8 * ft, 12 * ft}, []Length{f.Rims[1].Pieces[0].Long(), f.Rims[1].Pieces[1].Long()})
}

// No piece of a board covers one bay only where that can be helped (IRC R503.1:
// each piece bears on two joists at least; here it is three).
func TestPiecesOfBoardsCoverTwoBays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := summerhouse()
		j.Platform.Length = anyLength(t, "length", 5*Metre, 12*Metre, mm)
		j.Frame.Joists.Spacing = anyLength(t, "spacing", 300*mm, 600*mm, mm)
		f := lay(t, j)
		for _, b := range f.Surface.Boards {
			for _, piece := range b.Pieces {
				require.GreaterOrEqual(t, joistsUnder(f, piece.From, piece.To), 3, piece.Name)
			}
		}
	})
}

// 7.2 m of boards of 3.6 m can be joined in the middle only; every second board
// takes a piece more, so that joints stay two joists apart.
func TestBoardsTakeOneMorePieceToStagger(t *testing.T) {
	j := summerhouse()
	j.Platform.Length = 7200 * mm
	j.Yard.Stock = map[string][]job.StockLength{"boards": {{Length: 3600 * mm}}}
	f := lay(t, j)
	assert.Len(t, f.Surface.Boards[0].Pieces, 2)
	assert.Len(t, f.Surface.Boards[1].Pieces, 3)
	assert.NotContains(t, sayings(f), "two joists apart")
}

// A long joint needs no block where a rim or a flush beam holds both edges. Three
// beams of 3 1/2 in on 143 3/8 in: the middle one covers 69 15/16 to 73 7/16 in. A joint at
// 72 in lies well on it; one at 74 in beside it; one at 73 1/4 in too near its edge.
func TestJointOverAFlushBeamIsHeld(t *testing.T) {
	for _, row := range []struct {
		face   Length
		blocks int
	}{{72 * in, 0}, {74 * in, 12}, {73*in + in/4, 12}} {
		j := shed()
		j.Frame.Joists.Sit = "between_beams"
		j.Platform.Width = 143*in + 3*in/8
		j.Platform.Surface.Edge = "square"
		j.Platform.Surface.FaceWidth = row.face
		f := lay(t, j)
		between := 0
		for _, b := range f.Blocking {
			if b.Y < 100*in {
				between++
			}
		}
		assert.Equal(t, row.blocks, between, "joint at %s", row.face)
	}
}
