package fieldtest

import (
	"fmt"

	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// In returns inches as a length; sixteenths and the like are exact.
func In(inches float64) measure.Length { return measure.Inch.Scale(inches) }

// Sights books one set-up from pairs of a point and its reading in inches.
func Sights(pairs ...any) []job.Sight {
	var list []job.Sight
	for i := 0; i < len(pairs); i += 2 {
		list = append(list, job.Sight{Point: pairs[i].(string), Reading: In(pairs[i+1].(float64)),
			At: fault.Place{File: "job.yaml", Line: len(list) + 1, Column: 1}})
	}
	return list
}

// GridFrame lays lines of piers at even spacings, the outer ones 1 3/4 in from
// the frame's sides.
func GridFrame(length, width measure.Length, lines, perLine int) *frame.Frame {
	f := &frame.Frame{Length: length, Width: width,
		BuildUp: frame.BuildUp{Surface: In(0.75), Joist: In(5.5), Beam: In(5.5), Cap: In(0.0625)}}
	names := "ABCDEFGHJKLMNPQRSTUVWXYZ"
	edge := In(1.75)
	for line := range lines {
		y := edge + (width-2*edge).Part(line, max(lines-1, 1))
		f.Lines = append(f.Lines, frame.Line{Name: names[line : line+1], Y: y, End: length})
		for n := range perLine {
			f.Piers = append(f.Piers, frame.Pier{Name: fmt.Sprintf("%c%d", names[line], n+1), Line: line, Number: n + 1,
				X: edge + (length-2*edge).Part(n, max(perLine-1, 1)), Y: y})
		}
	}
	return f
}

// SampleFrame is 16 by 12 ft on three lines of five piers.
func SampleFrame() *frame.Frame { return GridFrame(16*measure.Foot, 12*measure.Foot, 3, 5) }

// SampleJob is a shed on a slope, read in two set-ups over a turning point, with
// three probes.
func SampleJob() *job.Job {
	j := TermsJob()
	j.Ground.Spots = map[string]job.Spot{"E1": {X: In(42), Y: In(-36)}, "TP1": {TurningPoint: true}}
	j.Ground.SetUps = [][]job.Sight{
		Sights("bench_mark", 50.25, "A1", 57.0, "A3", 59.5, "A5", 62.0, "E1", 61.0, "TP1", 63.0),
		Sights("TP1", 44.0, "C5", 37.5, "C1", 32.0, "bench_mark", 31.25),
	}
	j.Ground.Probes = map[string]job.Probe{"A1": {Depth: In(8.5), Found: "firm"}, "A5": {Depth: In(13.5), Found: "firm"}, "C1": {Depth: In(7.5), Found: "rock"}}
	bed := In(2)
	j.Piers = map[string]job.Exception{"C1": {Bed: &bed, Reason: "rock"}}
	return j
}

// TermsJob holds the lengths of the sample and no readings.
func TermsJob() *job.Job {
	j := &job.Job{Units: measure.Imperial, Fraction: measure.Sixteenth}
	j.Platform.Floor = job.Floor{Lowest: true, RoundUp: In(0.25)}
	j.Platform.Freedom = job.Freedom{Turn: 15, Along: measure.Foot, Across: measure.Foot, Exchange: true}
	j.Frame.Posts = job.Posts{Shortest: In(3), Longest: In(24), Cap: In(0.0625)}
	j.Frame.Clear = In(1)
	j.Block = job.Block{Height: In(5), SeatHeight: In(5), SeatWidth: In(3.5), Base: In(12)}
	j.Stone = job.Stone{Least: In(6), Most: In(12), Margin: In(4), Embed: In(2), AboveGround: In(0.5), BesideBlock: "stone",
		Loose: 1.30, Waste: 0.08, SoldBy: measure.CubicYard / 2, LayerAtMost: In(3),
		Density: 3700 * 0.45359237 / 0.764554857984, LooseDensity: 2850 * 0.45359237 / 0.764554857984}
	j.Dig = job.Dig{Least: In(4), Deepest: In(20)}
	j.Site.Soil.Swell, j.Site.Soil.Packed = 1.25, 0.9
	j.Site.Frost = "report"
	j.Ground.CloseTo = In(3.0 / 16)
	j.Ground.BenchMark = job.BenchMark{Where: "nail in the root of the old pear"}
	j.Ground.Instrument = job.Instrument{Kind: "rotary_laser", Error: In(0.125), Over: 100 * measure.Foot, Reads: "feet_inches"}
	j.Yard.Payload = 1400 * measure.Pound
	return j
}

// AllRead is the sample with every pier read, on a plane.
func AllRead() *job.Job {
	j := SampleJob()
	setUp := Sights("bench_mark", 60.0)
	for _, p := range SampleFrame().Piers {
		setUp = append(setUp, job.Sight{Point: p.Name, Reading: In(60) + p.X.Scale(0.02) - p.Y.Scale(0.03)})
	}
	j.Ground.SetUps = [][]job.Sight{setUp}
	j.Ground.Probes, j.Piers = nil, nil
	return j
}
