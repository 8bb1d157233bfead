package frame_test

import (
	"github.com/stretchr/testify/require"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	. "pierbook/calc/measure"
)

const in, ft, mm = Inch, Foot, Millimetre

func section(size string, width, depth Length, plies int) job.Section {
	return job.Section{Size: size, Width: width, Depth: depth, Plies: plies}
}

func lengths(feet ...Length) []job.StockLength {
	var stock []job.StockLength
	for _, f := range feet {
		stock = append(stock, job.StockLength{Length: f * ft})
	}
	return stock
}

// shed is a floor of 16 by 12 ft: three beams, joists on them at 16 in, panels.
func shed() *job.Job {
	j := &job.Job{Name: "Orchard potting shed", Units: Imperial, Fraction: Sixteenth}
	j.Platform.Length, j.Platform.Width = 16*ft, 12*ft
	j.Platform.Surface = job.Surface{
		Kind: "panels", Thickness: 46 * SixtyFourth, Gap: in / 8, SpanRating: 24,
		Edge: "tongue_and_groove", FaceLength: 96 * in, FaceWidth: 47*in + in/2,
	}
	j.Frame.Joists = job.Joists{Section: section("2x6", 3*in/2, 11*in/2, 1), Spacing: 16 * in, Sit: "on_beams"}
	j.Frame.Rims = section("2x6", 3*in/2, 11*in/2, 1)
	j.Frame.Beams = job.Beams{Section: section("4x6", 7*in/2, 11*in/2, 1), Lines: 3}
	j.Frame.Posts = job.Posts{Section: section("4x4", 7*in/2, 7*in/2, 1), Shortest: 3 * in, Longest: 24 * in, Cap: in / 16}
	j.Frame.Piers.PerLine = 5
	j.Block = job.Block{Height: 5 * in, SeatHeight: 5 * in, SeatWidth: 7 * in / 2, Base: 12 * in}
	j.Yard = job.Yard{Kerf: in / 8, Stock: map[string][]job.StockLength{
		"2x6": lengths(8, 10, 12, 16), "4x6": lengths(8, 10, 12, 16), "4x4": lengths(8),
	}}
	return j
}

// summerhouse is metric: 4.8 by 3.6 m, joists between beams that stand in from the sides.
func summerhouse() *job.Job {
	j := &job.Job{Name: "Summerhouse", Units: Metric}
	j.Platform.Length, j.Platform.Width = 4800*mm, 3600*mm
	j.Platform.Surface = job.Surface{Kind: "boards", Thickness: 28 * mm, BoardWidth: 120 * mm, Gap: 5 * mm}
	j.Frame.Joists = job.Joists{Section: section("45x145", 45*mm, 145*mm, 1), Spacing: 400 * mm, Sit: "between_beams"}
	j.Frame.Rims = section("45x145", 45*mm, 145*mm, 1)
	j.Frame.Beams = job.Beams{Section: section("45x195", 45*mm, 195*mm, 2), Lines: 3, Inset: 45 * mm}
	j.Frame.Posts = job.Posts{Section: section("90x90", 90*mm, 90*mm, 1), Cap: 2 * mm}
	j.Frame.Piers.Spacing = 1200 * mm
	j.Block = job.Block{SeatWidth: 90 * mm, Base: 300 * mm}
	return j
}

func lay(t require.TestingT, j *job.Job) *frame.Frame {
	f, faults := frame.Lay(j)
	require.NoError(t, faults.Err())
	require.NotNil(t, f)
	return f
}
