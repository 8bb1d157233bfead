package calc_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/yard"
)

// A platform on four piers that can be worked by hand. Boards of 1, joists and
// beams of 5 1/2 and no cap make a build-up of 12; the ground at A1, A2, B1, B2
// lies at 0, −2, −4, −6 inches. The seat of A1 may lie 1/2 over its ground, so
// with the shortest post of 3 the lowest floor is 0 + 1/2 + 3 + 12 = 15 1/2.
const fourPiers = `name: Four piers
units: imperial
platform:
  length: 8'
  width: 6'
  use: shed
  surface: {kind: boards, thickness: 1", width: 5 1/2", gap: 1/4"}
  floor: {height: FLOOR, room: 0}
site: {soil: {class: silty_sand, bearing: 2000 psf}}
timber: {species: hem_fir, grade: No.2}
frame:
  joists: {size: 2x6, spacing: 16", sit: on_beams}
  beams: {size: 4x6, lines: 2}
  posts: {size: 4x4, shortest: 3", longest: 24", cap: 0}
  piers: {per_line: 2}
  clear: 1"
block: {height: 5", seat_height: 5", base: 12"}
stone: {least: 6", most: 12", margin: 4", embed: 2", above_ground: 1/2", loose: 1.30}
dig: {least: 4", deepest: 20"}
yard: yard.yaml
`

const fourPiersRead = `ground:
  bench_mark: {where: nail in the gate post, height: 0}
  sights:
    - [bench_mark: 4', A1: 4', A2: 4' 2", B1: 4' 4", B2: 4' 6", bench_mark: 4']
`

const fourPiersYard = `kerf: 1/8"
end_trim: 0
stock: {4x4: [8'], 4x6: [8'], 2x6: [8']}
on_hand: {4x4: [20"]}
`

func readText(text string) (*job.Job, []string) {
	files := fstest.MapFS{"job.yaml": {Data: []byte(text)}, "yard.yaml": {Data: []byte(fourPiersYard)}}
	j, faults := job.Read(files, "job.yaml")
	var said []string
	for _, f := range faults.Sorted() {
		said = append(said, f.Path+": "+f.Wrong+"; "+f.Remedy)
	}
	return j, said
}

func workFour(t *testing.T, floor, rest string) *calc.Plan {
	t.Helper()
	j, said := readText(strings.Replace(fourPiers, "FLOOR", floor, 1) + rest)
	require.Empty(t, said)
	p, faults := calc.Work(j)
	require.Empty(t, faults.Sorted())
	return p
}

func in(v float64) measure.Length { return measure.FromMetres(v * 0.0254) }

// figures checks lengths in inches and words by their keys; "" is no value yet.
func figures(t *testing.T, p *calc.Plan, want map[string]any) {
	t.Helper()
	for key, v := range want {
		f, ok := p.Figures.Get(key)
		require.True(t, ok, key)
		switch v := v.(type) {
		case float64:
			assert.Equal(t, in(v), f.Value, key)
		case string:
			assert.Equal(t, v, f.Text(p.Style), key)
		case int:
			assert.Equal(t, measure.Count(v), f.Value, key)
		}
	}
}

func TestPlannedJob(t *testing.T) {
	p := workFour(t, "lowest", "")
	figures(t, p, map[string]any{
		"job.progress": "planned", "has.readings": "no", "has.seats": "no", "has.finished": "no", "has.changes": "no", "has.strings": "no",
		"build_up": 12.0, "floor.height": "", "pier.A1.post": "", "line.A.post_number": "", "strings.verdict": "", "strings.move.A1.along": "",
		"strings.side.A1-A2.measured": "", "built.range": "",
	})
	require.Len(t, postsOf(p), 4, "each taken at its longest")
	assert.Equal(t, 24*measure.Inch, postsOf(p)["A1"])
}

func TestSurveyedJob(t *testing.T) {
	p := workFour(t, "lowest", fourPiersRead)
	figures(t, p, map[string]any{
		"job.progress": "surveyed", "floor.height": 15.5, "floor.governed_by": "A1", "floor.limit": "seat above ground", "post_tops.height": 3.5,
		// A1: cover 4 1/2 and stone 6 make the dig 10 1/2; seat 0 − 10 1/2 + 6 + 5 = 1/2; post 3 1/2 − 1/2.
		"pier.A1.dig": 10.5, "pier.A1.stone": 6.0, "pier.A1.seat": 0.5, "pier.A1.post": 3.0,
		// A2 is dug 8 1/2 so that the shortest post fits: −2 − 8 1/2 + 6 + 5 = 1/2.
		"pier.A2.dig": 8.5, "pier.A2.stone": 6.0, "pier.A2.seat": 0.5, "pier.A2.post": 3.0,
		// B1 and B2 are dug the least, stone 6 + embedded 2: the seat lies 3 over the ground.
		"pier.B1.dig": 8.0, "pier.B1.seat": -1.0, "pier.B1.post": 4.5,
		"pier.B2.dig": 8.0, "pier.B2.seat": -3.0, "pier.B2.post": 6.5,
		"line.A.post_number": 3.5, "line.B.post_number": 3.5, "post_tops.above_bench_mark": 3.5,
		"pier.A1.post_state": "estimate", "pier.A1.seat_read": "",
	})
	assert.Equal(t, map[string]measure.Length{"A1": in(3), "A2": in(3), "B1": in(4.5), "B2": in(6.5)}, postsOf(p))
	figures(t, p, map[string]any{"cut.4x4.sticks": 0}) // 3 + 3 + 4 1/2 + 6 1/2 and four kerfs come out of the 20 in the yard's file
}

// measuredFour is what came back from the site: the seats of A1 and A2 are set
// lower than planned, B2 lower too; the beam of line A is 1/16 thin; the post of
// B2 was cut to the plan, 1/4 short of what its seat asks for.
const measuredFour = `measured:
  strings: {A1-A2: 8', A2-B2: 6', B1-B2: 8', A1-B1: 6', A1-B2: 10', B1-A2: 10'}
  timber: {beams: {A: 5 7/16", B: 5 1/2"}}
  holes: {A1: {depth: 10 1/2", found: firm}, B1: {depth: 9", found: firm}}
  seats: {bench_mark: 4' 0 1/2", close: 4' 0 1/2", A1: 4' 1/2", A2: 4' 1/4", B1: 4' 1 1/2", B2: 4' 3 3/4"}
  posts_cut: {B1: 4 1/2", B2: 6 1/2"}
  stock: {4x4: [11"]}
  hours: {survey: 2.5}
`

func TestSeatsReadJob(t *testing.T) {
	p := workFour(t, `15 1/2"`, fourPiersRead+measuredFour)
	figures(t, p, map[string]any{
		"job.progress": "posts cut", "has.seats": "yes", "has.posts_cut": "yes", "has.strings": "yes", "floor.height": 15.5,
		// The hole of B1 is 1 too deep; its stone may lie 3 under the ground, so the least will do.
		"pier.B1.dig": 9.0, "pier.B1.stone": 6.0, "pier.B1.dig_planned": 8.0, "pier.B1.stone_planned": 6.0,
		// Seats: 0 + 48 1/2 − reading.
		"pier.A1.seat": 0.0, "pier.A2.seat": 0.25, "pier.B1.seat": -1.0, "pier.B2.seat": -3.25, "pier.A1.seat_planned": 0.5,
		// Post tops of line A: 15 1/2 − (1 + 5 1/2 + 5 7/16) = 3 9/16.
		"line.A.post_tops": 3.5625, "line.A.post_number": 3.5625, "line.B.post_number": 3.5,
		"post_tops.above_bench_mark": "3\u00a01/2″ to 3\u00a09/16″",
		"pier.A1.post":               3.5625, "pier.A2.post": 3.3125, "pier.B1.post": 4.5, "pier.B2.post": 6.75,
		// B1 serves; B2 is a quarter short and goes to A1, where the longest that it serves for is wanted.
		"pier.B1.post_state": "serves", "pier.B2.post_state": "cut anew", "pier.A1.post_state": "exchange", "pier.A2.post_state": "cut",
		"strings.verdict": "the readings agree", "strings.difference": 0.0, "strings.square": "square", "crew.survey.actual": "2.5\u00a0h",
	})
	assert.Equal(t, map[string]measure.Length{"A2": in(3.3125), "B2": in(6.75)}, postsOf(p), "what was cut and serves is not issued again")
	cut := postCut(p)
	require.NotNil(t, cut.Result)
	assert.Zero(t, cut.Result.Bought, "6 3/4 + 3 5/16 and two kerfs come out of the 11 in hand")
	require.Len(t, cut.Result.Sticks, 1)
	assert.Equal(t, 11*measure.Inch, cut.Result.Sticks[0].Length, "the stick in hand, and not the 20 of the yard's file")
	assert.Equal(t, "B2", cut.Result.Sticks[0].Cuts[0].Name, "the longest first")
}

func TestSticksInHandThatDoNotReachAreBoughtFor(t *testing.T) {
	p := workFour(t, `15 1/2"`, fourPiersRead+strings.Replace(measuredFour, `[11"]`, `[7"]`, 1))
	cut := postCut(p)
	assert.Equal(t, 1, cut.Result.Bought)
	assert.Contains(t, cut.Proof(p.Style), "still to buy")
	figures(t, p, map[string]any{"cut.4x4.sticks": 1})
}

func TestAsBuiltJob(t *testing.T) {
	p := workFour(t, `15 1/2"`, fourPiersRead+measuredFour+`  finished: {bench_mark: 4', A1: 2' 8 1/2", A2: 2' 8 9/16", B1: 2' 8 1/2", B2: 2' 8 7/16"}
`)
	figures(t, p, map[string]any{
		"job.progress": "as built", "has.finished": "yes",
		// 48 − 32 7/16 = 15 9/16 over B2, 48 − 32 9/16 = 15 7/16 over A2.
		"built.high": 15.5625, "built.low": 15.4375, "built.range": 0.125,
		"built.step": 0.125, // from A2 to B2
		// A quarter of the published 1/2 in is 1/8, and so is this; over the best plane no point stands more.
		"pier.B2.finished": 15.5625, "pier.B2.finished_over": 0.0625, "pier.A1.finished_over": 0.0,
		"built.verdict": "as level as promised",
	})
	assert.Equal(t, job.AsBuilt, p.Job.Progress())
}

func TestFloorIsLockedAtTheHeightOfTheLastBinder(t *testing.T) {
	for name, measured := range map[string]string{
		"seats": measuredFour,
		"posts": "measured: {posts_cut: {B1: 4 1/2\"}}\n",
	} {
		j, said := readText(strings.Replace(fourPiers, "FLOOR", "lowest", 1) + fourPiersRead + measured)
		require.Empty(t, said, name)
		_, faults := calc.Work(j)
		list := faults.Sorted()
		require.Len(t, list, 1, name)
		assert.Equal(t, "platform.floor.height", list[0].Path)
		assert.Equal(t, 8, list[0].At.Line)
		assert.Equal(t, `write height: 1' 3 1/2" in its place, the floor of the last binder`, list[0].Remedy, name)
	}
	// A given floor stays where it is, whatever the seats say.
	assert.Equal(t, in(15.5), workFour(t, `15 1/2"`, fourPiersRead+measuredFour).Heights.Floor.Height)
}

// A rock met in the digging had moved the floor before the seats were set: both
// heights are named, since the program cannot know which binder was the last.
func TestLockedFloorNamesTheHeightWithTheHolesAsDug(t *testing.T) {
	rock := "measured:\n  holes: {A1: {depth: 8\", found: rock}}\n  seats: {bench_mark: 4', A1: 3' 9\"}\n"
	j, said := readText(strings.Replace(fourPiers, "FLOOR", "lowest", 1) + fourPiersRead + rock)
	require.Empty(t, said)
	_, faults := calc.Work(j)
	require.Len(t, faults.Sorted(), 1)
	// Dug to 8, with stone 6: seat 0 − 8 + 6 + 5 = 3, floor 3 + 3 + 12.
	assert.Equal(t, `write height: 1' 3 1/2" in its place, the floor of the last binder; or height: 1' 6" if that binder already had the holes as dug`, faults.Sorted()[0].Remedy)
}

func TestPlacesThatAreNotThereAreFaults(t *testing.T) {
	text := strings.Replace(fourPiers, "FLOOR", "lowest", 1)
	text = strings.Replace(text, "piers: {per_line: 2}", "piers: {spacing: 8'}", 1) // so that only the frame knows its piers
	j, said := readText(text + fourPiersRead + "measured:\n  holes: {C3: {depth: 9\", found: firm}}\n  strings: {A1-A9: 8'}\n")
	require.Empty(t, said)
	_, faults := calc.Work(j)
	var paths []string
	for _, f := range faults.Sorted() {
		paths = append(paths, f.Path)
	}
	assert.Equal(t, []string{"measured.holes.C3", "measured.strings.A1-A9"}, paths, "each once, and nothing that follows from them")
}

func TestReadingsWithoutASurveyAreNotLostInSilence(t *testing.T) {
	j, said := readText(strings.Replace(fourPiers, "FLOOR", `15 1/2"`, 1) + measuredFour + "  finished: {bench_mark: 4', A1: 2' 8\"}\n")
	require.Empty(t, said)
	p, faults := calc.Work(j)
	require.NoError(t, faults.Err(), "every seat is read: the posts need no survey")
	assert.False(t, postCut(p).Estimate)
	assert.Len(t, p.Heights.StillToCut(), 2, "the other two are cut, or take the post of another")

	delete(j.Measured.Seats, "A1") // now they do
	_, faults = calc.Work(j)
	var paths []string
	for _, f := range faults.Sorted() {
		paths = append(paths, f.Path)
	}
	assert.Equal(t, []string{"measured.seats", "measured.finished"}, paths)
}

func postCut(p *calc.Plan) yard.Cut {
	for _, c := range p.Cuts {
		if c.Section.Size == "4x4" {
			return c
		}
	}
	return yard.Cut{}
}

// postsOf returns the posts to be cut by name.
func postsOf(p *calc.Plan) map[string]measure.Length {
	posts := map[string]measure.Length{}
	for _, piece := range postCut(p).Pieces {
		for _, name := range piece.Names {
			posts[name] = piece.Length
		}
	}
	return posts
}

// Two corners and the bench mark say nothing of the far end: a binder that would
// dig and cut there is not for construction, until its ground or its seats are read.
func TestPiersFarBeyondTheReadingsStopTheWork(t *testing.T) {
	readings := "ground:\n  sights: [[bench_mark: 4', A1: 4', A2: 4' 1\", B1: 4' 4\", B2: 4' 5\", FAR bench_mark: 4']]\n"
	long := strings.NewReplacer("length: 8'", "length: 16'", "per_line: 2", "per_line: 5")
	worked := func(far string) *calc.Plan {
		j, said := readText(long.Replace(strings.Replace(fourPiers, "FLOOR", "lowest", 1)) + strings.Replace(readings, "FAR ", far, 1))
		require.Empty(t, said)
		p, faults := calc.Work(j)
		require.Empty(t, faults.Sorted())
		return p
	}
	plan := worked("")
	assert.Equal(t, []string{"A3", "A4", "A5", "B3", "B4", "B5"}, plan.Heights.FarOut())
	assert.Contains(t, plan.Stop(), "Read the ground at A3, A4, A5, B3, B4, B5 before anything is dug or cut")
	assert.Contains(t, plan.Figures.Text("checks.summary", plan.Style), "ground")
	plan = worked("A5: 4' 4\", B5: 4' 8\", ")
	assert.Empty(t, plan.Heights.FarOut())
	assert.NotContains(t, plan.Stop(), "Read the ground")
}

// The readings show pier by pier what has been done, and what comes next.
func TestStagesAreReadFromTheReadings(t *testing.T) {
	seats := "seats: {bench_mark: 4', A1: 4', A2: 4', B1: 4' 2\", B2: 4' 4\"}"
	cut := "posts_cut: {A1: 3 1/2\", A2: 3 1/2\", B1: 5 1/2\", B2: 7 1/2\"}"
	frame := "frame: {A1-A2: 8', A2-B2: 6', B1-B2: 8', A1-B1: 6', A1-B2: 10', A2-B1: 10'}"
	for _, test := range []struct{ name, rest, progress, done, next, hold string }{
		{"planned", "", "planned", "nothing was read yet", "Read the ground.", "the level book closes"},
		{"surveyed", fourPiersRead, "surveyed", "ground read at 4 of 4 piers", "Dig the holes, and write down how deep each is and what was found.", "firm ground in every hole, written down"},
		{"two holes", fourPiersRead + "measured: {holes: {A1: 10 1/2\" firm, B2: 8\" firm}}\n", "holes dug", "ground read at 4 of 4 piers; holes 2 of 4", "Dig the other holes: A2, B1.", "firm ground in every hole, written down"},
		{"holes", fourPiersRead + "measured: {holes: {A1: 10 1/2\" firm, A2: 8 1/2\" firm, B1: 8\" firm, B2: 8\" firm}}\n", "holes dug", "holes 4 of 4", "Lay the beds, set the blocks and read every seat.", "top of every bed at its height"},
		{"a seat", fourPiersRead + "measured: {holes: {A2: 8 1/2\" firm, B1: 8\" firm, B2: 8\" firm}, seats: {bench_mark: 4', A1: 4'}}\n", "seats read", "holes 4 of 4; seats 1 of 4", "Lay the beds, set the blocks and read the seats: A2, B1, B2.", "top of every bed at its height"},
		{"seats", fourPiersRead + "measured: {" + seats + "}\n", "seats read", "holes 4 of 4; seats 4 of 4", "Cut the posts.", "every post top at one reading"},
		{"a post too short", fourPiersRead + "measured: {" + seats + ", " + strings.Replace(cut, "B2: 7 1/2", "B2: 7 1/4", 1) + "}\n", "posts cut", "seats 4 of 4; posts 3 of 4", "Cut or mend the posts: B2.", "every post top at one reading"},
		{"posts", fourPiersRead + "measured: {" + seats + ", " + cut + "}\n", "posts cut", "posts 4 of 4", "Set posts, caps and beams, square the frame, and measure its sides and diagonals.", "every post top at one reading"},
		{"frame", fourPiersRead + "measured: {" + seats + ", " + cut + ", " + frame + "}\n", "frame measured", "posts 4 of 4; frame", "Set the joists, lay the floor, and read it over every pier.", "laps the right way and wide enough"},
		{"floor", fourPiersRead + "measured: {" + seats + ", " + cut + ", finished: {bench_mark: 4', A1: 2' 8 1/2\", A2: 2' 8 1/2\", B1: 2' 8 1/2\", B2: 2' 8 1/2\"}}\n", "as built", "frame; floor 4 of 4", "Nothing: the floor is built and read. Look after it as the sheet on care says.", ""},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := workFour(t, `15 1/2"`, test.rest+"building: none\n")
			assert.Equal(t, test.progress, p.Figures.Text("job.progress", p.Style))
			assert.Contains(t, p.Figures.Text("job.done", p.Style), test.done)
			assert.Empty(t, p.Stop())
			assert.Equal(t, test.next, p.Figures.Text("job.next", p.Style))
			if test.hold != "" {
				assert.Equal(t, test.hold, p.Figures.Text("job.next_hold", p.Style))
			}
		})
	}
}

// What becomes of cut posts is told with the stick that gives a new one and with
// where a short one goes.
func TestVerdictsOnCutPosts(t *testing.T) {
	p := workFour(t, `15 1/2"`, fourPiersRead+measuredFour)
	assert.Equal(t, []string{
		"A1: take the one cut for B2, cut down to 3\u00a09/16″",
		"B1: cut, stays",
		"B2: cut a new one, 6\u00a03/4″, out of 4x4 in hand, 1; the short one serves at A1",
	}, p.PostVerdicts())
	p = workFour(t, `15 1/2"`, fourPiersRead+strings.Replace(measuredFour, `B1: 4 1/2"`, `B1: 4 5/8"`, 1))
	assert.Contains(t, p.PostVerdicts(), "B1: cut, plane off 1/8″, to 4\u00a01/2″")
	p = workFour(t, `15 1/2"`, strings.Replace(fourPiersRead, `, A2: 4' 2"`, "", 1))
	assert.Equal(t, "the ground was not read at A2; it is taken from what lies around", p.Estimated())
}
