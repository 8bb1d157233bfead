package heights_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/fieldtest"
	"pierbook/calc/frame"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

// TestPublishedFloors works the cases with the height of the instrument as the
// datum, as they are printed: the bench mark lies in the plane of the laser.
func TestPublishedFloors(t *testing.T) {
	type inputs struct {
		Rods     map[string]float64 `yaml:"rod_readings_on_ground"`
		Firm     map[string]float64 `yaml:"depth_to_firm_ground"`
		BuildUp  float64            `yaml:"depth_of_floor_build_up"`
		Block    float64            `yaml:"block_height"`
		Above    float64            `yaml:"block_top_above_ground_min"`
		PostMin  float64            `yaml:"post_min"`
		PostMax  float64            `yaml:"post_max"`
		StoneMin float64            `yaml:"stone_min"`
		StoneMax float64            `yaml:"stone_max"`
		DigMin   float64            `yaml:"dig_min"`
		DigMax   float64            `yaml:"dig_max"`
		Embed    float64            `yaml:"stone_top_below_ground_min"`
		Clear    float64            `yaml:"beam_underside_above_ground_min"`
	}
	type result struct {
		Floor   float64 `yaml:"floor_relative_to_laser_plane"`
		Governs string  `yaml:"governing_pier"`
		Piers   map[string]struct {
			Post, Dig, Stone float64
			Top              float64 `yaml:"block_top"`
		}
	}
	for _, e := range fieldtest.Examples(t, "floor-height.yaml", "finished_floor_height") {
		t.Run(e.ID, func(t *testing.T) {
			given, want := fieldtest.Into[inputs](t, e.Inputs), fieldtest.Into[result](t, e.Result)
			j := fieldtest.TermsJob()
			j.Platform.Floor.RoundUp = 0
			j.Frame.Posts = job.Posts{Shortest: fieldtest.In(given.PostMin), Longest: fieldtest.In(given.PostMax)}
			j.Frame.Clear = fieldtest.In(given.Clear)
			j.Block.SeatHeight, j.Block.Height = fieldtest.In(given.Block), fieldtest.In(given.Block)
			j.Stone.Least, j.Stone.Most, j.Stone.Embed, j.Stone.AboveGround = fieldtest.In(given.StoneMin), fieldtest.In(given.StoneMax), fieldtest.In(given.Embed), fieldtest.In(given.Above)
			j.Dig = job.Dig{Least: fieldtest.In(given.DigMin), Deepest: fieldtest.In(given.DigMax)}
			j.Ground.Probes = map[string]job.Probe{}
			setUp := []job.Sight{{Point: levelling.BenchMark}}
			f := fieldtest.GridFrame(10*measure.Foot, 10*measure.Foot, 2, 3)
			f.BuildUp = frame.BuildUp{Surface: fieldtest.In(given.BuildUp)}
			names := map[string]string{}
			for i, name := range slices.Sorted(maps.Keys(given.Rods)) {
				names[name] = f.Piers[i].Name
				setUp = append(setUp, job.Sight{Point: f.Piers[i].Name, Reading: fieldtest.In(given.Rods[name])})
				if firm, probed := given.Firm[name]; probed {
					j.Ground.Probes[f.Piers[i].Name] = job.Probe{Depth: fieldtest.In(firm), Found: "firm"}
				}
			}
			j.Ground.SetUps = [][]job.Sight{setUp}
			g := fieldtest.Work(t, j, f)
			require.Nil(t, g.Clash)
			assert.InDelta(t, want.Floor, g.Floor.Height.Inches(), e.Tolerance)
			assert.Equal(t, names[want.Governs], g.Floor.Governs.Name)
			for name, p := range want.Piers {
				hole := fieldtest.Pier(t, g, names[name]).Hole
				assert.InDelta(t, p.Dig, hole.Dig.Inches(), e.Tolerance, name)
				assert.InDelta(t, p.Stone, hole.Stone.Inches(), e.Tolerance, name)
				assert.InDelta(t, p.Top, hole.Seat.Inches(), e.Tolerance, name)
				assert.InDelta(t, p.Post, hole.Post.Inches(), e.Tolerance, name)
			}
		})
	}
}

// randomSite draws a site on whole sixteenths, so that trying every sixteenth is
// a proof.
func randomSite(t *rapid.T) (*job.Job, *frame.Frame) {
	sixteenths := func(label string, low, high int) measure.Length {
		return measure.Length(rapid.IntRange(low, high).Draw(t, label)) * measure.Sixteenth
	}
	j := fieldtest.TermsJob()
	j.Platform.Floor.RoundUp = 0
	j.Dig = job.Dig{Least: sixteenths("least dig", 0, 96), Deepest: sixteenths("deepest", 160, 400)}
	j.Stone.Embed, j.Stone.AboveGround = sixteenths("embed", 0, 32), sixteenths("above", 0, 32)
	j.Stone.Least = sixteenths("least stone", 32, 96)
	j.Stone.Most = j.Stone.Least + sixteenths("more stone", 0, 128)
	j.Frame.Posts.Longest = j.Frame.Posts.Shortest + sixteenths("post range", 32, 400)
	j.Frame.Clear = sixteenths("clear", 0, 96)
	f := fieldtest.GridFrame(12*measure.Foot, 8*measure.Foot, 2, 2)
	f.BuildUp = frame.BuildUp{Surface: fieldtest.In(0.75), Joist: fieldtest.In(5.5), Beam: fieldtest.In(5.5)}
	setUp := []job.Sight{{Point: levelling.BenchMark, Reading: fieldtest.In(60)}}
	j.Ground.Probes = map[string]job.Probe{}
	for _, p := range f.Piers {
		setUp = append(setUp, job.Sight{Point: p.Name, Reading: fieldtest.In(60) + sixteenths(p.Name, -160, 160)})
		if rapid.Bool().Draw(t, p.Name+" probed") {
			found := rapid.SampledFrom([]string{"firm", "rock", "water"}).Draw(t, p.Name+" found")
			j.Ground.Probes[p.Name] = job.Probe{Depth: sixteenths(p.Name+" depth", 64, 300), Found: found}
		}
	}
	j.Ground.SetUps = [][]job.Sight{setUp}
	return j, f
}

// tried looks for a dig and a stone by trying every sixteenth, and returns the
// least dig with its least stone, as the rules of the job are written.
func tried(j *job.Job, buildUp, floor measure.Length, p heights.PierHeights) (dig, stone measure.Length, found bool) {
	g := p.Level.Height
	if floor-buildUp < g+j.Frame.Clear {
		return 0, 0, false
	}
	probe, probed := j.Ground.Probes[p.Name]
	for dig := measure.Length(0); dig <= j.Dig.Deepest; dig += measure.Sixteenth {
		if dig < j.Dig.Least || probed && (probe.Found != "water" && dig < probe.Depth || probe.Found != "firm" && dig > probe.Depth) {
			continue
		}
		for stone := j.Stone.Least; stone <= j.Stone.Most; stone += measure.Sixteenth {
			seat := g - dig + stone + j.Block.SeatHeight
			post := floor - buildUp - seat
			if dig >= stone+j.Stone.Embed && seat >= g+j.Stone.AboveGround && post >= j.Frame.Posts.Shortest && post <= j.Frame.Posts.Longest {
				return dig, stone, true
			}
		}
	}
	return 0, 0, false
}

func TestLowestFloorByTryingEverySixteenth(t *testing.T) {
	met, clashed := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		j, f := randomSite(t)
		g := fieldtest.Work(t, j, f)
		buildUp := f.BuildUp.Total()
		if g.Clash != nil {
			clashed++
			require.Positive(t, g.Clash.Amount)
			for floor := fieldtest.In(-20); floor <= fieldtest.In(60); floor += measure.Sixteenth {
				all := true
				for _, p := range g.Piers {
					_, _, found := tried(j, buildUp, floor, p)
					all = all && found
				}
				require.False(t, all, "a floor of %v would do", floor)
			}
			return
		}
		met++
		below := false
		for _, p := range g.Piers {
			dig, stone, found := tried(j, buildUp, g.Floor.Height, p)
			require.True(t, found, "%s at the floor chosen", p.Name)
			require.Equal(t, dig, p.Hole.Dig, p.Name)
			require.Equal(t, stone, p.Hole.Stone, p.Name)
			_, _, lower := tried(j, buildUp, g.Floor.Height-measure.Sixteenth, p)
			below = below || !lower
		}
		require.True(t, below, "one step lower would do as well")
	})
	assert.Positive(t, met)
	assert.Positive(t, clashed)
}

// changedTo is the job with one way out of a clash taken.
func changedTo(j *job.Job, way heights.Loosening, to measure.Length) *job.Job {
	way.To = to
	return way.In(j)
}

func TestEveryWayOutOfAClashFreesItAndStandsOnceWithTheLeastChange(t *testing.T) {
	freed := 0
	rapid.Check(t, func(t *rapid.T) {
		j, f := randomSite(t)
		j.Dig.Deepest = j.Dig.Least + measure.Length(rapid.IntRange(0, 200).Draw(t, "deeper"))*measure.Sixteenth
		j.Platform.Floor.RoundUp = measure.Length(rapid.IntRange(0, 8).Draw(t, "round up")) * measure.Sixteenth
		if rapid.Bool().Draw(t, "given") {
			j.Platform.Floor = job.Floor{Height: measure.Length(rapid.IntRange(0, 800).Draw(t, "floor")) * measure.Sixteenth}
		}
		g := fieldtest.Work(t, j, f)
		if g.Clash == nil {
			return
		}
		offered := map[string]bool{}
		for _, way := range g.Clash.Ways {
			require.False(t, offered[way.Path], "%s is offered twice", way.Path)
			offered[way.Path] = true
			require.Nil(t, fieldtest.Work(t, changedTo(j, way, way.To), f).Clash, "%s to %v", way.Path, way.To)
			if !strings.HasPrefix(way.Path, "platform.floor.") || !j.Platform.Floor.Lowest && way.Path == "platform.floor.height" {
				less := way.To - measure.Sixteenth
				if way.To < way.From {
					less = way.To + measure.Sixteenth
				}
				require.NotNil(t, fieldtest.Work(t, changedTo(j, way, less), f).Clash, "%s to %v would do", way.Path, less)
			}
			freed++
		}
	})
	assert.Positive(t, freed)
}

// Without rounding up, the amount of the clash and that with what rounding adds
// are the same: no way may stand twice for it. Each row is the sample with one
// limit drawn in, and all the ways that an exchange of limits leaves it.
func TestWaysOutOfTheSampleDrawnIn(t *testing.T) {
	for name, row := range map[string]struct {
		draw func(*job.Job)
		want []string
	}{
		"posts far too short": {func(j *job.Job) { j.Frame.Posts.Longest = fieldtest.In(8) }, []string{"frame.posts.longest"}},
		// at A5 the embed's 2 goes before 13 1/2 less 12
		"posts too short": {func(j *job.Job) { j.Frame.Posts.Longest = fieldtest.In(11) }, []string{"frame.posts.longest", "frame.posts.shortest", "stone.above_ground", "stone.embed"}},
		"digging too shallow": {func(j *job.Job) { j.Ground.Probes, j.Piers, j.Dig.Deepest = nil, nil, fieldtest.In(6) },
			[]string{"dig.deepest", "stone.least", "stone.embed"}}, // 6 of bed and 2 over it in a hole of 6
		"floor too low": {func(j *job.Job) { j.Platform.Floor = job.Floor{Height: fieldtest.In(14.5)} },
			[]string{"platform.floor.height", "frame.posts.shortest", "stone.above_ground"}},
		"floor too high": {func(j *job.Job) { j.Ground.Probes, j.Platform.Floor = nil, job.Floor{Height: fieldtest.In(40)} },
			[]string{"platform.floor.height", "frame.posts.longest"}},
		"rock under a thick bed": {func(j *job.Job) { j.Piers, j.Platform.Floor = nil, job.Floor{Height: fieldtest.In(15)} },
			[]string{"stone.least", "piers.C1.bed"}}, // a lesser embed would want a higher floor too
	} {
		j := fieldtest.SampleJob()
		j.Platform.Floor.RoundUp = 0
		row.draw(j)
		c := fieldtest.Work(t, j, fieldtest.SampleFrame()).Clash
		if !assert.NotNil(t, c, name) {
			continue
		}
		var paths []string
		for _, way := range c.Ways {
			paths = append(paths, way.Path)
		}
		assert.Equal(t, row.want, paths, name)
	}
}

func TestHeightsThatCannotBeMetNameTheTwoPiers(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Frame.Posts.Longest = fieldtest.In(8)
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	require.NotNil(t, g.Clash)
	assert.Nil(t, g.Floor)
	assert.Nil(t, fieldtest.Pier(t, g, "A1").Hole)
	assert.NotNil(t, fieldtest.Pier(t, g, "A1").Level, "the ground does not depend on the floor")
	// Highest floor at A5: firm at 13 1/2, stone at most 12, so its cover is at
	// least 1 1/2, by the embed 2, and its seat at most −11.75 − 2 + 5 = −8.75; with 8 of post and 11.8125 the
	// floor is at most 11.0625. C1 wants 14.5625, which is 14 3/4 rounded up.
	assert.Equal(t, heights.TwoPiers, g.Clash.Kind)
	assert.Equal(t, "C1", g.Clash.High.Name)
	assert.Equal(t, "A5", g.Clash.Low.Name)
	assert.Equal(t, fieldtest.In(3.5), g.Clash.Amount)
	assert.Contains(t, g.Clash.Ways, heights.Loosening{Path: "frame.posts.longest", Means: "longest post", From: fieldtest.In(8), To: fieldtest.In(14.75 - 11.0625 + 8)})
}

func TestAGivenFloorBelowTheLowestClashes(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Platform.Floor = job.Floor{Height: fieldtest.In(14)}
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	require.NotNil(t, g.Clash)
	assert.Equal(t, heights.TooLow, g.Clash.Kind)
	assert.Equal(t, fieldtest.In(0.5625), g.Clash.Amount)
	assert.Equal(t, heights.Loosening{Path: "platform.floor.height", Means: "height of the floor", From: fieldtest.In(14), To: fieldtest.In(14.5625)}, g.Clash.Ways[0])
}

func TestFrostDeepensTheHolesOnlyWhenTheJobSaysDig(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Site.FrostDepth = fieldtest.In(12)
	assert.Equal(t, fieldtest.In(8), fieldtest.Pier(t, fieldtest.Work(t, j, fieldtest.SampleFrame()), "B3").Hole.Dig)
	j.Site.Frost = "dig"
	j.Ground.Probes, j.Piers = nil, nil
	assert.Equal(t, fieldtest.In(12), fieldtest.Pier(t, fieldtest.Work(t, j, fieldtest.SampleFrame()), "B3").Hole.Dig)
}

func TestRockAboveTheLeastDigIsAClashOfOnePier(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.Probes["C1"] = job.Probe{Depth: fieldtest.In(3), Found: "rock"}
	c := fieldtest.Work(t, j, fieldtest.SampleFrame()).Clash
	require.NotNil(t, c)
	assert.Equal(t, heights.OnePier, c.Kind)
	assert.Equal(t, [2]string{"C1", "C1"}, [2]string{c.High.Name, c.Low.Name})
	assert.Equal(t, [2]heights.Limit{heights.Rock, heights.LeastDig}, [2]heights.Limit{c.High.Limit, c.Low.Limit})
	assert.Equal(t, fieldtest.In(1), c.Amount)
}

// What nothing in the job frees still says what fights with what, and what to do.
func TestAClashThatNothingFreesSaysWhatToDo(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.Probes["A3"] = job.Probe{Depth: fieldtest.In(30), Found: "firm"}
	c := fieldtest.Work(t, j, fieldtest.SampleFrame()).Clash
	require.NotNil(t, c)
	require.Empty(t, c.Ways)
	said := strings.ReplaceAll(c.Sentence(j.Style()), "\u00a0", " ")
	assert.Contains(t, said, "pier A3 (seat above ground against most stone) contradict each other by 13 1/2″")
}

func ExampleWork() {
	g, faults := fieldtest.Try(fieldtest.SampleJob(), fieldtest.SampleFrame())
	p, _ := g.Pier("A1")
	fmt.Println(faults.Empty(), g.Floor.Height, g.Floor.Governs.Name, p.Hole.Dig, p.Hole.Stone, p.Hole.Post)
	// Output: true 1' 2 3/4" C1 8 1/2" 6" 7 3/16"
}
