package order

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
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

// Half a yard of loose 5/8 in minus stone weighs 1425 lb (a state highway
// department's conversion table: 2850 lb a cubic yard dry and loose).
func TestHalfAYardOfStone(t *testing.T) {
	o := Take(shed())
	assert.InDelta(t, 1425, float64(find(t, o, "order.stone").Each/measure.Pound), 0.5)
}

func TestAStickWeighsItsVolume(t *testing.T) {
	// 1 1/2 × 5 1/2 in × 12 ft is 0.6875 ft³; at 28 lb/ft³ 19.25 lb.
	l := find(t, Take(shed()), "order.stick.2x6.3657")
	assert.InDelta(t, 19.25, float64(l.Each/measure.Pound), 1e-6)
	assert.False(t, l.TwoPeople())
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
