package ground_test

import (
	"maps"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/figure"
	"pierbook/calc/ground"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// seatsRead is the sample with its floor fixed and every seat read a little off
// its plan. The instrument stands 49.5 over the bench mark that day.
func seatsRead(t *testing.T, off map[string]float64) *job.Job {
	j := sampleJob()
	plan := work(t, j, sampleFrame())
	j.Platform.Floor = job.Floor{Height: plan.Floor.Height}
	j.Measured.Seats = map[string]measure.Length{"bench_mark": in(49.5), "close": in(49.5)}
	for _, p := range plan.Piers {
		j.Measured.Seats[p.Name] = in(49.5) - p.Hole.Seat - in(off[p.Name])
	}
	return j
}

func TestPostsFollowTheSeatsAsRead(t *testing.T) {
	j := seatsRead(t, map[string]float64{"A1": 0.25, "B3": -0.5})
	g := work(t, j, sampleFrame())
	plan := work(t, sampleJob(), sampleFrame())
	assert.Equal(t, ground.SeatsRead, g.Progress)
	for i, p := range g.Piers {
		move := map[string]float64{"A1": -0.25, "B3": 0.5}[p.Name]
		assert.Equal(t, plan.Piers[i].Hole.Post+in(move), p.Hole.Post, p.Name)
		// On paper: the printed number, the reading in the seat, the bench mark's.
		line := g.Lines[p.Name[0]-'A']
		assert.Equal(t, p.Hole.Post, line.Printed+j.Measured.Seats[p.Name]-j.Measured.Seats["bench_mark"], p.Name)
		assert.Equal(t, plan.Piers[i].Hole.Post, p.Planned.Post, p.Name)
	}
	assert.Equal(t, in(0.25), g.Seats.Read[0].Over())
}

func TestMeasuredEqualToPlannedChangesNoLength(t *testing.T) {
	plan := work(t, sampleJob(), sampleFrame())
	j := seatsRead(t, nil)
	j.Measured.Timber.Beams = map[string]measure.Length{"A": in(5.5), "B": in(5.5), "C": in(5.5)}
	joists := in(5.5)
	j.Measured.Timber.Joists = &joists
	j.Measured.Holes = map[string]job.Probe{}
	for _, p := range plan.Piers {
		if p.Name != "C1" {
			j.Measured.Holes[p.Name] = job.Probe{Depth: p.Hole.Dig, Found: "firm"}
		}
	}
	g := work(t, j, sampleFrame())
	for i, p := range g.Piers {
		assert.Equal(t, plan.Piers[i].Hole.Dig, p.Hole.Dig, p.Name)
		assert.Equal(t, plan.Piers[i].Hole.Stone, p.Hole.Stone, p.Name)
		assert.Equal(t, plan.Piers[i].Hole.Post, p.Hole.Post, p.Name)
	}
	assert.Equal(t, plan.Stone.Compacted, g.Stone.Compacted)
}

func TestThinBeamOfOneLineLengthensItsPosts(t *testing.T) {
	j := seatsRead(t, nil)
	j.Measured.Timber.Beams = map[string]measure.Length{"B": in(5.4375)}
	g := work(t, j, sampleFrame())
	plan := work(t, sampleJob(), sampleFrame())
	for i, p := range g.Piers {
		more := measure.Length(0)
		if p.Name[0] == 'B' {
			more = in(0.0625)
		}
		assert.Equal(t, plan.Piers[i].Hole.Post+more, p.Hole.Post, p.Name)
	}
	for _, f := range g.Figures(j) {
		switch f.Key {
		case "pier.B1.post":
			assert.Contains(t, f.Working, "14\u00a03/4″ − 11\u00a03/4″ − ", "by the build-up of its own line")
		case "pier.B1.seat":
			assert.Equal(t, []string{"pier.B1.seat_read"}, f.From)
		}
	}
}

func TestOverDugHoleIsFilledWithStone(t *testing.T) {
	j := sampleJob()
	j.Measured.Holes = map[string]job.Probe{"B3": {Depth: in(11), Found: "firm"}}
	g := work(t, j, sampleFrame())
	p := pier(t, g, "B3")
	assert.Equal(t, in(8), p.Planned.Dig)
	assert.Equal(t, in(11), p.Hole.Dig)
	assert.Equal(t, in(6.5), p.Hole.Stone, "up to the deepest cover, 4 1/2")
	assert.Equal(t, ground.HoleAsDug, p.Hole.DigLeastBy)
}

func TestFloorIsLockedOnceASeatIsRead(t *testing.T) {
	j := seatsRead(t, nil)
	j.Platform.Floor = job.Floor{Lowest: true, RoundUp: in(0.25)}
	_, faults := ground.Work(j, sampleFrame())
	require.Len(t, faults.Sorted(), 1)
	assert.Equal(t, "platform.floor.height", faults.Sorted()[0].Path)
	assert.Contains(t, faults.Sorted()[0].Remedy, `height: 1' 2 3/4"`)

	j = sampleJob()
	j.Measured.PostsCut = map[string]measure.Length{"A1": in(7)}
	_, faults = ground.Work(j, sampleFrame())
	assert.Len(t, faults.Sorted(), 1)
}

func TestSeatsNeedTheBenchMarkOfTheDay(t *testing.T) {
	j := seatsRead(t, nil)
	delete(j.Measured.Seats, "bench_mark")
	_, faults := ground.Work(j, sampleFrame())
	require.Len(t, faults.Sorted(), 1)
	assert.Equal(t, "measured.seats", faults.Sorted()[0].Path)

	j = seatsRead(t, nil)
	j.Measured.Seats["close"] = in(49.75)
	_, faults = ground.Work(j, sampleFrame())
	require.Len(t, faults.Sorted(), 1)
	assert.Equal(t, "measured.seats.close", faults.Sorted()[0].Path)
}

func TestCutPostsAreNeverIssuedAgain(t *testing.T) {
	j := seatsRead(t, nil)
	plan := work(t, sampleJob(), sampleFrame())
	want := map[string]measure.Length{}
	for _, p := range plan.Piers {
		want[p.Name] = p.Hole.Post
	}
	j.Measured.PostsCut = map[string]measure.Length{
		"A1": want["A1"],              // right
		"A3": want["A3"] - in(0.125),  // a shim makes it up
		"A5": want["A5"] + in(0.5),    // to be trimmed
		"B5": want["B5"] - in(0.75),   // short: serves elsewhere
		"C1": want["C1"] - in(0.1875), // short, under every other post but one
	}
	g := work(t, j, sampleFrame())
	state := map[string]ground.Post{}
	for _, p := range g.Posts {
		state[p.Name] = p
	}
	assert.Equal(t, ground.Serves, state["A1"].State)
	assert.Equal(t, ground.Shim, state["A3"].State)
	assert.Equal(t, in(0.125), state["A3"].Shim)
	assert.Equal(t, ground.Trim, state["A5"].State)
	assert.Equal(t, ground.CutAnew, state["B5"].State)
	assert.Equal(t, ground.CutAnew, state["C1"].State)
	issued := map[string]bool{}
	for _, p := range g.ToCut() {
		issued[p.Name] = true
	}
	assert.False(t, issued["A1"] || issued["A3"] || issued["A5"])
	assert.True(t, issued["B5"] && issued["C1"])

	way := state["B5"].Ways[0]
	require.Equal(t, "another pier", way.Kind)
	require.NotEmpty(t, way.Pier)
	assert.Equal(t, "B5", state[way.Pier].From)
	assert.False(t, issued[way.Pier], "its post is the one cut short for B5")
	assert.LessOrEqual(t, state[way.Pier].Wanted, *state["B5"].Cut+measure.Sixteenth)

	lower := state["C1"].Ways[1]
	assert.Equal(t, "lower floor", lower.Kind)
	assert.Equal(t, in(0.1875), lower.By)
	assert.ElementsMatch(t, []string{"A1", "A5"}, trimsOf(lower, "A1", "A5"))
	assert.Contains(t, lower.TooShort, "C2", "its post is at the shortest already")
	assert.NotEmpty(t, lower.Blocked)
}

// What is cut goes where it saves a new post: the long post and the short one
// change places, a short post serves at a pier whose own is shorter still, and a
// long post stays where trimming it saves as much.
func TestCutPostsGoWhereTheySaveMost(t *testing.T) {
	want := map[string]measure.Length{}
	for _, p := range work(t, sampleJob(), sampleFrame()).Piers {
		want[p.Name] = p.Hole.Post
	}
	// Every post is cut as wanted but for those given; a length of 0 is not cut.
	posts := func(others map[string]measure.Length) map[string]ground.Post {
		j := seatsRead(t, nil)
		j.Measured.PostsCut = maps.Clone(want)
		maps.Copy(j.Measured.PostsCut, others)
		maps.DeleteFunc(j.Measured.PostsCut, func(_ string, length measure.Length) bool { return length == 0 })
		state := map[string]ground.Post{}
		for _, p := range work(t, j, sampleFrame()).Posts {
			state[p.Name] = p
		}
		return state
	}
	require.Greater(t, want["A5"], want["A1"]+measure.Inch, "the ground falls along line A")

	swapped := posts(map[string]measure.Length{"A1": want["A5"], "A5": want["A1"]})
	assert.Equal(t, ground.Exchange, swapped["A1"].State)
	assert.Equal(t, "A5", swapped["A1"].From)
	assert.Equal(t, ground.Exchange, swapped["A5"].State)
	assert.Equal(t, "A1", swapped["A5"].From)
	assert.Zero(t, swapped["A5"].Off)

	long := posts(map[string]measure.Length{"A1": want["A1"] + in(0.5)})
	assert.Equal(t, ground.Trim, long["A1"].State, "trimmed where it is")

	chain := posts(map[string]measure.Length{"A5": want["A5"] - in(0.5), "A1": want["A1"] - in(1)})
	assert.Equal(t, ground.CutAnew, chain["A5"].State)
	assert.Equal(t, ground.Exchange, chain["A1"].State)
	assert.Equal(t, "A5", chain["A1"].From)
	assert.Equal(t, want["A5"]-in(0.5)-want["A1"], chain["A1"].Off)

	missing := posts(map[string]measure.Length{"A1": 0, "C5": want["C5"] + in(0.5), "A5": want["A5"] - in(0.5)})
	assert.Equal(t, ground.Trim, missing["C5"].State, "its post serves where it is")
	assert.Equal(t, "A5", missing["A1"].From)
}

func trimsOf(way ground.WayOut, names ...string) []string {
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
	surveyed := seatsRead(t, map[string]float64{"A1": 0.25, "B3": -0.5})
	j := seatsRead(t, map[string]float64{"A1": 0.25, "B3": -0.5})
	j.Ground.SetUps, j.Ground.Spots, j.Ground.Probes, j.Piers = nil, nil, nil, nil
	j.Measured.Timber.Beams = map[string]measure.Length{"B": in(5.625)}
	surveyed.Measured.Timber.Beams = j.Measured.Timber.Beams
	want, got := work(t, surveyed, sampleFrame()), work(t, j, sampleFrame())
	assert.Equal(t, ground.SeatsRead, got.Progress)
	assert.Nil(t, got.Floor, "what hangs on the ground stays unknown")
	assert.Equal(t, want.Lines, got.Lines)
	require.Len(t, got.Posts, len(want.Posts))
	for i := range want.Posts {
		assert.Equal(t, want.Posts[i].Wanted, got.Posts[i].Wanted, want.Posts[i].Name)
		assert.Equal(t, want.Posts[i].State, got.Posts[i].State, want.Posts[i].Name)
	}
	assert.Len(t, got.ToCut(), len(got.Posts))

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
	j.Measured.PostsCut = map[string]measure.Length{"A1": in(1)}
	for _, way := range work(t, j, sampleFrame()).Posts[0].Ways {
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
		j := seatsRead(t, nil)
		j.Ground.SetUps, j.Ground.Spots, j.Ground.Probes, j.Piers = nil, nil, nil, nil
		spoil(j)
		_, faults := ground.Work(j, sampleFrame())
		require.Equal(t, 1, faults.Len(), name)
		assert.Contains(t, faults.Sorted()[0].Remedy, "read the seat of every pier and give platform.floor.height", name)
	}
}

// A post that prints as its limit, halves rounded up, is cut to it and fits: half
// a printed mark under the shortest does, half a mark over the longest does not.
func TestAPostThatPrintsAsItsLimitFits(t *testing.T) {
	for _, c := range []struct {
		under       measure.Length
		short, long ground.PostState
	}{
		{3 * measure.Micrometre, ground.ToCut, ground.ToCut}, {measure.Sixteenth/2 - 1, ground.ToCut, ground.ToCut},
		{measure.Sixteenth / 2, ground.ToCut, ground.Unfit}, {measure.Sixteenth/2 + 1, ground.Unfit, ground.Unfit}, {measure.Sixteenth, ground.Unfit, ground.Unfit},
	} {
		under := c.under
		j := seatsRead(t, nil)
		g := work(t, j, sampleFrame())
		// A higher seat is a lesser reading: take off it what the post has over 3 in.
		over := g.Posts[11].Wanted - in(3)
		j.Measured.Seats["C2"] -= over + under
		post := work(t, j, sampleFrame()).Posts[11]
		require.Equal(t, in(3)-under, post.Wanted)
		assert.Equal(t, c.short, post.State, "%d nm under the shortest", int64(under))
		long := seatsRead(t, nil)
		long.Measured.Seats["C2"] += in(24) - g.Posts[11].Wanted + under
		assert.Equal(t, c.long, work(t, long, sampleFrame()).Posts[11].State, "%d nm over the longest", int64(under))
	}
}

func TestAShortSeatIsMendedAtItsPierAndBindsTheRest(t *testing.T) {
	j := seatsRead(t, map[string]float64{"C2": 1})
	g := work(t, j, sampleFrame())
	require.Nil(t, g.Clash)
	post := g.Posts[11]
	require.Equal(t, "C2", post.Name)
	assert.Equal(t, ground.Unfit, post.State)
	assert.Equal(t, "lower the seat", post.Ways[0].Kind)
	assert.Equal(t, in(3)-post.Wanted, post.Ways[0].By)
}

// The finished floor of the sample, an eighth high at C5, a quarter low at A1:
// deviations from the mean plane worked with the same plane on paper.
func TestFinishedFloor(t *testing.T) {
	j := seatsRead(t, nil)
	floor := j.Platform.Floor.Height
	j.Measured.Finished = map[string]measure.Length{"bench_mark": in(49.5)}
	for _, p := range sampleFrame().Piers {
		j.Measured.Finished[p.Name] = in(49.5) - floor
	}
	j.Measured.Finished["B3"] -= in(0.125) // a hump
	j.Measured.Finished["B4"] += in(0.0625)
	g := work(t, j, sampleFrame())
	assert.Equal(t, ground.AsBuilt, g.Progress)
	built := g.AsBuilt
	require.NotNil(t, built)
	assert.Equal(t, "B3", built.High.Name)
	assert.Equal(t, in(0.125), built.High.Over)
	assert.Equal(t, in(0.1875), built.Range)
	assert.Equal(t, in(0.1875), built.WorstStep)
	assert.Equal(t, [2]string{"B3", "B4"}, [2]string{built.WorstNeighbour[0].Name, built.WorstNeighbour[1].Name})
	require.True(t, built.Plane)
	assert.Equal(t, "B3", built.Hump.Name)
	// The hump over a plane of fifteen points, of which it is the middle one.
	mean := (0.125 - 0.0625) / 15
	assert.InDelta(t, 0.125-mean, built.HumpBy.Inches(), 0.001)
}

func TestATiltedFloorIsATiltAndNoHump(t *testing.T) {
	j := seatsRead(t, nil)
	f := sampleFrame()
	j.Measured.Finished = map[string]measure.Length{"bench_mark": in(49.5)}
	first, last := f.Piers[0], f.Piers[len(f.Piers)-1]
	for _, p := range f.Piers {
		j.Measured.Finished[p.Name] = in(30) - in(0.25).Scale(float64(p.X-first.X)/float64(last.X-first.X))
	}
	built := work(t, j, f).AsBuilt
	assert.InDelta(t, 0.25, built.TiltX.Inches(), 1e-6)
	assert.InDelta(t, 0, built.TiltY.Inches(), 1e-6)
	assert.InDelta(t, 0, built.HumpBy.Inches(), 1e-6)
}
