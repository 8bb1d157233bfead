package heights_test

import (
	"maps"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/fieldtest"
	"pierbook/calc/figure"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

func TestPostsFollowTheSeatsAsRead(t *testing.T) {
	j := fieldtest.SeatsRead(t, map[string]float64{"A1": 0.25, "B3": -0.5})
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	plan := fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame())
	assert.Equal(t, job.SeatsRead, g.Progress)
	for i, p := range g.Piers {
		move := map[string]float64{"A1": -0.25, "B3": 0.5}[p.Name]
		assert.Equal(t, plan.Piers[i].Hole.Post+fieldtest.In(move), p.Hole.Post, p.Name)
		// On paper: the printed number, the reading in the seat, the bench mark's.
		line := g.Lines[p.Name[0]-'A']
		assert.Equal(t, p.Hole.Post, line.Printed+j.Measured.Seats[p.Name]-j.Measured.Seats["bench_mark"], p.Name)
		assert.Equal(t, plan.Piers[i].Hole.Post, p.Planned.Post, p.Name)
	}
	assert.Equal(t, fieldtest.In(0.25), g.Seats.Read[0].Over())
}

func TestMeasuredEqualToPlannedChangesNoLength(t *testing.T) {
	plan := fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame())
	j := fieldtest.SeatsRead(t, nil)
	j.Measured.Timber.Beams = map[string]measure.Length{"A": fieldtest.In(5.5), "B": fieldtest.In(5.5), "C": fieldtest.In(5.5)}
	joists := fieldtest.In(5.5)
	j.Measured.Timber.Joists = &joists
	j.Measured.Holes = map[string]job.Probe{}
	for _, p := range plan.Piers {
		if p.Name != "C1" {
			j.Measured.Holes[p.Name] = job.Probe{Depth: p.Hole.Dig, Found: "firm"}
		}
	}
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	for i, p := range g.Piers {
		assert.Equal(t, plan.Piers[i].Hole.Dig, p.Hole.Dig, p.Name)
		assert.Equal(t, plan.Piers[i].Hole.Stone, p.Hole.Stone, p.Name)
		assert.Equal(t, plan.Piers[i].Hole.Post, p.Hole.Post, p.Name)
	}
	assert.Equal(t, plan.Stone.Compacted, g.Stone.Compacted)
}

func TestThinBeamOfOneLineLengthensItsPosts(t *testing.T) {
	j := fieldtest.SeatsRead(t, nil)
	j.Measured.Timber.Beams = map[string]measure.Length{"B": fieldtest.In(5.4375)}
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	plan := fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame())
	for i, p := range g.Piers {
		more := measure.Length(0)
		if p.Name[0] == 'B' {
			more = fieldtest.In(0.0625)
		}
		assert.Equal(t, plan.Piers[i].Hole.Post+more, p.Hole.Post, p.Name)
	}
	for _, f := range g.Figures(j) {
		switch f.Key {
		case "line.B.post_tops":
			assert.Contains(t, f.Working, "14\u00a03/4″ − 11\u00a03/4″", "by the build-up of its own line")
		case "pier.B1.seat":
			assert.Equal(t, []string{"pier.B1.seat_read"}, f.From)
		}
	}
}

func TestOverDugHoleIsFilledWithStone(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Measured.Holes = map[string]job.Probe{"B3": {Depth: fieldtest.In(11), Found: "firm"}}
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	p := fieldtest.Pier(t, g, "B3")
	assert.Equal(t, fieldtest.In(8), p.Planned.Dig)
	assert.Equal(t, fieldtest.In(11), p.Hole.Dig)
	assert.Equal(t, fieldtest.In(6.5), p.Hole.Stone, "up to the deepest cover, 4 1/2")
	assert.Equal(t, heights.HoleAsDug, p.Hole.DigLeastBy)
}

func TestFloorIsLockedOnceASeatIsRead(t *testing.T) {
	j := fieldtest.SeatsRead(t, nil)
	j.Platform.Floor = job.Floor{Lowest: true, RoundUp: fieldtest.In(0.25)}
	_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
	require.Len(t, faults.Sorted(), 1)
	assert.Equal(t, "platform.floor.height", faults.Sorted()[0].Path)
	assert.Contains(t, faults.Sorted()[0].Remedy, `height: 1' 2 3/4"`)

	j = fieldtest.SampleJob()
	j.Measured.PostsCut = map[string]measure.Length{"A1": fieldtest.In(7)}
	_, faults = fieldtest.Try(j, fieldtest.SampleFrame())
	assert.Len(t, faults.Sorted(), 1)
}

func TestSeatsNeedTheBenchMarkOfTheDay(t *testing.T) {
	j := fieldtest.SeatsRead(t, nil)
	delete(j.Measured.Seats, "bench_mark")
	_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
	require.Len(t, faults.Sorted(), 1)
	assert.Equal(t, "measured.seats", faults.Sorted()[0].Path)

	j = fieldtest.SeatsRead(t, nil)
	j.Measured.Seats["close"] = fieldtest.In(49.75)
	_, faults = fieldtest.Try(j, fieldtest.SampleFrame())
	require.Len(t, faults.Sorted(), 1)
	assert.Equal(t, "measured.seats.close", faults.Sorted()[0].Path)
}

func TestCutPostsAreNeverIssuedAgain(t *testing.T) {
	j := fieldtest.SeatsRead(t, nil)
	plan := fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame())
	want := map[string]measure.Length{}
	for _, p := range plan.Piers {
		want[p.Name] = p.Hole.Post
	}
	j.Measured.PostsCut = map[string]measure.Length{
		"A1": want["A1"],                        // right
		"A3": want["A3"] - fieldtest.In(0.125),  // a shim makes it up
		"A5": want["A5"] + fieldtest.In(0.5),    // to be trimmed
		"B5": want["B5"] - fieldtest.In(0.75),   // short: serves elsewhere
		"C1": want["C1"] - fieldtest.In(0.1875), // short, under every other post but one
	}
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	state := map[string]heights.Post{}
	for _, p := range g.Posts {
		state[p.Name] = p
	}
	assert.Equal(t, heights.Serves, state["A1"].State)
	assert.Equal(t, heights.Shim, state["A3"].State)
	assert.Equal(t, fieldtest.In(0.125), state["A3"].Shim)
	assert.Equal(t, heights.Trim, state["A5"].State)
	assert.Equal(t, heights.CutAnew, state["B5"].State)
	assert.Equal(t, heights.CutAnew, state["C1"].State)
	issued := map[string]bool{}
	for _, p := range g.StillToCut() {
		issued[p.Name] = true
	}
	assert.False(t, issued["A1"] || issued["A3"] || issued["A5"])
	assert.True(t, issued["B5"] && issued["C1"])

	way := state["B5"].Ways[0]
	require.Equal(t, "another pier", way.Kind)
	require.NotEmpty(t, way.Pier)
	assert.Equal(t, "B5", state[way.Pier].From)
	assert.False(t, issued[way.Pier], "its post is the one cut short for B5")
	assert.LessOrEqual(t, state[way.Pier].Length(), *state["B5"].Cut+measure.Sixteenth)

	lower := state["C1"].Ways[1]
	assert.Equal(t, "lower floor", lower.Kind)
	assert.Equal(t, fieldtest.In(0.1875), lower.By)
	assert.ElementsMatch(t, []string{"A1", "A5"}, trimsOf(lower, "A1", "A5"))
	assert.Contains(t, lower.TooShort, "C2", "its post is at the shortest already")
	assert.NotEmpty(t, lower.Blocked)
}

// What is cut goes where it saves a new post: the long post and the short one
// change places, a short post serves at a pier whose own is shorter still, and a
// long post stays where trimming it saves as much.
func TestCutPostsGoWhereTheySaveMost(t *testing.T) {
	want := map[string]measure.Length{}
	for _, p := range fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame()).Piers {
		want[p.Name] = p.Hole.Post
	}
	// Every post is cut as wanted but for those given; a length of 0 is not cut.
	posts := func(others map[string]measure.Length) map[string]heights.Post {
		j := fieldtest.SeatsRead(t, nil)
		j.Measured.PostsCut = maps.Clone(want)
		maps.Copy(j.Measured.PostsCut, others)
		maps.DeleteFunc(j.Measured.PostsCut, func(_ string, length measure.Length) bool { return length == 0 })
		state := map[string]heights.Post{}
		for _, p := range fieldtest.Work(t, j, fieldtest.SampleFrame()).Posts {
			state[p.Name] = p
		}
		return state
	}
	require.Greater(t, want["A5"], want["A1"]+measure.Inch, "the ground falls along line A")

	swapped := posts(map[string]measure.Length{"A1": want["A5"], "A5": want["A1"]})
	assert.Equal(t, heights.Exchange, swapped["A1"].State)
	assert.Equal(t, "A5", swapped["A1"].From)
	assert.Equal(t, heights.Exchange, swapped["A5"].State)
	assert.Equal(t, "A1", swapped["A5"].From)
	assert.Zero(t, swapped["A5"].Off)

	long := posts(map[string]measure.Length{"A1": want["A1"] + fieldtest.In(0.5)})
	assert.Equal(t, heights.Trim, long["A1"].State, "trimmed where it is")

	chain := posts(map[string]measure.Length{"A5": want["A5"] - fieldtest.In(0.5), "A1": want["A1"] - fieldtest.In(1)})
	assert.Equal(t, heights.CutAnew, chain["A5"].State)
	assert.Equal(t, heights.Exchange, chain["A1"].State)
	assert.Equal(t, "A5", chain["A1"].From)
	assert.Equal(t, want["A5"]-fieldtest.In(0.5)-want["A1"], chain["A1"].Off)

	missing := posts(map[string]measure.Length{"A1": 0, "C5": want["C5"] + fieldtest.In(0.5), "A5": want["A5"] - fieldtest.In(0.5)})
	assert.Equal(t, heights.Trim, missing["C5"].State, "its post serves where it is")
	assert.Equal(t, "A5", missing["A1"].From)
}

func trimsOf(way heights.WayOut, names ...string) []string {
	var found []string
	for _, name := range way.Trims {
		for _, wanted := range names {
			if name == wanted {
				found = append(found, name)
			}
		}
	}
	return found
}

// With every seat read under a given floor the posts need no survey of the
// ground: they are those of the same job with one.
func TestPostsFromSeatsAlone(t *testing.T) {
	surveyed := fieldtest.SeatsRead(t, map[string]float64{"A1": 0.25, "B3": -0.5})
	j := fieldtest.SeatsRead(t, map[string]float64{"A1": 0.25, "B3": -0.5})
	j.Ground.SetUps, j.Ground.Spots, j.Ground.Probes, j.Piers = nil, nil, nil, nil
	j.Measured.Timber.Beams = map[string]measure.Length{"B": fieldtest.In(5.625)}
	surveyed.Measured.Timber.Beams = j.Measured.Timber.Beams
	want, got := fieldtest.Work(t, surveyed, fieldtest.SampleFrame()), fieldtest.Work(t, j, fieldtest.SampleFrame())
	assert.Equal(t, job.SeatsRead, got.Progress)
	assert.Nil(t, got.Floor, "what hangs on the ground stays unknown")
	assert.Equal(t, want.Lines, got.Lines)
	require.Len(t, got.Posts, len(want.Posts))
	for i := range want.Posts {
		assert.Equal(t, want.Posts[i].Length(), got.Posts[i].Length(), want.Posts[i].Name)
		assert.Equal(t, want.Posts[i].State, got.Posts[i].State, want.Posts[i].Name)
	}
	assert.Len(t, got.StillToCut(), len(got.Posts))

	var r, whole figure.Registry
	r.Add(got.Figures(j)...)
	whole.Add(want.Figures(surveyed)...)
	for _, key := range []string{"pier.A1.post", "pier.B3.seat", "pier.B3.post", "floor.height", "post_tops.height", "post.longest_cut", "post.shortest_cut", "post.total", "line.B.post_tops"} {
		assert.NotEmpty(t, r.Text(key, j.Style()), key)
		assert.Equal(t, whole.Text(key, j.Style()), r.Text(key, j.Style()), key)
	}
	for _, key := range []string{"pier.A1.dig", "pier.A1.ground", "hole.deepest", "stone.order"} {
		f, known := r.Get(key)
		assert.True(t, known, key)
		assert.Nil(t, f.Value, key)
	}

	// A post cut too short has no way out over a lower floor: nobody knows the clearance.
	j.Measured.PostsCut = map[string]measure.Length{"A1": fieldtest.In(1)}
	for _, way := range fieldtest.Work(t, j, fieldtest.SampleFrame()).Posts[0].Ways {
		if way.Kind == "lower floor" {
			assert.NotEmpty(t, way.Blocked)
		}
	}
}

// One seat short, or a floor still to be chosen, and the readings would be lost.
func TestSeatsAloneMustBeAllUnderAGivenFloor(t *testing.T) {
	for name, spoil := range map[string]func(*job.Job){
		"a seat short":       func(j *job.Job) { delete(j.Measured.Seats, "B3") },
		"floor to be chosen": func(j *job.Job) { j.Platform.Floor = job.Floor{Lowest: true} },
	} {
		j := fieldtest.SeatsRead(t, nil)
		j.Ground.SetUps, j.Ground.Spots, j.Ground.Probes, j.Piers = nil, nil, nil, nil
		spoil(j)
		_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
		require.Equal(t, 1, faults.Len(), name)
		assert.Contains(t, faults.Sorted()[0].Remedy, "read the seat of every pier and give platform.floor.height", name)
	}
}

// A post that prints as its limit, halves rounded up, is cut to it and fits: half
// a printed mark under the shortest does, half a mark over the longest does not.
func TestAPostThatPrintsAsItsLimitFits(t *testing.T) {
	for _, c := range []struct {
		under       measure.Length
		short, long heights.PostState
	}{
		{3 * measure.Micrometre, heights.CutNow, heights.CutNow}, {measure.Sixteenth/2 - 1, heights.CutNow, heights.CutNow},
		{measure.Sixteenth / 2, heights.CutNow, heights.Unfit}, {measure.Sixteenth/2 + 1, heights.Unfit, heights.Unfit}, {measure.Sixteenth, heights.Unfit, heights.Unfit},
	} {
		under := c.under
		j := fieldtest.SeatsRead(t, nil)
		g := fieldtest.Work(t, j, fieldtest.SampleFrame())
		// A higher seat is a lesser reading: take off it what the post has over 3 in.
		over := g.Posts[11].Length() - fieldtest.In(3)
		j.Measured.Seats["C2"] -= over + under
		post := fieldtest.Work(t, j, fieldtest.SampleFrame()).Posts[11]
		require.Equal(t, fieldtest.In(3)-under, post.Length())
		assert.Equal(t, c.short, post.State, "%d nm under the shortest", int64(under))
		long := fieldtest.SeatsRead(t, nil)
		long.Measured.Seats["C2"] += fieldtest.In(24) - g.Posts[11].Length() + under
		assert.Equal(t, c.long, fieldtest.Work(t, long, fieldtest.SampleFrame()).Posts[11].State, "%d nm over the longest", int64(under))
	}
}

func TestAShortSeatIsMendedAtItsPierAndBindsTheRest(t *testing.T) {
	j := fieldtest.SeatsRead(t, map[string]float64{"C2": 1})
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	require.Nil(t, g.Clash)
	post := g.Posts[11]
	require.Equal(t, "C2", post.Name)
	assert.Equal(t, heights.Unfit, post.State)
	assert.Equal(t, "lower the seat", post.Ways[0].Kind)
	assert.Equal(t, fieldtest.In(3)-post.Length(), post.Ways[0].By)
}

// The finished floor of the sample, an eighth high at C5, a quarter low at A1:
// deviations from the mean plane worked with the same plane on paper.
func TestFinishedFloor(t *testing.T) {
	j := fieldtest.SeatsRead(t, nil)
	floor := j.Platform.Floor.Height
	j.Measured.Finished = map[string]measure.Length{"bench_mark": fieldtest.In(49.5)}
	for _, p := range fieldtest.SampleFrame().Piers {
		j.Measured.Finished[p.Name] = fieldtest.In(49.5) - floor
	}
	j.Measured.Finished["B3"] -= fieldtest.In(0.125) // a hump
	j.Measured.Finished["B4"] += fieldtest.In(0.0625)
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	assert.Equal(t, job.AsBuilt, g.Progress)
	built := g.AsBuilt
	require.NotNil(t, built)
	assert.Equal(t, "B3", built.High.Name)
	assert.Equal(t, fieldtest.In(0.125), built.High.Over)
	assert.Equal(t, fieldtest.In(0.1875), built.Range)
	assert.Equal(t, fieldtest.In(0.1875), built.WorstStep)
	assert.Equal(t, [2]string{"B3", "B4"}, [2]string{built.WorstNeighbour[0].Name, built.WorstNeighbour[1].Name})
	require.True(t, built.Plane)
	assert.Equal(t, "B3", built.Hump.Name)
	// The hump over a plane of fifteen points, of which it is the middle one.
	mean := (0.125 - 0.0625) / 15
	assert.InDelta(t, 0.125-mean, built.HumpBy.Inches(), 0.001)
}

func TestATiltedFloorIsATiltAndNoHump(t *testing.T) {
	j := fieldtest.SeatsRead(t, nil)
	f := fieldtest.SampleFrame()
	j.Measured.Finished = map[string]measure.Length{"bench_mark": fieldtest.In(49.5)}
	first, last := f.Piers[0], f.Piers[len(f.Piers)-1]
	for _, p := range f.Piers {
		j.Measured.Finished[p.Name] = fieldtest.In(30) - fieldtest.In(0.25).Scale(float64(p.X-first.X)/float64(last.X-first.X))
	}
	built := fieldtest.Work(t, j, f).AsBuilt
	assert.InDelta(t, 0.25, built.TiltX.Inches(), 1e-6)
	assert.InDelta(t, 0, built.TiltY.Inches(), 1e-6)
	assert.InDelta(t, 0, built.HumpBy.Inches(), 1e-6)
}
