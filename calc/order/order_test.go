package order

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

func stick(nominal string, width, depth measure.Length) job.Section {
	return job.Section{Size: nominal, Width: width, Depth: depth, Plies: 1}
}

func shed() Input {
	j := &job.Job{Units: measure.Imperial, Fraction: measure.Sixteenth}
	j.Timber.Density = 28 * measure.PoundPerCubicFoot
	j.Yard.Prices = map[string]measure.Money{"block": 9.5}
	j.Yard.Payload = 1400 * measure.Pound
	j.Block = job.Block{Base: 12 * measure.Inch, Weight: 48 * measure.Pound}
	joist := stick("2x6", measure.Inch*3/2, measure.Inch*11/2)
	f := &frame.Frame{Length: 16 * measure.Foot, Width: 12 * measure.Foot}
	f.Sections = frame.Sections{Joist: joist, Rim: joist, Post: stick("4x4", measure.Inch*7/2, measure.Inch*7/2)}
	f.BuildUp.Joist = joist.Depth
	f.Sections.Beam = stick("4x6", measure.Inch*7/2, measure.Inch*11/2)
	for _, y := range []measure.Length{measure.Inch * 7 / 4, 6 * measure.Foot, 12*measure.Foot - measure.Inch*7/4} {
		f.Lines = append(f.Lines, frame.Line{Y: y, End: f.Length, Plies: []frame.Ply{{Pieces: []frame.Piece{{Name: "A-1", To: f.Length}}}}})
	}
	f.Piers = make([]frame.Pier, 15)
	for i := range 13 {
		near := min(max(0, measure.Length(i)*16*measure.Inch-joist.Width/2), f.Length-joist.Width)
		f.Joists = append(f.Joists, frame.Joist{Number: i + 1, Bay: 1, Near: near, Centre: near + joist.Width/2, From: joist.Width, To: f.Width - joist.Width})
	}
	f.Rims = []frame.Rim{{Pieces: []frame.Piece{{To: f.Length}}}, {Y: f.Width, Pieces: []frame.Piece{{To: f.Length}}}}
	return Input{Job: j, Frame: f,
		Sticks: []Sticks{{Section: joist, Use: "joists", Long: 12 * measure.Foot, Count: 13}},
		Bed:    &Bed{Kind: "dense_graded", Units: 3, Unit: measure.CubicYard / 2, Loose: 2850 * measure.PoundPerCubicFoot / 27}}
}

func find(t *testing.T, o *Order, key string) Line {
	t.Helper()
	for _, l := range o.Lines {
		if l.Key == key {
			return l
		}
	}
	require.Fail(t, "no line "+key)
	return Line{}
}

func TestAStickWeighsItsVolume(t *testing.T) {
	// 1 1/2 × 5 1/2 in × 12 ft is 0.6875 ft³; at 28 lb/ft³ 19.25 lb.
	l := find(t, Take(shed()), "order.stick.2x6.3657")
	assert.InDelta(t, 19.25, float64(l.Each/measure.Pound), 1e-6)
	assert.False(t, l.TwoPeople(measure.Imperial))
}

func TestToenailsOfTheJoists(t *testing.T) {
	// 13 joists on 3 lines, three nails each, and rims on the outer beams at 6 in:
	// 117 + 2 × 33 = 183.
	l := find(t, Take(shed()), "order.fastener.8d-common")
	assert.Equal(t, 183, l.Pieces)
	assert.Equal(t, 19, l.Spare)
	assert.Equal(t, 2, l.Count, "202 nails at about 105 to the pound")
}

func TestMoneyIsHonestAboutBlanks(t *testing.T) {
	o := Take(shed())
	assert.Equal(t, measure.Money(15*9.5), o.Cost)
	assert.Equal(t, len(o.Lines)-1, o.Blank)
}

func TestWeightIsTheSumOfTheLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := shed()
		in.Sticks[0].Count = rapid.IntRange(1, 400).Draw(t, "sticks")
		o := Take(in)
		var sum measure.Mass
		for _, g := range o.ByGroup() {
			for _, l := range g {
				sum += l.Mass()
			}
		}
		assert.InDelta(t, float64(sum), float64(o.Weight), 1e-6)
		assert.GreaterOrEqual(t, float64(o.Loads())*float64(o.Payload), float64(o.Weight)-1e-6)
	})
}

// A line adds up: boxes hold what is needed and spare, and one box less would not.
func TestBoxesAreEnoughAndNoMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := shed()
		in.Job.Units = rapid.SampledFrom([]measure.System{measure.Imperial, measure.Metric}).Draw(t, "system")
		in.Frame.Joists = in.Frame.Joists[:rapid.IntRange(2, 13).Draw(t, "joists")]
		in.Frame.Piers = in.Frame.Piers[:rapid.IntRange(4, 15).Draw(t, "piers")]
		joints := schedule(in)
		nails := map[string]trade.Nail{}
		for _, row := range joints {
			nails["order.fastener."+row.Nail.Key] = row.Nail
		}
		for _, l := range fastenerLines(in.Job, joints) {
			perBox := int(float64(l.Each) / float64(nails[l.Key].Mass()))
			if have := l.Count * perBox; have < l.Pieces+l.Spare || have-perBox >= l.Pieces+l.Spare {
				t.Fatalf("%s: %d boxes of %d for %d and %d spare", l.What, l.Count, perBox, l.Pieces, l.Spare)
			}
			if l.Spare*10 < l.Pieces {
				t.Fatalf("%d spare of %d", l.Spare, l.Pieces)
			}
		}
	})
}

func TestOneMoreJoistNeverLowersACount(t *testing.T) {
	for n := 2; n < 13; n++ {
		few, many := shed(), shed()
		few.Frame.Joists, many.Frame.Joists = few.Frame.Joists[:n], many.Frame.Joists[:n+1]
		counts := map[string]int{}
		for _, row := range schedule(few) {
			counts[row.use] = row.Count
		}
		for _, row := range schedule(many) {
			assert.GreaterOrEqual(t, row.Count, counts[row.use], row.use)
		}
	}
}

// Every piece goes on exactly one load, and no load is over the payload unless
// one piece alone is.
func TestEverythingIsDrivenOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := shed()
		in.Sticks[0].Count = rapid.IntRange(1, 120).Draw(t, "sticks")
		in.Job.Yard.Payload = measure.Mass(rapid.Float64Range(30, 3000).Draw(t, "payload"))
		o := Take(in)
		var carried measure.Mass
		counts := map[string]int{}
		for _, trip := range o.Trips {
			carried += trip.Weight
			var goods measure.Mass
			for _, g := range trip.Goods {
				goods += g.Mass
				counts[g.What] += g.Count
			}
			assert.InDelta(t, float64(goods), float64(trip.Weight), 1e-6)
			if !trip.Over {
				assert.LessOrEqual(t, float64(trip.Weight), float64(o.Payload)+1e-6)
			}
		}
		assert.InDelta(t, float64(o.Weight), float64(carried), 1e-6)
		assert.Equal(t, in.Sticks[0].Count, counts["2x6, 12′\u00a00″"])
	})
}

// Every strip is covered over its whole length: rolls hold the strips and a lap
// for each joint.
func TestClothIsEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := job.Roll{Width: measure.Length(rapid.IntRange(500, 3000).Draw(t, "wide")) * measure.Millimetre, Length: measure.Length(rapid.IntRange(3000, 50000).Draw(t, "long")) * measure.Millimetre,
			Lap: measure.Length(rapid.IntRange(0, 400).Draw(t, "lap")) * measure.Millimetre}
		length, width := measure.Length(rapid.IntRange(1500, 15000).Draw(t, "length"))*measure.Millimetre, measure.Length(rapid.IntRange(1500, 9000).Draw(t, "width"))*measure.Millimetre
		c := clothFor(r, length, width)
		covered := measure.Length(c.Strips)*r.Width - measure.Length(c.Strips-1)*r.Lap
		if covered < width || c.Strips > 1 && covered-r.Width+r.Lap >= width {
			t.Fatalf("%d strips cover %d of %d", c.Strips, covered, width)
		}
		if need := measure.Length(c.Strips)*length + measure.Length(c.Joints)*r.Lap; need > measure.Length(c.Rolls)*r.Length {
			t.Fatalf("%d rolls for %d", c.Rolls, need)
		}
	})
}

// Two 50 ft rolls hold five strips of 16 ft: three from the first, whose tail of
// 2 ft is too short to lay, and two from the second.
func TestStripsOfTheShed(t *testing.T) {
	c := clothFor(job.Roll{Width: 3 * measure.Foot, Length: 50 * measure.Foot, Lap: 6 * measure.Inch}, 16*measure.Foot, 12*measure.Foot)
	assert.Equal(t, Cloth{Strips: 5, Rolls: 2, Joints: 0, Pins: 6 * 6}, c)
	long := clothFor(job.Roll{Width: 3 * measure.Foot, Length: 40 * measure.Foot, Lap: 6 * measure.Inch}, 16*measure.Foot, 12*measure.Foot)
	assert.Equal(t, 3, long.Rolls)
	assert.Equal(t, 2, long.Joints, "tails of 8 ft and of 15 ft 6 in are laid on")
}

func TestHandsForALift(t *testing.T) {
	for _, row := range []struct {
		pounds float64
		hands  int
	}{{1, 1}, {50, 1}, {50.1, 2}, {100, 2}, {248, 5}} {
		assert.Equal(t, row.hands, Part{Each: measure.Mass(row.pounds) * measure.Pound}.Hands(measure.Imperial))
	}
}

func BenchmarkTake(b *testing.B) {
	in := shed()
	b.ReportAllocs()
	for b.Loop() {
		Take(in)
	}
}
