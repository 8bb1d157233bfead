package heights_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/fieldtest"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// A price is straight between its points: at any floor between two of them the
// totals are those of the whole job worked at that floor.
func TestPriceIsStraightBetweenItsPoints(t *testing.T) {
	met := 0
	rapid.Check(t, func(t *rapid.T) {
		j, f := randomSite(t)
		g := fieldtest.Work(t, j, f)
		points := g.Price()
		if len(points) < 2 {
			return
		}
		met++
		i := rapid.IntRange(1, len(points)-1).Draw(t, "piece")
		a, b := points[i-1], points[i]
		floor := a.Floor + (b.Floor-a.Floor).Part(rapid.IntRange(0, 16).Draw(t, "part"), 16)
		given := *j
		given.Platform.Floor = job.Floor{Height: floor}
		at := fieldtest.Work(t, &given, f)
		require.Nil(t, at.Clash)
		var dig, stone, posts measure.Length
		for _, p := range at.Piers {
			dig, stone, posts = dig+p.Hole.Dig, stone+p.Hole.Stone, posts+p.Hole.Post
		}
		part := float64(floor-a.Floor) / float64(b.Floor-a.Floor)
		for _, row := range [][3]measure.Length{{a.Dig, b.Dig, dig}, {a.Stone, b.Stone, stone}, {a.Posts, b.Posts, posts}} {
			require.InDelta(t, float64(row[0]+(row[1]-row[0]).Scale(part)), float64(row[2]), 50)
		}
	})
	assert.Positive(t, met)
}

func TestAboveTheLowestFloorAnInchCostsPostsOnly(t *testing.T) {
	// Every hole at its least: each of fifteen posts grows with the floor.
	j := fieldtest.SampleJob()
	j.Platform.Floor = job.Floor{Height: fieldtest.In(18)}
	points := fieldtest.Work(t, j, fieldtest.SampleFrame()).Price()
	for i := 1; i < len(points); i++ {
		if points[i-1].Floor <= fieldtest.In(18) && fieldtest.In(18) < points[i].Floor {
			dig, stone, posts := heights.Per(measure.Inch, points[i-1], points[i])
			assert.Equal(t, [3]measure.Length{0, 0, fieldtest.In(15)}, [3]measure.Length{dig, stone, posts})
			return
		}
	}
	t.Fatal("18 in lies on no piece")
}

// Tables of the normal distribution: nine in ten lie below 1.2816 standard errors.
func TestChanceOfAShortPost(t *testing.T) {
	j := fieldtest.SampleJob()
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	var c2 heights.ShortChance
	for _, c := range g.ShortChances() {
		assert.NotContains(t, []string{"A1", "A3", "A5", "C1", "C5"}, c.Pier, "read, so nothing is left to chance")
		assert.LessOrEqual(t, c.AtAll, c.AsPlanned+1e-9, "a deeper hole can only help")
		if c.Pier == "C2" {
			c2 = c
		}
	}
	// The post at C2 is the shortest by plan: as dug, it is even odds.
	assert.InDelta(t, 0.5, float64(c2.AsPlanned), 1e-9)
	spread := fieldtest.Pier(t, g, "C2").Level.Error
	j.Platform.Floor = job.Floor{Height: c2.Safe}
	safe := fieldtest.Work(t, j, fieldtest.SampleFrame())
	for _, c := range safe.ShortChances() {
		if c.Pier == "C2" {
			assert.InDelta(t, 0.1, float64(c.AtAll), 1e-4)
		}
	}
	assert.InDelta(t, 1.2816, float64(c2.Safe-safeBase(g, "C2"))/float64(spread), 1e-3)
	assert.GreaterOrEqual(t, g.SafeFloor(), c2.Safe)
}

// safeBase returns the lowest floor a pier asks for: seat half an inch over its
// ground, the shortest post, the build-up.
func safeBase(g *fieldtest.Worked, name string) measure.Length {
	p, _ := g.Pier(name)
	return p.Level.Height + fieldtest.In(0.5) + fieldtest.In(3) + fieldtest.In(11.8125)
}

func TestReadingTheGoverningPierIsWorthMost(t *testing.T) {
	j := fieldtest.SampleJob()
	// Without the reading at C1 the highest corner is only estimated.
	j.Ground.SetUps[1] = fieldtest.Sights("TP1", 44.0, "C5", 37.5, "C3", 34.0, "bench_mark", 31.25)
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	next := g.ReadNext()
	require.NotEmpty(t, next)
	assert.Equal(t, "C1", next[0].Pier)
	assert.Positive(t, next[0].Moves)
	for i := 1; i < len(next); i++ {
		assert.LessOrEqual(t, next[i].Moves, next[i-1].Moves)
	}
	assert.Empty(t, fieldtest.Work(t, allRead(), fieldtest.SampleFrame()).ReadNext())
}

// The expected moves against the job worked again and again with the pier read,
// at heights spread as its error is: on ground so flat that the pier asks for
// nearly as high a floor as the one that governs.
func TestExpectedMovesByReadingThePierOverAndOver(t *testing.T) {
	f := fieldtest.SampleFrame()
	at := func(c2 *measure.Length) *job.Job {
		j := allRead()
		setUp := fieldtest.Sights("bench_mark", 60.0)
		for _, p := range f.Piers {
			height := -p.X.Scale(0.0005) + p.Y.Scale(0.0005)
			switch {
			case p.Name != "C2":
			case c2 == nil:
				continue
			default:
				height = *c2
			}
			setUp = append(setUp, job.Sight{Point: p.Name, Reading: fieldtest.In(60) - height})
		}
		j.Ground.SetUps = [][]job.Sight{setUp}
		return j
	}
	g := fieldtest.Work(t, at(nil), f)
	next := g.ReadNext()
	require.Len(t, next, 1)
	level := fieldtest.Pier(t, g, "C2").Level
	require.Less(t, next[0].Rest.Floor-next[0].Asks, level.Error, "near enough to matter")

	moves, whole := 0.0, 0.0
	for z := -4.0; z <= 4; z += 0.05 {
		read := level.Height + level.Error.Scale(z)
		weight := math.Exp(-z * z / 2)
		moves += weight * (fieldtest.Work(t, at(&read), f).Floor.Lowest - g.Floor.Lowest).Abs().Inches()
		whole += weight
	}
	assert.Greater(t, next[0].Moves.Inches(), 0.001)
	assert.InDelta(t, moves/whole, next[0].Moves.Inches(), 0.0005)
}

// C2 of the sample asks for a floor many errors under what C1 asks for, so that
// no reading there can move the floor; but its hole is dug for the shortest post,
// so that a reading moves its hole. Held against the job worked with C2 read.
func TestWhereNoReadingMovesTheFloorTheHoleIsSaid(t *testing.T) {
	held := func() *job.Job {
		j := fieldtest.SampleJob()
		// The floor stays, and the seat may go as deep as it must.
		j.Platform.Floor, j.Stone.AboveGround = job.Floor{Height: fieldtest.Work(t, j, fieldtest.SampleFrame()).Floor.Height}, fieldtest.In(-20)
		return j
	}
	g := fieldtest.Work(t, held(), fieldtest.SampleFrame())
	next := g.ReadNext()
	i := slices.IndexFunc(next, func(n heights.NextReading) bool { return n.Pier == "C2" })
	require.GreaterOrEqual(t, i, 0)
	digs, whole := 0.0, 0.0
	for z := -4.0; z <= 4; z += 0.05 {
		read := held()
		level := fieldtest.Pier(t, g, "C2").Level
		last := read.Ground.SetUps[0]
		read.Ground.SetUps[0] = append(slices.Clone(last[:1:1]), append([]job.Sight{{Point: "C2", Reading: last[0].Reading - level.Height - level.Error.Scale(z)}}, last[1:]...)...)
		again := fieldtest.Work(t, read, fieldtest.SampleFrame())
		require.Nil(t, again.Clash)
		weight := math.Exp(-z * z / 2)
		digs += weight * (fieldtest.Pier(t, again, "C2").Hole.Dig - fieldtest.Pier(t, g, "C2").Hole.Dig).Abs().Inches()
		whole += weight
	}
	assert.InDelta(t, digs/whole, next[i].Digs.Inches(), 0.02)
	assert.Greater(t, next[i].Digs, fieldtest.In(0.1))
}

// allRead is the sample with every pier read, on a plane.
func allRead() *job.Job {
	j := fieldtest.SampleJob()
	setUp := fieldtest.Sights("bench_mark", 60.0)
	for _, p := range fieldtest.SampleFrame().Piers {
		setUp = append(setUp, job.Sight{Point: p.Name, Reading: fieldtest.In(60) + p.X.Scale(0.02) - p.Y.Scale(0.03)})
	}
	j.Ground.SetUps = [][]job.Sight{setUp}
	j.Ground.Probes, j.Piers = nil, nil
	return j
}

func TestBestStandIsWhereTheLongestSightIsShortest(t *testing.T) {
	stands := levelling.Stands(fieldtest.SampleJob(), fieldtest.SampleFrame())
	best := stands[0]
	assert.Equal(t, [2]measure.Length{8 * measure.Foot, 6 * measure.Foot}, [2]measure.Length{best.X, best.Y})
	// 1/8 in at 100 ft is 21.5 seconds of arc: at 9 ft 9 9/16 in it is 0.0123 in.
	assert.InDelta(t, 9.797*12/9600, best.Worst.Error.Inches(), 1e-5)
	for _, s := range stands[1:] {
		assert.Greater(t, s.Worst.Error, best.Worst.Error)
	}
	j := fieldtest.SampleJob()
	j.Ground.Instrument.Error = 0
	assert.Empty(t, levelling.Stands(j, fieldtest.SampleFrame()))
}

// A tape along a slope, common in handbooks as rise² / 2L: in 20 ft 0.075 in for
// 6 in of rise and 0.30 in for 1 ft.
func TestSlopeErrorOfTapedLines(t *testing.T) {
	f := fieldtest.GridFrame(20*measure.Foot+fieldtest.In(3.5), 10*measure.Foot, 2, 2)
	for _, row := range []struct{ rise, want float64 }{{6, 0.075}, {12, 0.30}} {
		j := fieldtest.TermsJob()
		j.Ground.SetUps = [][]job.Sight{fieldtest.Sights("bench_mark", 60.0, "A1", 60.0, "A2", 60.0-row.rise, "B1", 60.0, "B2", 60.0-row.rise)}
		lines := fieldtest.Work(t, j, f).TapedLines(f)
		require.Len(t, lines, 6)
		assert.Equal(t, 20*measure.Foot, lines[0].Level)
		assert.InDelta(t, row.want, lines[0].TooLong.Inches(), 0.001)
		assert.Zero(t, lines[1].TooLong, "across the slope")
	}
}

func TestDropsBesideTheFloor(t *testing.T) {
	f := fieldtest.SampleFrame()
	j := allRead()
	g := fieldtest.Work(t, j, f)
	drops := g.Heights.Drops
	require.Len(t, drops, 4)
	// The ground falls along the lines by 2 in 100 and rises across by 3: the
	// lowest place within 36 in of the floor is off the far end of line A.
	worst := terrain.WorstDrop(drops)
	assert.False(t, worst.Read)
	ends := g.Floor.Height - (-f.Length.Scale(0.02) - fieldtest.In(36).Scale(0.02))
	assert.InDelta(t, ends.Inches(), drops[1].Drop.Inches(), 0.001)

	j.Ground.Spots["pit"] = job.Spot{X: fieldtest.In(96), Y: fieldtest.In(-36)}
	j.Ground.SetUps[0] = append(j.Ground.SetUps[0], job.Sight{Point: "pit", Reading: fieldtest.In(60 + 25)})
	pit := fieldtest.Work(t, j, f).Heights.Drops[0]
	assert.True(t, pit.Read)
	assert.Equal(t, fieldtest.In(-25), pit.Ground)
}

func TestHumpsBetweenThePiersAreFound(t *testing.T) {
	f := fieldtest.SampleFrame()
	j := allRead()
	assert.Empty(t, fieldtest.Work(t, j, f).Heights.Humps)
	// A mound half-way between A1 and A2, read just outside the beam.
	j.Ground.Spots["mound"] = job.Spot{X: fieldtest.In(24), Y: fieldtest.In(-1)}
	j.Ground.SetUps[0] = append(j.Ground.SetUps[0], job.Sight{Point: "mound", Reading: fieldtest.In(60 - 14)})
	j.Platform.Floor = job.Floor{Height: fieldtest.In(24)}
	humps := fieldtest.Work(t, j, f).Heights.Humps
	require.NotEmpty(t, humps)
	assert.Equal(t, "beam A", humps[0].Under)
	assert.Equal(t, fieldtest.In(24), humps[0].X)
	assert.Positive(t, humps[0].Lower)
}

// Between two lines the ground is looked at all the way across, and not in the
// middle alone: what is found comes near the worst of a far closer look.
func TestTheWorstHumpBetweenTwoLinesIsFound(t *testing.T) {
	f := fieldtest.SampleFrame()
	j := allRead()
	j.Platform.Floor = job.Floor{Height: fieldtest.In(22)}
	// A knoll just outside the frame, near the corner of line A, lifts the ground
	// beside that line more than half-way to the next.
	j.Ground.Spots["knoll"] = job.Spot{X: fieldtest.In(-2), Y: f.Lines[0].Y + fieldtest.In(14)}
	j.Ground.SetUps[0] = append(j.Ground.SetUps[0], job.Sight{Point: "knoll", Reading: fieldtest.In(60 - 24)})
	g := fieldtest.Work(t, j, f)
	humps := g.Heights.Humps
	i := slices.IndexFunc(humps, func(h terrain.Hump) bool { return h.Under == "the joists between A and B" })
	require.GreaterOrEqual(t, i, 0)
	underside := g.Floor.Height - f.BuildUp.Surface - f.BuildUp.Joist
	var worst, middle measure.Length
	for x := measure.Length(0); x <= f.Length; x += measure.Inch {
		for y := f.Lines[0].Y; y <= f.Lines[1].Y; y += measure.Inch {
			worst = max(worst, g.Surface.At(x, y)+j.Frame.Clear-underside)
		}
		middle = max(middle, g.Surface.At(x, f.Lines[0].Y+(f.Lines[1].Y-f.Lines[0].Y)/2)+j.Frame.Clear-underside)
	}
	assert.Greater(t, worst, middle+fieldtest.In(2), "the middle alone would not show it")
	assert.Greater(t, humps[i].Lower, worst-fieldtest.In(1.75))
}

func TestASpotInsideTheFrameLiftsTheFloor(t *testing.T) {
	j := allRead()
	j.Ground.Spots["mound"] = job.Spot{X: fieldtest.In(96), Y: fieldtest.In(100)}
	j.Ground.SetUps[0] = append(j.Ground.SetUps[0], job.Sight{Point: "mound", Reading: fieldtest.In(60 - 14)})
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	assert.Equal(t, heights.Demand{Name: "mound", Limit: heights.BeamClearance, Floor: fieldtest.In(14) + fieldtest.In(1) + fieldtest.In(11.8125)}, g.Floor.Governs)
	j.Ground.Spots["mound"] = job.Spot{X: fieldtest.In(96), Y: fieldtest.In(-1)}
	assert.NotEqual(t, "mound", fieldtest.Work(t, j, fieldtest.SampleFrame()).Floor.Governs.Name, "outside it matters nothing")
}

func TestFallOfThePlane(t *testing.T) {
	f := fieldtest.SampleFrame()
	fall := fieldtest.Work(t, allRead(), f).Fall(f)
	assert.InDelta(t, -0.02, float64(fall.SlopeX), 1e-9)
	assert.InDelta(t, 0.03, float64(fall.SlopeY), 1e-9)
	assert.InDelta(t, (f.Length.Scale(0.02) + f.Width.Scale(0.03)).Inches(), fall.Difference.Inches(), 1e-6)
	assert.False(t, fall.WaterGathers)
}

func TestFreedomOnAPlane(t *testing.T) {
	f := fieldtest.SampleFrame()
	j := allRead()
	// Spots far out, so that no place tried lies beyond the readings.
	for name, at := range map[string][2]float64{"E1": {-100, -100}, "E2": {300, -100}, "E3": {300, 250}, "E4": {-100, 250}} {
		spot := job.Spot{X: fieldtest.In(at[0]), Y: fieldtest.In(at[1])}
		j.Ground.Spots[name] = spot
		j.Ground.SetUps[0] = append(j.Ground.SetUps[0], job.Sight{Point: name, Reading: fieldtest.In(60) + spot.X.Scale(0.02) - spot.Y.Scale(0.03)})
	}
	g := fieldtest.Work(t, j, f)
	saves := map[string]float64{}
	for _, m := range g.Freedom(j, f) {
		saves[m.What] = m.Saves.Inches()
	}
	// A foot along a fall of 2 in 100 saves 0.24 in; back it costs as much.
	assert.InDelta(t, 0.24, saves["shift 12″ on along the lines"], 1e-6)
	assert.InDelta(t, -0.24, saves["shift 12″ back along the lines"], 1e-6)
	assert.InDelta(t, -0.36, saves["shift 12″ on across the lines"], 1e-6)
	// Length and width exchanged, the highest pier lies half the length up the
	// steep way: 94.25 × 3 + 70.25 × 2 in 100 instead of 70.25 × 3 + 94.25 × 2.
	assert.InDelta(t, -(94.25-70.25)*0.01, saves["exchange length and width"], 1e-6)
	assert.InDelta(t, 0.12, saves["shift 6″ on along the lines"], 1e-6, "part of the way")

	// What the place does not allow is not tried.
	j.Platform.Freedom = job.Freedom{Across: 2 * measure.Foot}
	var tried []string
	for _, m := range g.Freedom(j, f) {
		tried = append(tried, m.What)
	}
	assert.Equal(t, []string{"shift 24″ back across the lines", "shift 12″ back across the lines", "shift 12″ on across the lines", "shift 24″ on across the lines"}, tried)
	j.Platform.Freedom = job.Freedom{}
	assert.Empty(t, g.Freedom(j, f))
}

func TestOddsOfTheStone(t *testing.T) {
	j := fieldtest.SampleJob()
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	o := g.Odds
	require.NotNil(t, o)
	assert.Equal(t, [2]int{3, 12}, [2]int{o.Probed, o.Unknown})
	assert.Equal(t, fieldtest.In(6), o.Mean, "6, 9 and 3")
	assert.Equal(t, fieldtest.In(3), o.Scatter)
	assert.GreaterOrEqual(t, o.NineInTen.Compacted, o.Even.Compacted)
	assert.GreaterOrEqual(t, float64(o.NineInTen.Chance), 0.9)
	assert.GreaterOrEqual(t, float64(o.Even.Chance), 0.5)
	assert.Positive(t, o.OneMoreSaves)
	// At even odds the unknown beds are taken at the mean of the known.
	side := fieldtest.In(20).Times(fieldtest.In(20))
	assert.InDelta(t, float64(side.Deep(fieldtest.In(18+12*6))+g.Stone.Beside), float64(o.Even.Compacted), 1e-9)

	j.Ground.Probes = map[string]job.Probe{"A1": {Depth: fieldtest.In(8.5), Found: "firm"}}
	assert.Nil(t, fieldtest.Work(t, j, fieldtest.SampleFrame()).Odds, "one probe says nothing of the scatter")
}

// On a slope along the frame alone, soil fills a wedge: V = width × depth² / (2 × slope).
func TestSoilLevelsTheLowSide(t *testing.T) {
	f := fieldtest.SampleFrame()
	j := allRead()
	setUp := fieldtest.Sights("bench_mark", 60.0)
	for _, p := range f.Piers {
		setUp = append(setUp, job.Sight{Point: p.Name, Reading: fieldtest.In(60) + p.X.Scale(0.05)})
	}
	j.Ground.SetUps = [][]job.Sight{setUp}
	g := fieldtest.Work(t, j, f)
	low := -f.Length.Scale(0.05)
	depth := (g.Spoil.Level - low).Metres()
	assert.InDelta(t, float64(g.Spoil.Packed), f.Width.Metres()*depth*depth/(2*0.05), 1e-4)
	// The heap is a pyramid with slopes of 1 in 1.5: a third of its base by its height.
	side := g.Spoil.Heap.Metres()
	assert.InDelta(t, float64(g.Spoil.Loose), side*side*(side/3)/3, 1e-6)
}
