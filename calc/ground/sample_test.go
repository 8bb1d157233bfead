package ground_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/ground"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// in returns inches as a length; sixteenths and the like are exact.
func in(inches float64) measure.Length { return measure.Inch.Scale(inches) }

// sights books one set-up from pairs of a point and its reading in inches.
func sights(pairs ...any) []job.Sight {
	var list []job.Sight
	for i := 0; i < len(pairs); i += 2 {
		list = append(list, job.Sight{Point: pairs[i].(string), Reading: in(pairs[i+1].(float64)),
			At: fault.Place{File: "job.yaml", Line: len(list) + 1, Column: 1}})
	}
	return list
}

// gridFrame lays lines of piers at even spacings, the outer ones 1 3/4 in from
// the frame's sides.
func gridFrame(length, width measure.Length, lines, perLine int) *frame.Frame {
	f := &frame.Frame{Length: length, Width: width,
		BuildUp: frame.BuildUp{Surface: in(0.75), Joist: in(5.5), Beam: in(5.5), Cap: in(0.0625)}}
	names := "ABCDEFGHJKLMNPQRSTUVWXYZ"
	edge := in(1.75)
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

// sampleFrame is 16 by 12 ft on three lines of five piers.
func sampleFrame() *frame.Frame { return gridFrame(16*measure.Foot, 12*measure.Foot, 3, 5) }

// sampleJob is a shed on a slope, read in two set-ups over a turning point, with
// three probes.
func sampleJob() *job.Job {
	j := termsJob()
	j.Ground.Spots = map[string]job.Spot{"E1": {X: in(42), Y: in(-36)}, "TP1": {TurningPoint: true}}
	j.Ground.SetUps = [][]job.Sight{
		sights("bench_mark", 50.25, "A1", 57.0, "A3", 59.5, "A5", 62.0, "E1", 61.0, "TP1", 63.0),
		sights("TP1", 44.0, "C5", 37.5, "C1", 32.0, "bench_mark", 31.25),
	}
	j.Ground.Probes = map[string]job.Probe{"A1": {Depth: in(8.5), Found: "firm"}, "A5": {Depth: in(13.5), Found: "firm"}, "C1": {Depth: in(7.5), Found: "rock"}}
	bed := in(2)
	j.Piers = map[string]job.Exception{"C1": {Bed: &bed, Reason: "rock"}}
	return j
}

// termsJob holds the lengths of the sample and no readings.
func termsJob() *job.Job {
	j := &job.Job{Units: measure.Imperial, Fraction: measure.Sixteenth}
	j.Platform.Floor = job.Floor{Lowest: true, RoundUp: in(0.25)}
	j.Platform.Freedom = job.Freedom{Turn: 15, Along: measure.Foot, Across: measure.Foot, Exchange: true}
	j.Frame.Posts = job.Posts{Shortest: in(3), Longest: in(24), Cap: in(0.0625)}
	j.Frame.Clear = in(1)
	j.Block = job.Block{Height: in(5), SeatHeight: in(5), SeatWidth: in(3.5), Base: in(12)}
	j.Stone = job.Stone{Least: in(6), Most: in(12), Margin: in(4), Embed: in(2), AboveGround: in(0.5), BesideBlock: "stone",
		Loose: 1.30, Waste: 0.08, SoldBy: measure.CubicYard / 2, LayerAtMost: in(3),
		Density: 3700 * 0.45359237 / 0.764554857984, LooseDensity: 2850 * 0.45359237 / 0.764554857984}
	j.Dig = job.Dig{Least: in(4), Deepest: in(20)}
	j.Site.Soil.Swell, j.Site.Soil.Packed = 1.25, 0.9
	j.Site.Frost = "report"
	j.Ground.CloseTo = in(3.0 / 16)
	j.Ground.BenchMark = job.BenchMark{Where: "nail in the root of the old pear"}
	j.Ground.Instrument = job.Instrument{Kind: "rotary_laser", Error: in(0.125), Over: 100 * measure.Foot, Reads: "feet_inches"}
	j.Yard.Payload = 1400 * measure.Pound
	return j
}

// work calculates a job and stops the test at a fault.
func work(t require.TestingT, j *job.Job, f *frame.Frame) *ground.Ground {
	g, faults := ground.Work(j, f)
	require.NoError(t, faults.Err())
	return g
}

func pier(t testing.TB, g *ground.Ground, name string) ground.Pier {
	t.Helper()
	p, ok := g.Pier(name)
	require.True(t, ok, name)
	return p
}
