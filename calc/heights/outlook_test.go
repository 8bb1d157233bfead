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
	"pierbook/calc/measure"
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
		floor := a.Floor + (b.Floor-a.Floor).Part(rapid.IntRange(0, 16).Draw(t, "part"), 16).RoundDownTo(measure.Sixteenth) // off a whole mark the post tops are not under it by the build-up
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
	assert.Empty(t, fieldtest.Work(t, fieldtest.AllRead(), fieldtest.SampleFrame()).ReadNext())
}

// The expected moves against the job worked again and again with the pier read,
// at heights spread as its error is: on ground so flat that the pier asks for
// nearly as high a floor as the one that governs.
func TestExpectedMovesByReadingThePierOverAndOver(t *testing.T) {
	f := fieldtest.SampleFrame()
	at := func(c2 *measure.Length) *job.Job {
		j := fieldtest.AllRead()
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

func TestASpotInsideTheFrameLiftsTheFloor(t *testing.T) {
	j := fieldtest.AllRead()
	j.Ground.Spots["mound"] = job.Spot{X: fieldtest.In(96), Y: fieldtest.In(100)}
	j.Ground.SetUps[0] = append(j.Ground.SetUps[0], job.Sight{Point: "mound", Reading: fieldtest.In(60 - 14)})
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	assert.Equal(t, heights.Demand{Name: "mound", Limit: heights.BeamClearance, Floor: fieldtest.In(14) + fieldtest.In(1) + fieldtest.In(11.8125)}, g.Floor.Governs)
	j.Ground.Spots["mound"] = job.Spot{X: fieldtest.In(96), Y: fieldtest.In(-1)}
	assert.NotEqual(t, "mound", fieldtest.Work(t, j, fieldtest.SampleFrame()).Floor.Governs.Name, "outside it matters nothing")
}

func TestFreedomOnAPlane(t *testing.T) {
	f := fieldtest.SampleFrame()
	j := fieldtest.AllRead()
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
