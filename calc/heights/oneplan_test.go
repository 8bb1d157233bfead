package heights_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/fieldtest"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// The hole of A1 is 4 in deeper than planned: with the least bed its seat lies
// lower, and that is what is expected of it from now on, on every sheet.
func TestAHoleDugDeeperChangesWhatIsExpectedEverywhere(t *testing.T) {
	planned := fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame())
	j := fieldtest.SampleJob()
	j.Measured.Holes = map[string]job.Probe{"A1": {Depth: fieldtest.In(12.5), Found: "firm"}}
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	before, a1 := fieldtest.Pier(t, planned, "A1"), fieldtest.Pier(t, g, "A1")
	// Ground −6.75, dug 12.5; the cover is at most 4.5, so the bed is 8 and the seat
	// −6.75 − 4.5 + 5 = −6.25, 2 in under the plan before.
	require.Equal(t, fieldtest.In(-4.25), before.Expected.Seat)
	assert.Equal(t, fieldtest.In(-6.25), a1.Expected.Seat)
	printed := map[string]measure.Quantity{}
	for _, f := range g.Figures(j) {
		printed[f.Key] = f.Value
	}
	assert.Equal(t, printed["pier.A1.post"], printed["pier.A1.post_planned"])
	assert.Equal(t, printed["pier.A1.seat"], printed["pier.A1.seat_planned"])
	assert.Equal(t, fieldtest.In(8.5), printed["pier.A1.dig_planned"], "the depth that was wanted stays")

	// Set as expected it raises no alarm, nor does a seat set as planned before the
	// hole was measured; a foot off it does, and the slip has its name.
	j.Platform.Floor = job.Floor{Height: g.Floor.Height}
	read := func(seat measure.Length) []string {
		j.Measured.Seats = map[string]measure.Length{"bench_mark": fieldtest.In(50), "A1": fieldtest.In(50) - seat}
		var kinds []string
		for _, d := range fieldtest.Work(t, j, fieldtest.SampleFrame()).DoubtfulSeats(j) {
			kinds = append(kinds, d.Kind)
		}
		return kinds
	}
	assert.Empty(t, read(fieldtest.In(-6.25)))
	assert.Empty(t, read(fieldtest.In(-6.25+1)))
	assert.Empty(t, read(fieldtest.In(-4.25)))
	assert.Equal(t, []string{"a foot"}, read(fieldtest.In(-6.25-12+0.875)))
}

// A surface of 23/32 and a cap of 1/16 put the build-up half a mark off. Floor,
// tops, seats and posts stand on whole marks all the same, and the three heights of
// the cover add up as they print.
func TestEveryNumberHeldAtTheRodIsAWholeMark(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, f := randomSite(t)
		thirtySeconds := func(label string, most int) measure.Length {
			return measure.Length(rapid.IntRange(0, most).Draw(t, label)) * measure.Sixteenth / 2
		}
		f.BuildUp = frame.BuildUp{Surface: fieldtest.In(23.0 / 32), Beam: fieldtest.In(5.5) + thirtySeconds("beam", 8), Cap: fieldtest.In(0.0625)}
		j.Platform.Floor.Room = thirtySeconds("room", 64)
		for i := range j.Ground.SetUps[0][1:] {
			j.Ground.SetUps[0][i+1].Reading += measure.Length(rapid.IntRange(0, 999_999).Draw(t, "off the mark"))
		}
		g := fieldtest.Work(t, j, f)
		if g.Clash != nil {
			return
		}
		whole := func(what string, l measure.Length) {
			require.Zero(t, (l-j.Ground.BenchMark.Height)%j.Mark(), "%s at %v", what, l)
		}
		whole("floor", g.Floor.Height)
		whole("tops", g.Floor.PostTops)
		require.Equal(t, g.Floor.Height, g.Floor.PostTops+f.BuildUp.Total().RoundTo(j.Mark()))
		for _, p := range g.Piers {
			whole("seat of "+p.Name, p.Expected.Seat)
			require.Equal(t, g.Floor.PostTops, p.Expected.Seat+p.Expected.Post)
			require.GreaterOrEqual(t, p.Expected.Post, j.Frame.Posts.Shortest)
			require.LessOrEqual(t, p.Expected.Post, j.Frame.Posts.Longest)
		}
	})
}

// C1 governs: its seat may lie at −0.25 and no lower, so that under a floor of
// 14.5625 its post is the shortest. With an inch of room it is an inch longer.
func TestALowestFloorLeavesRoomAtThePiersThatGovern(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Platform.Floor.RoundUp, j.Platform.Floor.Room = 0, fieldtest.In(1)
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	assert.Equal(t, fieldtest.In(14.5625), g.Floor.Lowest)
	assert.Equal(t, fieldtest.In(15.5625), g.Floor.Height)
	for _, p := range g.Piers {
		assert.GreaterOrEqual(t, p.Expected.Post, fieldtest.In(4), p.Name)
		assert.LessOrEqual(t, p.Expected.Post, fieldtest.In(23), p.Name)
	}
	// Between posts of 3 and 14 3/4 there is 1/4 between the lowest floor and the
	// highest: half of it for either end.
	j.Frame.Posts.Longest = fieldtest.In(11.75)
	g = fieldtest.Work(t, j, fieldtest.SampleFrame())
	require.Nil(t, g.Clash)
	assert.Equal(t, fieldtest.In(14.8125), g.Floor.Highest)
	assert.Equal(t, fieldtest.In(14.6875), g.Floor.Height)
}
