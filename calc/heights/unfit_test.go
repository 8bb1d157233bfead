package heights_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/fieldtest"
	"pierbook/calc/heights"
	"pierbook/calc/measure"
)

// A seat so high that nothing is left of the post is a slip of the rod, and one that
// leaves less than the shortest fails: neither is a length to cut.
func TestAPostThatNobodyMayCut(t *testing.T) {
	j := fieldtest.SeatsRead(t, nil)
	plan := fieldtest.Work(t, j, fieldtest.SampleFrame())
	c2 := plan.Posts[11]
	require.Equal(t, "C2", c2.Name)

	j.Measured.Seats["C2"] -= c2.Length() - fieldtest.In(2)
	j.Measured.PostsCut = map[string]measure.Length{"C2": c2.Length()} // cut for the plan, too long by far
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	assert.Equal(t, heights.Unfit, g.Posts[11].State, "never trimmed to two inches")
	said := strings.ReplaceAll(strings.Join(g.Unfitting(j.Style()), "\n"), "\u00a0", " ")
	assert.Equal(t, "The post at C2 would be 2″, under the shortest of 3″: it is not cut and stands in no cutting plan. Read the seat again; if it is so, lower the seat by 1″.", said)
	for _, p := range g.StillToCut() {
		assert.NotEqual(t, "C2", p.Name)
	}

	j.Measured.Seats["C2"] -= fieldtest.In(2)
	_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
	require.Equal(t, 1, faults.Len())
	assert.Equal(t, "measured.seats.C2", faults.Sorted()[0].Path)

	// A beam measured at five feet leaves no post on its whole line: it is named, and
	// not the seats.
	j = fieldtest.SeatsRead(t, nil)
	j.Measured.Timber.Beams = map[string]measure.Length{"C": 5 * measure.Foot}
	_, faults = fieldtest.Try(j, fieldtest.SampleFrame())
	require.Positive(t, faults.Len())
	for _, f := range faults.Sorted() {
		assert.Equal(t, "measured.timber.beams.C", f.Path)
	}
}

// The first and the last reading on the bench mark agree, and every seat is a foot
// off: it was another bench mark, or it was misread twice.
func TestSeatsThatAreOffTogetherPointToTheBenchMark(t *testing.T) {
	j := fieldtest.SeatsRead(t, nil)
	assert.Empty(t, fieldtest.Work(t, j, fieldtest.SampleFrame()).DayMisread(j))
	j.Measured.Seats["bench_mark"] += measure.Foot
	j.Measured.Seats["close"] = j.Measured.Seats["bench_mark"]
	j.Platform.Floor.Height += 2 * measure.Foot
	j.Frame.Posts.Longest = 6 * measure.Foot
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	assert.Contains(t, g.DayMisread(j), "the bench mark of that day was misread")
	j.Measured.Seats["A1"] += measure.Foot
	assert.Empty(t, fieldtest.Work(t, j, fieldtest.SampleFrame()).DayMisread(j), "one seat is as planned")
}

// Between posts of 3 and 11 3/4 the floor stands half way, an eighth from either
// limit: both piers are named, the seats are set there first, and each way that is
// offered gives the inch.
func TestPiersWithLittleRoomAreNamedWithWhatGivesMore(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Platform.Floor.RoundUp, j.Platform.Floor.Room, j.Frame.Posts.Longest = 0, fieldtest.In(1), fieldtest.In(11.75)
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	pinched := map[string]heights.Pinch{}
	for _, p := range g.Pinches(j) {
		pinched[p.Pier] = p
		assert.Less(t, p.Room, fieldtest.In(1))
	}
	require.Contains(t, pinched, "C1")
	assert.True(t, pinched["C1"].Up)
	assert.Equal(t, fieldtest.In(0.125), pinched["C1"].Room)
	require.Contains(t, pinched, "A5")
	assert.False(t, pinched["A5"].Up)
	assert.Equal(t, fieldtest.In(0.125), pinched["A5"].Room)
	assert.Contains(t, strings.Join(pinched["A5"].Ways, "\n"), "frame.posts.longest")

	assert.Contains(t, strings.ReplaceAll(strings.Join(pinched["A5"].Ways, "\n"), "\u00a0", " "), "longest post 13 1/2″ instead of 11 3/4″")
	j.Frame.Posts.Longest = fieldtest.In(13.5)
	for _, p := range fieldtest.Work(t, j, fieldtest.SampleFrame()).Pinches(j) {
		assert.NotEqual(t, "A5", p.Pier, "as the way says")
	}
	j.Frame.Posts.Longest = fieldtest.In(24)
	assert.Empty(t, fieldtest.Work(t, j, fieldtest.SampleFrame()).Pinches(j))
}
