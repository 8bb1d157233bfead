package blocks

import (
	"html"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/figure"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/content"
	"pierbook/diagrams"
)

// secondIssue is a job with a thin beam on line A, seats a little off, a post cut
// short, strings that are racked, and beams of which one side was misread.
const secondIssue = `name: Second issue
platform: {length: 8', width: 6', use: shed, surface: {kind: boards, thickness: 1", width: 5 1/2", gap: 1/4"}, floor: {height: 15 1/2", room: 0}}
site: {soil: {class: silty_sand}}
timber: {species: hem_fir, grade: No.2}
frame: {joists: {size: 2x6, spacing: 16"}, beams: {size: 4x6, lines: 2}, posts: {size: 4x4, shortest: 3", cap: 0}, piers: {per_line: 2}}
block: {height: 5", seat_height: 5", base: 12"}
stone: {least: 6", embed: 2", above_ground: 1/2"}
dig: {least: 4"}
ground: {sights: [[bench_mark: 4', A1: 4', A2: 4' 2", B1: 4' 4", B2: 4' 6", bench_mark: 4']]}
measured:
  strings: {A1-A2: 8', A2-B2: 6', B2-B1: 8', B1-A1: 6', A1-B2: 10' 3/8", A2-B1: 9' 11 5/8"}
  frame: {A1-A2: 8', A2-B2: 6' 1", B2-B1: 8', B1-A1: 6', A1-B2: 10', A2-B1: 10'}
  timber: {beams: {A: 5 7/16"}}
  seats: {bench_mark: 4' 1/2", A1: 4' 1/2", A2: 4' 1/4", B1: 4' 1 1/2", B2: 4' 3 3/4"}
  holes: {B1: {depth: 9", found: firm}}
  posts_cut: {B1: 4 1/2", B2: 6 1/2"}
`

func second(t *testing.T, replace ...string) *calc.Plan {
	t.Helper()
	text := strings.NewReplacer(replace...).Replace(secondIssue)
	j, faults := job.Read(fstest.MapFS{"job.yaml": {Data: []byte(text)}}, "job.yaml")
	require.NoError(t, faults.Err())
	p, faults := calc.Work(j)
	require.NoError(t, faults.Err())
	return p
}

// rows returns a table as it reads: a line for each row, bars between the cells,
// a group by its name.
func rows(t content.Table) []string {
	var list []string
	row := func(cells []content.Cell) {
		var parts []string
		for _, c := range cells {
			text := strings.ReplaceAll(c.Text, "\u00a0", " ")
			if c.Kind == content.Blank {
				text = "…"
			}
			parts = append(parts, text)
		}
		list = append(list, strings.Join(parts, " | "))
	}
	for _, r := range t.Rows {
		row(r)
	}
	for _, g := range t.Groups {
		list = append(list, strings.ReplaceAll(g.Name, "\u00a0", " "))
		for _, r := range g.Rows {
			row(r)
		}
	}
	return list
}

// Line A: 15 1/2 − (1 + 5 1/2 + 5 7/16) = 3 9/16 over the bench mark.
func TestPostRowsStartFromTheNumberOfTheirLine(t *testing.T) {
	assert.Equal(t, []string{
		"Line A",
		"A1 | 3 1/16″ | 4′ 0 1/2″ | 4′ 0 1/2″ | add 3 9/16″ | 3 9/16″ | take the one cut for B2, cut down to 3 9/16″",
		"A2 | 3 1/16″ | 4′ 0 1/4″ | 4′ 0 1/2″ | add 3 9/16″ | 3 5/16″ | …",
		"Line B",
		"B1 | 5 1/2″ | 4′ 1 1/2″ | 4′ 0 1/2″ | add 3 1/2″ | 4 1/2″ | cut, stays",
		"B2 | 6 1/2″ | 4′ 3 3/4″ | 4′ 0 1/2″ | add 3 1/2″ | 6 3/4″ | cut a new one",
	}, rows(onPaper(t, second(t), "posts")))
}

// The phone works from the same numbers: in nanometres, 3 9/16 in is 90487500.
func TestPhoneFormStartsFromTheNumberOfTheLine(t *testing.T) {
	form := html.UnescapeString(string(postForm(second(t), content.Call{})))
	points := regexp.MustCompile(`\["?([A-B][12])"?,\s*"?(-?\d+)"?\]`).FindAllStringSubmatch(form, -1)
	found := map[string]string{}
	for _, p := range points {
		found[p[1]] = p[2]
	}
	assert.Equal(t, map[string]string{"A1": "90487500", "A2": "90487500", "B1": "88900000", "B2": "88900000"}, found, form)
}

// A rod in tenths wants a number that can be added to its readings, and a way
// from feet to the inches of the tape.
func TestPostRowsForARodInTenths(t *testing.T) {
	p := second(t, "ground: {", "ground: {instrument: {reads: tenths}, ")
	table := onPaper(t, p, "posts")
	assert.Contains(t, rows(table)[1], "A1 | 3 1/16″ | 4.04 ft | 4.04 ft | add 0.297 ft | ")
	assert.Contains(t, strings.ReplaceAll(table.Note, "\u00a0", " "), "0.5 ft is 6″")
}

// A seat a foot from its plan is a misread rod more often than a misplaced block.
func TestASeatFarFromItsPlanIsReadAgain(t *testing.T) {
	assert.Empty(t, doubtful(second(t)))
	p := second(t, "A2: 4' 1/4\"}", "A2: 5' 1/4\"}", "A2: 4' 1/4\", B1", "A2: 5' 1/4\", B1")
	doubts := p.Heights.DoubtfulSeats(p.Job)
	require.Len(t, doubts, 1)
	assert.Equal(t, "A2", doubts[0].Pier)
	assert.Equal(t, "a foot", doubts[0].Kind)
	says := strings.ReplaceAll(doubts[0].Sentence(p.Style), "\u00a0", " ")
	assert.Equal(t, "Read seat A2 again before its post is cut: it stands 12 1/4″ under its plan; read as 4′ 0 1/4″ it would fit (a foot).", says)
	assert.Contains(t, strings.Join(rows(onPaper(t, p, "second")), "\n"), "to be cut now; "+says)

	p = second(t, "A2: 4' 1/4\", B1", "A2: 4' 1 3/4\", B1")
	require.Len(t, p.Heights.DoubtfulSeats(p.Job), 1, "a block that is simply low")
	assert.Empty(t, p.Heights.DoubtfulSeats(p.Job)[0].Kind)
	assert.Empty(t, doubtful(second(t, "A2: 4' 1/4\", B1", "A2: 4' 3/4\", B1")), "within an inch the post takes it up")
}

// The hole of B1 is an inch too deep and gets the least bed: its plan is an inch
// lower on every sheet.
func TestPlannedReadAndUsedSideBySide(t *testing.T) {
	assert.Equal(t, []string{
		"A1 | 1/2″ | 0″ | 3 1/16″ | 3 9/16″ | take the one cut for B2, cut down to 3 9/16″",
		"A2 | 1/2″ | 1/4″ | 3 1/16″ | 3 5/16″ | to be cut now",
		"B1 | −2″ | −1″ | 5 1/2″ | 4 1/2″ | cut, stays",
		"B2 | −3″ | −3 1/4″ | 6 1/2″ | 6 3/4″ | cut a new one",
	}, rows(onPaper(t, second(t), "second")))
	assert.Equal(t, []string{
		"Post B2",
		"another pier | cut it down to 3 9/16″ for A1; cut a new one of 6 3/4″ for B2 | ",
		"lower floor | lower the floor by 1/4″; every post is shorter by as much | cut again: B1",
		"new post | cut a new one of 6 3/4″ | ",
	}, rows(onPaper(t, second(t), "ways")))
}

func TestMeasuredSixAndTheMovesTheyAskFor(t *testing.T) {
	p := second(t)
	six := onPaper(t, p, "six")
	assert.Contains(t, rows(six), "A2-B2 | 6′ 0″ | 6′ 1″ | 6′ 0 15/16″ | 1″ | an inch (the tape held at its 1 in mark)")
	note := strings.ReplaceAll(six.Note, "\u00a0", " ")
	assert.Contains(t, note, "The diagonals differ by 3/4″: out of square.")
	assert.Contains(t, note, "Measure again first: A2-B2, B1-A1.")
	moves := rows(onPaper(t, p, "moves"))
	assert.Contains(t, moves[0], "The strings: hold A1 and the line to A2")
	assert.NotContains(t, strings.Join(moves, "\n"), "The beams", "one length of them is a mistake: nothing is moved")
	// The far side slides back by (120.375² − 119.625²) / (4 × 96) = 0.47.
	assert.Equal(t, "A1 | stays |  |  |  |  | ", moves[1])
	assert.Contains(t, moves[3], "B2 | 1/2″ | B1 | – |  | ")
}

// Where one choice of what to hold leaves every corner, no arrow may send
// anybody to move one.
func TestCornersInPlaceAreNotDrawnAsMoving(t *testing.T) {
	p := second(t, "A1-B2: 10' 3/8\", A2-B1: 9' 11 5/8\"", "A1-B2: 10' 1/8\", A2-B1: 9' 11 7/8\"")
	require.Contains(t, strings.Join(rows(onPaper(t, p, "moves")), "\n"), "The strings are where they belong")
	assert.Empty(t, cornerMoves(p))
	moved := cornerMoves(second(t))
	require.Len(t, moved, 1)
	for _, corner := range moved[0].(diagrams.Moves).Corners {
		for _, part := range []measure.Length{corner.Along.Abs(), corner.Forward.Abs()} {
			assert.True(t, part == 0 || part > measure.Sixteenth, "%s: what the table leaves out is not drawn", corner.Name)
		}
	}
}

// Beams lie on their posts: the drawing leaves line A and slides the others.
func TestBeamsAreDrawnWithTheFirstLineHeld(t *testing.T) {
	p := second(t, "frame: {A1-A2: 8', A2-B2: 6' 1\", B2-B1: 8', B1-A1: 6', A1-B2: 10', A2-B1: 10'}", "frame: {A1-A2: 8', A2-B2: 6', B2-B1: 8', B1-A1: 6', A1-B2: 10' 3/8\", A2-B1: 9' 11 5/8\"}")
	drawn := cornerMoves(p)
	require.Len(t, drawn, 2)
	beams := drawn[1].(diagrams.Moves)
	assert.Equal(t, "beams", beams.Of)
	assert.True(t, beams.Corners[0].Stays && beams.Corners[1].Stays)
	assert.False(t, beams.Corners[2].Stays || beams.Corners[3].Stays)
}

// Six lengths are measured before the digging and again on the beams.
func TestTheWorksheetOfSidesHoldsBothTimes(t *testing.T) {
	blank := rows(onPaper(t, second(t, "  strings:", "  stock: {2x6: [8']}\n  #", "  frame: {A1-A2: 8', A2-B2: 6' 1\", B2-B1: 8', B1-A1: 6', A1-B2: 10', A2-B1: 10'}", ""), "diagonals"))
	assert.Contains(t, blank, "A1-A2 | 8′ 0″ | … | … | … | …")
	filled := rows(onPaper(t, second(t), "diagonals"))
	assert.Contains(t, filled, "A1-B2 | 10′ 0″ | 10′ 0 3/8″ | 3/8″ | … | …", "the strings")
	assert.Contains(t, filled, "A2-B2 | 6′ 0″ | 6′ 1″ | 1″ | … | …", "the beams")
	assert.Len(t, filled, 3*(1+6))
}

// Chances that matter are named, the rest is said in one line; and a floor that
// would be safe but that no post reaches is marked.
func TestChancesWorthARow(t *testing.T) {
	j, faults := job.Read(fstest.MapFS{"job.yaml": {Data: []byte(strings.Replace(short, "use: shed", "use: shed, floor: {room: 0}", 1) + `frame: {posts: {longest: 20"}}
ground:
  spots: {M: {x: 5', y: -1'}}
  sights:
    - [bench_mark: 4', A1: 4', A3: 4' 3", A4: 4' 1", C1: 5' 2", C4: 5', M: 3' 4", bench_mark: 4']
`)}}, "job.yaml")
	require.NoError(t, faults.Err())
	p, faults := calc.Work(j)
	require.NoError(t, faults.Err())
	tight := *sample(t).Job // without room there is a pier whose post may come out short
	tight.Platform.Floor.Room = 0
	bare, faults := calc.Work(&tight)
	require.NoError(t, faults.Err())
	hidden, marked := 0, 0
	for _, plan := range []*calc.Plan{p, bare} {
		require.NotNil(t, plan.Heights.Floor)
		table := onPaper(t, plan, "chances")
		named := strings.Join(rows(table), "\n")
		for _, chance := range plan.Heights.ShortChances() {
			switch {
			case chance.AsPlanned < 0.001:
				hidden++
				assert.NotContains(t, named, chance.Pier+" |")
				assert.Contains(t, table.Note, "one in a thousand")
				continue
			case chance.Safe > plan.Heights.Floor.Highest:
				marked++
				assert.Contains(t, table.Note, "no floor makes this pier safe")
			}
			assert.Contains(t, named, chance.Pier+" |")
		}
	}
	assert.Positive(t, hidden)
	assert.Positive(t, marked)
}

// The same sheet prints a blank or a number.
func TestWorksheetsFillWithWhatWasMeasured(t *testing.T) {
	holes := rows(onPaper(t, second(t), "holes"))
	assert.Equal(t, "B1 | 8″ | 8″ | 16 1/2″ |  | 9″ | firm", holes[4])
	assert.True(t, strings.HasSuffix(holes[5], " |  | … | …"), holes[5])
	sides := rows(onPaper(t, second(t), "diagonals"))
	assert.Equal(t, "A1-B2 | 10′ 0″ | 10′ 0 3/8″ | 3/8″ | … | …", sides[5])
	assert.True(t, strings.HasSuffix(sides[8], " | … | … | … | …"), "nobody measures the piers for the job: %s", sides[8])
}

// A rod in other units than the binder's wants its numbers in its own: 3 9/16 in
// is 90.5 mm, and a sum of inches and millimetres is none.
func TestPostRowsForARodInOtherUnits(t *testing.T) {
	millimetres := onPaper(t, second(t, "ground: {", "ground: {instrument: {reads: millimetres}, "), "posts")
	assert.Contains(t, rows(millimetres)[1], "A1 | 3 1/16″ | 1232 mm | 1232 mm | add 90 mm | ")
	assert.Contains(t, millimetres.Note, "millimetres")
	feet := onPaper(t, second(t, "platform: {", "units: metric\nplatform: {", "ground: {", "ground: {instrument: {reads: feet_inches}, "), "posts")
	assert.Contains(t, rows(feet)[1], "A1 | 78 mm | 4′ 0 1/2″ | 4′ 0 1/2″ | add 3 9/16″ | ")
	assert.Contains(t, feet.Note, "25.4 mm")
	assert.Equal(t, "ft, in", onPaper(t, second(t, "platform: {", "units: metric\nplatform: {", "ground: {", "ground: {instrument: {reads: feet_inches}, ", secondIssue[strings.Index(secondIssue, "measured:"):], ""), "posts").Head[3].Unit)
}

// The seat of A1 is planned at 1/2″ over the bench mark, so its reading is as
// much less. Line A has post tops at 3 9/16″: posts of 3″ to 24″ want readings
// from 9/16″ under to 20 7/16″ over the bench mark's.
func TestSeatReadingsAreExpectedFromTheBenchMark(t *testing.T) {
	got := rows(onPaper(t, second(t), "seat-readings"))
	assert.Equal(t, "A1 | take away 1/2″ | take away 9/16″ | add 20 7/16″ | 4′ 0 1/2″ | …", got[1])
	assert.Equal(t, "B2 | add 3″ | take away 1/2″ | add 20 1/2″ | 4′ 3 3/4″ | …", got[5])
}

// The floor is 15 1/2″ over the bench mark; where it was read, care starts from
// the reading there.
func TestFloorReadingsAreExpectedFromTheBenchMark(t *testing.T) {
	assert.Equal(t, "A1 | take away 15 1/2″ | 1/8″ | 1/2″ | … | …", rows(onPaper(t, second(t), "floor-readings"))[1])
	built := second(t, "measured:", "measured:\n  finished: {bench_mark: 4', A1: 2' 8 1/2\", A2: 2' 8 5/8\", B1: 2' 8 1/2\", B2: 2' 8 1/2\"}")
	assert.Empty(t, rows(onPaper(t, built, "floor-readings")))
	assert.Equal(t, "A2 | take away 15 3/8″ | … | … | … | 1/4″", rows(onPaper(t, built, "care-readings"))[2])
}

// Line A: seat at 1/2″ takes a hole of 8″ as it is; B1 and B2 as well. An inch
// short the bed is an inch thinner than the least of 6″, or the floor higher.
func TestWindowsHaveARowForPiersAlike(t *testing.T) {
	p := second(t, secondIssue[strings.Index(secondIssue, "measured:"):], "")
	table := onPaper(t, p, "windows")
	require.Len(t, table.Head, 6)
	for _, row := range rows(table) {
		assert.Len(t, strings.Split(row, " | "), 6, row)
	}
	assert.Contains(t, rows(table)[0], " | floor +1″ or on rock 5″ | ")
	assert.NotEmpty(t, rows(onPaper(t, p, "freedom")), "nothing stands yet")
	assert.Empty(t, rows(onPaper(t, second(t), "freedom")), "blocks are set")
}

func TestAgreeingIsNotSquare(t *testing.T) {
	const words = "not that it is square"
	assert.Contains(t, onPaper(t, second(t), "six").Note, words)
	doubtful := second(t, `A1-B2: 10' 3/8"`, `A1-B2: 10' 11/16"`, "frame: {A1-A2", "frame: {A1-A2")
	require.NotNil(t, doubtful.SetOut.Strings)
	require.True(t, doubtful.SetOut.Strings.MayMove())
	assert.NotContains(t, onPaper(t, doubtful, "six").Note, words)
}

// The changes at piers stand in the order of the piers and say in words what is
// to be done about a post.
func TestChangesAtPiersInWords(t *testing.T) {
	p := second(t)
	g := pierChanges(p.Frame.Piers, []figure.Change{
		{Key: "pier.B1.post_words", Was: "read the seat first", Is: "does not fit: see the ways out"},
		{Key: "pier.A2.post", Was: "3″", Is: "3 5/16″"}, {Key: "pier.A2.post_words", Was: "to be cut now", Is: "cut, stays"},
	})
	assert.Equal(t, []string{"Piers", "A2 | post 3″; post: to be cut now | post 3 5/16″; post: cut, stays", "B1 | post: read the seat first | post: does not fit: see the ways out"},
		rows(content.Table{Groups: []content.Group{g}}))
}

// Each section shows the post tops of its own line: a thinner beam wants higher ones.
func TestSectionsStandOnTheTopsOfTheirLine(t *testing.T) {
	p := second(t)
	a, b := sectionOf(p, 0, p.Frame.Lines[0]), sectionOf(p, 1, p.Frame.Lines[1])
	assert.Equal(t, measure.Sixteenth, a.PostTops-b.PostTops, "the beam of line A is 1/16 in thinner")
}

func doubtful(p *calc.Plan) []heights.DoubtfulSeat { return p.Heights.DoubtfulSeats(p.Job) }
