package frame_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	. "pierbook/calc/measure"
)

// forAnyFrame checks a fact on random jobs that can be laid out. Refused ones do
// not count; too many of them fail the test.
func forAnyFrame(t *testing.T, check func(t *rapid.T, j *job.Job, f *frame.Frame)) {
	t.Helper()
	rapid.Check(t, func(t *rapid.T) {
		j := anyJob(t)
		f, faults := frame.Lay(j)
		require.Equal(t, faults.Empty(), f != nil, "a frame or a fault, never both or neither")
		if f == nil {
			t.SkipNow()
		}
		check(t, j, f)
	})
}

// The floor is shared out to the piers without rest: the lengths along a line
// add up to the frame's length, the widths across to its width.
func TestTributaryAreasAddUpToThePlatform(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		along, across := Length(0), Length(0)
		for _, p := range f.Piers {
			if p.Line == 0 {
				along += p.TributaryLength
			}
			if p.Number == 1 {
				across += p.TributaryWidth
			}
		}
		require.Equal(t, f.Length, along)
		require.Equal(t, f.Width, across)
	})
}

func TestEveryBeamJointIsOverAnInnerPier(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		longest := longestStock(j, f.Sections.Beam)
		spliced := map[[2]Length]bool{}
		for i, line := range f.Lines {
			require.Len(t, line.Plies, f.Sections.Beam.Plies)
			for _, ply := range line.Plies {
				requireRun(t, ply.Pieces, line.Start, line.End, longest)
				for _, piece := range ply.Pieces[1:] {
					require.True(t, innerPier(f, i, piece.From), "%s begins at %v", piece.Name, piece.From)
					spliced[[2]Length{piece.From, line.Y}] = true
				}
			}
		}
		for _, p := range f.Piers {
			require.Equal(t, spliced[[2]Length{p.X, p.Y}], p.Splice, p.Name)
		}
	})
}

func longestStock(j *job.Job, s job.Section) Length {
	longest := Length(0)
	for _, stock := range j.Yard.Stock[s.Size] {
		longest = max(longest, stock.Length-j.Yard.EndTrim)
	}
	if longest == 0 {
		return map[System]Length{Imperial: 16 * ft, Metric: 4800 * mm}[j.Units]
	}
	return longest
}

// requireRun checks that pieces follow one another from end to end and can be bought.
func requireRun(t require.TestingT, pieces []frame.Piece, from, to, longest Length) {
	at := from
	for _, piece := range pieces {
		require.Equal(t, at, piece.From)
		require.Positive(t, piece.Long())
		require.LessOrEqual(t, piece.Long(), longest, piece.Name)
		at = piece.To
	}
	require.Equal(t, to, at)
}

func innerPier(f *frame.Frame, line int, x Length) bool {
	for _, p := range f.Piers {
		if p.Line == line && p.X == x {
			return p.Number > 1 && p.Number < f.PerLine(line)
		}
	}
	return false
}

func TestRimsAndBoardsAreJoinedAtJoists(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		centres := map[Length]bool{}
		for _, joist := range f.Joists {
			centres[joist.Centre] = true
		}
		joined := func(pieces []frame.Piece, longest Length) {
			requireRun(t, pieces, 0, f.Length, longest)
			for _, piece := range pieces[1:] {
				require.True(t, centres[piece.From], piece.Name)
			}
		}
		for _, rim := range f.Rims {
			joined(rim.Pieces, longestStock(j, f.Sections.Rim))
		}
		for _, b := range f.Surface.Boards {
			joined(b.Pieces, longestStock(j, job.Section{Size: "boards"}))
		}
	})
}

// Joists begin and end with the frame, keep clear of each other and stand no
// farther apart than the spacing, save where one had to be left out.
func TestJoistsCoverTheLength(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		thick, spacing := f.Sections.Joist.Width, j.Frame.Joists.Spacing
		last := f.Joists[len(f.Joists)-1]
		require.Zero(t, f.Joists[0].Near)
		require.Equal(t, f.Length, last.Near+thick)
		widest := Length(0)
		for i, joist := range f.Joists[1:] {
			before := f.Joists[i]
			if joist.Bay != before.Bay {
				continue
			}
			apart := joist.Centre - before.Centre
			require.GreaterOrEqual(t, apart, thick+in/2, joist.Name)
			require.Less(t, apart, spacing+thick+in/2, joist.Name)
			widest = max(widest, apart)
		}
		require.Equal(t, widest, f.WidestBay)
	})
}

// Joists of a bay are of one length, reach from rim to rim or from beam to beam,
// and never into either.
func TestJoistsFillTheirBays(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		rim := f.Sections.Rim.Width
		half := f.Sections.Beam.Across() / 2
		lengths := map[Length]bool{}
		for _, joist := range f.Joists {
			if !joist.Overhang {
				lengths[joist.Long()] = true
			}
			if j.Frame.Joists.Sit == "on_beams" {
				require.Equal(t, [2]Length{rim, f.Width - rim}, [2]Length{joist.From, joist.To})
				continue
			}
			for _, line := range f.Lines {
				require.True(t, joist.To <= line.Y-half || joist.From >= line.Y+half, "%s runs into beam %s", joist.Name, line.Name)
			}
		}
		require.Len(t, lengths, 1)
	})
}

// Turned end for end, the plan needs the same sticks: the outer piers change
// places and nothing else does. A nanometre may go either way where an equal
// spacing is not a whole number of them.
func TestMirroredPlanChangesNoMember(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		mirrored := *j
		mirrored.Frame.Piers.First, mirrored.Frame.Piers.Last = j.Frame.Piers.Last, j.Frame.Piers.First
		m := lay(t, &mirrored)
		here, there := beamPieces(f), beamPieces(m)
		require.Len(t, there, len(here))
		for i := range here {
			require.InDelta(t, float64(here[i]), float64(there[i]), 2)
		}
		require.Equal(t, len(f.Joists), len(m.Joists))
		require.Equal(t, f.Surface.Sheets, m.Surface.Sheets)
		for i, p := range f.Piers {
			opposite := m.Piers[p.Line*f.PerLine(0)+f.PerLine(0)-p.Number]
			require.InDelta(t, float64(f.Length-p.X), float64(opposite.X), 1, f.Piers[i].Name)
			require.InDelta(t, float64(p.TributaryLength), float64(opposite.TributaryLength), 2)
		}
	})
}

func beamPieces(f *frame.Frame) []Length {
	var all []Length
	for _, line := range f.Lines {
		for _, ply := range line.Plies {
			for _, piece := range ply.Pieces {
				all = append(all, piece.Long())
			}
		}
	}
	return sorted(all)
}

// Laid twice, a frame is the same twice.
func TestLayingAgainChangesNothing(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) { require.Equal(t, f, lay(t, j)) })
}

// Numbering the lines from the other side changes no member: seen from the far
// side every line, joist and pier has its mirror image.
func TestNumberingFromTheOtherSideChangesNothing(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		for i, line := range f.Lines {
			opposite := f.Lines[len(f.Lines)-1-i]
			require.InDelta(t, float64(f.Width-line.Y), float64(opposite.Y), 2)
		}
		width := map[int]Length{}
		for _, p := range f.Piers {
			width[p.Line] = p.TributaryWidth
		}
		for i := range f.Lines {
			require.InDelta(t, float64(width[i]), float64(width[len(f.Lines)-1-i]), 2)
		}
	})
}

// Whatever the numbers, a job is laid out or refused; figures follow.
func TestNoNumbersBreakTheLayout(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := anyJob(t)
		for _, odd := range []struct {
			name string
			l    *Length
		}{
			{"length", &j.Platform.Length}, {"width", &j.Platform.Width}, {"gap", &j.Platform.Surface.Gap}, {"kerf", &j.Yard.Kerf},
			{"face", &j.Platform.Surface.FaceLength}, {"face width", &j.Platform.Surface.FaceWidth}, {"board", &j.Platform.Surface.BoardWidth},
			{"joist", &j.Frame.Joists.Width}, {"spacing", &j.Frame.Joists.Spacing}, {"rim", &j.Frame.Rims.Width}, {"beam", &j.Frame.Beams.Width},
			{"inset", &j.Frame.Beams.Inset}, {"set back", &j.Frame.Beams.SetBack}, {"post", &j.Frame.Posts.Width}, {"base", &j.Block.Base},
		} {
			if rapid.IntRange(0, 7).Draw(t, odd.name+" odd") == 0 {
				*odd.l = rapid.SampledFrom([]Length{0, 1, mm, in, 3 * in, ft, 5*ft + 1, 30 * Metre}).Draw(t, odd.name)
			}
		}
		j.Platform.Surface.Kind = rapid.SampledFrom([]string{"panels", "boards"}).Draw(t, "kind")
		j.Platform.Surface.FaceLength = max(j.Platform.Surface.FaceLength, 100*mm)
		j.Platform.Surface.FaceWidth = max(j.Platform.Surface.FaceWidth, 100*mm)
		j.Platform.Surface.BoardWidth = max(j.Platform.Surface.BoardWidth, 10*mm)
		j.Frame.Joists.Spacing = max(j.Frame.Joists.Spacing, 10*mm)
		if f, faults := frame.Lay(j); f != nil {
			require.True(t, faults.Empty())
			require.NotEmpty(t, f.Figures(j))
		} else {
			require.False(t, faults.Empty())
		}
	})
}
