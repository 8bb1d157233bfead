package strength

import (
	"github.com/stretchr/testify/require"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

const in, ft = measure.Inch, measure.Foot

func must(size string, plies int) job.Section {
	s, ok := SectionOf(size, plies)
	if !ok {
		panic("no size " + size)
	}
	return s
}

// shed is an invented garden room: 16 by 12 ft on three beams and fifteen piers.
func shed() *job.Job {
	j := &job.Job{Name: "Orchard potting shed", Units: measure.Imperial, Fraction: measure.Sixteenth}
	j.Platform = job.Platform{Length: 16 * ft, Width: 12 * ft, Use: "garden_room", FloorLoad: psf(40),
		Surface: job.Surface{Kind: "panels", Thickness: 46 * measure.SixtyFourth, Gap: in / 8, SpanRating: 24, Edge: "tongue_and_groove", FaceLength: 96 * in, FaceWidth: 47*in + in/2}}
	j.Building = &job.Building{WeightLeast: 2000 * measure.PoundForce, WeightMost: 2600 * measure.PoundForce, WallHeight: 7 * ft,
		Roof: job.Roof{Shape: "gable", Eaves: "along_length", Overhang: 6 * in, Rise: 3 * ft}, Enclosure: "enclosed"}
	j.Site = job.Site{Soil: job.Soil{Class: "silty_sand", Bearing: psf(1500)}, GroundSnow: psf(20), Wind: job.Wind{Speed: 115 * measure.MilePerHour, Exposure: "B"}}
	j.Timber = job.Timber{Species: "hem_fir", Grade: "No.2", Incised: true, Wet: true}
	j.Frame = job.FrameWish{
		Joists: job.Joists{Section: must("2x6", 1), Spacing: 16 * in, Sit: "on_beams"}, Rims: must("2x6", 1),
		Beams: job.Beams{Section: must("4x6", 1), Lines: 3},
		Posts: job.Posts{Section: must("4x4", 1), Shortest: 3 * in, Longest: 24 * in, Cap: in / 16},
		Piers: job.PierWish{PerLine: 5},
	}
	j.Block = job.Block{Height: 5 * in, SeatHeight: 5 * in, SeatWidth: 7 * in / 2, Base: 12 * in, Weight: 48 * measure.Pound, RatedLoad: 2000 * measure.PoundForce}
	j.Stone = job.Stone{Least: 6 * in, Most: 12 * in, Margin: 4 * in}
	return j
}

// deck is the same floor without a building.
func deck() *job.Job {
	j := shed()
	j.Building = nil
	return j
}

func frameOf(t require.TestingT, j *job.Job) *frame.Frame {
	f, faults := frame.Skeleton(j)
	require.NoError(t, faults.Err())
	return f
}

func heights(f *frame.Frame, post measure.Length) map[string]Height {
	h := map[string]Height{}
	for _, p := range f.Piers {
		h[p.Name] = Height{Post: post, Dig: 8 * in, Stone: 6 * in}
	}
	return h
}

func work(t require.TestingT, j *job.Job) *Strength {
	f := frameOf(t, j)
	s, faults := Work(Input{Job: j, Frame: f, Heights: heights(f, 9*in)})
	require.NoError(t, faults.Err())
	return s
}
