package sample

import (
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

const in, ft = measure.Inch, measure.Foot

// Shed is an invented garden room: 16 by 12 ft on three beams and fifteen piers.
func Shed() *job.Job {
	j := &job.Job{Name: "Orchard potting shed", Units: measure.Imperial, Fraction: measure.Sixteenth}
	j.Platform = job.Platform{Length: 16 * ft, Width: 12 * ft, Use: "garden_room", FloorLoad: 40 * measure.PoundPerSquareFt,
		Surface: job.Surface{Kind: "panels", Thickness: 46 * measure.SixtyFourth, Gap: in / 8, SpanRating: 24, Edge: "tongue_and_groove", FaceLength: 96 * in, FaceWidth: 47*in + in/2}}
	j.Building = &job.Building{WeightLeast: 2000 * measure.PoundForce, WeightMost: 2600 * measure.PoundForce, WallHeight: 7 * ft,
		Roof: job.Roof{Shape: "gable", Eaves: "along_length", Overhang: 6 * in, Rise: 3 * ft}, Enclosure: "enclosed"}
	j.Site = job.Site{Soil: job.Soil{Class: "silty_sand", Bearing: 1500 * measure.PoundPerSquareFt}, GroundSnow: 20 * measure.PoundPerSquareFt, Wind: job.Wind{Speed: 115 * measure.MilePerHour, Exposure: "B"}}
	j.Timber = job.Timber{Species: "hem_fir", Grade: "No.2", Incised: true, Wet: true}
	j.Frame = job.FrameWish{
		Joists: job.Joists{Section: Section("2x6", 1), Spacing: 16 * in, Sit: "on_beams"}, Rims: Section("2x6", 1),
		Beams: job.Beams{Section: Section("4x6", 1), Lines: 3},
		Posts: job.Posts{Section: Section("4x4", 1), Shortest: 3 * in, Longest: 24 * in, Cap: in / 16},
		Piers: job.PierWish{PerLine: 5},
	}
	j.Block = job.Block{Height: 5 * in, SeatHeight: 5 * in, SeatWidth: 7 * in / 2, Base: 12 * in, Weight: 48 * measure.Pound, RatedLoad: 2000 * measure.PoundForce}
	j.Stone = job.Stone{Least: 6 * in, Most: 12 * in, Margin: 4 * in}
	return j
}

// Deck is the same floor without a building.
func Deck() *job.Job {
	j := Shed()
	j.Building, j.NoBuilding = nil, true
	return j
}

// Summerhouse is metric: joists between beams that stand in from the sides, and
// design values of a metric strength class, invented, with their source.
func Summerhouse() *job.Job {
	const mm = measure.Millimetre
	j := Deck()
	j.Units, j.Platform.Length, j.Platform.Width = measure.Metric, 4800*mm, 3600*mm
	j.Platform.Surface = job.Surface{Kind: "boards", Thickness: 28 * mm, BoardWidth: 120 * mm, Gap: 5 * mm}
	j.Timber = job.Timber{Density: 450, Values: &job.DesignValues{Bending: 8e6, Shear: 1.2e6, BearingAcross: 1.6e6, Compression: 6e6, Elastic: 10e9, ElasticMin: 6e9, Source: "the mill's certificate"}}
	joist := Section("45x145 mm", 1)
	beam := Section("45x195 mm", 2)
	post := Section("90x90 mm", 1)
	j.Frame.Joists = job.Joists{Section: joist, Spacing: 400 * mm, Sit: "between_beams"}
	j.Frame.Rims, j.Frame.Posts.Section, j.Block.SeatWidth = joist, post, 95*mm
	j.Frame.Beams = job.Beams{Section: beam, Lines: 3, Inset: 45 * mm}
	j.Frame.Piers = job.PierWish{Spacing: 1200 * mm}
	return j
}

// Section returns the section of a size, of so many plies.
func Section(size string, plies int) job.Section {
	s, ok := job.ParseSize(size)
	if !ok {
		panic("sample: no size " + size)
	}
	s.Plies = plies
	return s
}

// Frame lays a job out.
func Frame(j *job.Job) *frame.Frame {
	f, faults := frame.Skeleton(j)
	if err := faults.Err(); err != nil {
		panic("sample: " + err.Error())
	}
	return f
}
