package levelling_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/fault"
	"pierbook/calc/fieldtest"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

func TestMisclosureIsSharedBySetUps(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.SetUps[1][3].Reading = fieldtest.In(31.125) // found 1/8 too high over two set-ups
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	run := g.Book.Runs[0]
	assert.Equal(t, fieldtest.In(0.125), run.Misclosure)
	assert.Equal(t, 2, run.Count)
	// A1 is an intermediate sight of the first set-up, C5 of the second.
	assert.Equal(t, fieldtest.In(-6.75)-fieldtest.In(0.0625), fieldtest.Pier(t, g, "A1").Level.Height)
	assert.Equal(t, fieldtest.In(-6.25)-fieldtest.In(0.125), fieldtest.Pier(t, g, "C5").Level.Height)
	assert.True(t, g.Book.Checks.Agree())
}

func TestOneSetUpWithTheBenchMarkFirstAndLastCloses(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.SetUps = [][]job.Sight{fieldtest.Sights("bench_mark", 50.25, "A1", 57.0, "A5", 62.0, "C1", 51.0, "bench_mark", 50.3125)}
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	require.True(t, g.Book.Closed())
	assert.Equal(t, fieldtest.In(-0.0625), g.Book.Runs[0].Misclosure)
	assert.Equal(t, fieldtest.In(-6.75)+fieldtest.In(0.0625), fieldtest.Pier(t, g, "A1").Level.Height)
}

func TestSetUpsThatEachStartFromTheBenchMarkCloseEachForItself(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.SetUps = [][]job.Sight{
		fieldtest.Sights("bench_mark", 50.0, "A1", 57.0, "A5", 62.0, "bench_mark", 50.125),
		fieldtest.Sights("bench_mark", 40.0, "C1", 41.0, "C5", 46.0, "bench_mark", 39.9375),
	}
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	require.Len(t, g.Book.Runs, 2)
	assert.Equal(t, fieldtest.In(-7)+fieldtest.In(0.125), fieldtest.Pier(t, g, "A1").Level.Height)
	assert.Equal(t, fieldtest.In(-1)-fieldtest.In(0.0625), fieldtest.Pier(t, g, "C1").Level.Height)
	worst, _ := g.Book.Worst()
	assert.Equal(t, fieldtest.In(-0.125), worst.Misclosure)
	assert.True(t, g.Book.Checks.Agree())
}

// Two set-ups hang on points of the first; only one of them closes. What hangs
// beside the closed way shares as many set-ups as lie between it and the bench
// mark.
func TestASideSetUpTakesItsShare(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.SetUps = [][]job.Sight{
		fieldtest.Sights("bench_mark", 50.0, "A1", 57.0, "A5", 62.0),
		fieldtest.Sights("A1", 40.0, "C1", 35.0),
		fieldtest.Sights("A5", 44.0, "C5", 38.0, "bench_mark", 31.875),
	}
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	require.Len(t, g.Book.Runs, 1)
	assert.Equal(t, 2, g.Book.Runs[0].Count)
	assert.Equal(t, fieldtest.In(0.125), g.Book.Runs[0].Misclosure)
	assert.Equal(t, fieldtest.In(-2)-fieldtest.In(0.125), fieldtest.Pier(t, g, "C1").Level.Height)
	assert.Equal(t, fieldtest.In(-7)-fieldtest.In(0.0625), fieldtest.Pier(t, g, "A1").Level.Height)
	assert.True(t, g.Book.Checks.Agree())
}

func TestABookThatDoesNotCloseIsFlagged(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.SetUps[1] = j.Ground.SetUps[1][:3]
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	assert.False(t, g.Book.Closed())
	assert.Equal(t, fieldtest.In(-6.75), fieldtest.Pier(t, g, "A1").Level.Height)
	values := map[string]measure.Quantity{}
	for _, f := range g.Figures(j) {
		values[f.Key] = f.Value
	}
	assert.Nil(t, values["ground.misclosure"])
}

func TestPointsReadTwiceAreAveragedWithTheirSpread(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.SetUps[0] = append(j.Ground.SetUps[0], job.Sight{Point: "A3", Reading: fieldtest.In(59.625)})
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	level := fieldtest.Pier(t, g, "A3").Level
	assert.Equal(t, fieldtest.In(-9.3125), level.Height)
	assert.Equal(t, fieldtest.In(0.125), level.Spread)
	assert.Equal(t, 2, level.Sights)
	assert.True(t, g.Book.Checks.Agree())
}

func TestPiersServeAsTurningPoints(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.SetUps = [][]job.Sight{
		fieldtest.Sights("bench_mark", 50.25, "A1", 57.0, "A5", 62.0),
		fieldtest.Sights("A5", 44.0, "C5", 38.5, "C1", 33.0, "bench_mark", 32.25),
	}
	g := fieldtest.Work(t, j, fieldtest.SampleFrame())
	assert.Equal(t, measure.Length(0), g.Book.Runs[0].Misclosure)
	assert.Equal(t, fieldtest.In(-11.75), fieldtest.Pier(t, g, "A5").Level.Height)
	assert.Equal(t, 1, fieldtest.Pier(t, g, "A5").Level.Sights)
}

func TestABookBeyondItsLimitIsRefusedWithTheSlipsThatWouldCloseIt(t *testing.T) {
	for _, row := range []struct {
		name      string
		setUp, at int
		from, to  float64
		says      string
	}{
		{"a foot", 0, 5, 63, 75, "TP1 in set-up 1"},
		{"an inch", 1, 0, 44, 45, "TP1 in set-up 2"},
		{"a foot on the closing sight", 1, 3, 31.25, 19.25, "bench mark in set-up 2"},
		{"digits exchanged", 0, 0, 50.25, 28.25, "digits exchanged"},
	} {
		t.Run(row.name, func(t *testing.T) {
			j := fieldtest.SampleJob()
			require.Equal(t, fieldtest.In(row.from), j.Ground.SetUps[row.setUp][row.at].Reading)
			j.Ground.SetUps[row.setUp][row.at].Reading = fieldtest.In(row.to)
			g, faults := fieldtest.Try(j, fieldtest.SampleFrame())
			require.Len(t, faults.Sorted(), 1)
			f := faults.Sorted()[0]
			assert.Equal(t, 4, f.At.Line, "at the closing sight")
			assert.Contains(t, f.Remedy, row.says)
			assert.Nil(t, g.Heights)
		})
	}
}

func TestBacksightAndForesightExchangedAreFound(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.SetUps[0][0].Reading, j.Ground.SetUps[0][5].Reading = fieldtest.In(63), fieldtest.In(50.25)
	_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
	require.Len(t, faults.Sorted(), 1)
	assert.Contains(t, faults.Sorted()[0].Remedy, "backsight and foresight exchanged")
}

// The two readings on a turning point change places as easily: 44 in was read
// from set-up 2 and 63 in from set-up 1, so that the book misses by twice 19 in.
func TestReadingsOnATurningPointExchangedAreFound(t *testing.T) {
	j := fieldtest.SampleJob()
	require.Equal(t, "TP1", j.Ground.SetUps[0][5].Point)
	j.Ground.SetUps[0][5].Reading, j.Ground.SetUps[1][0].Reading = j.Ground.SetUps[1][0].Reading, j.Ground.SetUps[0][5].Reading
	_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
	require.Len(t, faults.Sorted(), 1)
	remedy := strings.ReplaceAll(faults.Sorted()[0].Remedy, "\u00a0", " ")
	assert.Contains(t, remedy, "TP1 in set-up 2, 3′ 8″ for 5′ 3″ (backsight and foresight exchanged)")
}

// What a slip should have been is looked up on the rod, so it prints as the rod
// reads: 4.25 ft misread by a tenth.
func TestSlipsPrintAsTheRodReads(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.Instrument.Reads = "tenths"
	foot := func(hundredths int64) measure.Length { return measure.Length(hundredths) * measure.Foot / 100 }
	j.Ground.SetUps = [][]job.Sight{
		{{Point: "bench_mark", Reading: foot(417)}, {Point: "A1", Reading: foot(442)}, {Point: "A5", Reading: foot(492)}, {Point: "TP1", Reading: foot(450)}},
		{{Point: "TP1", Reading: foot(435)}, {Point: "C1", Reading: foot(408)}, {Point: "bench_mark", Reading: foot(392)}},
	}
	_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
	require.Len(t, faults.Sorted(), 1)
	assert.Contains(t, strings.ReplaceAll(faults.Sorted()[0].Remedy, "\u00a0", " "), "TP1 in set-up 2, 4.25 ft for 4.35 ft (a tenth of a foot)")
}

func TestSlipsOnAMetricRod(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Units = measure.Metric
	j.Ground.Instrument.Reads = "millimetres"
	// 1254 read for 1524 on the backsight of set-up 2: 270 mm too low.
	j.Ground.SetUps = [][]job.Sight{
		{{Point: "bench_mark", Reading: 1276 * measure.Millimetre}, {Point: "A1", Reading: 1450 * measure.Millimetre},
			{Point: "A5", Reading: 1600 * measure.Millimetre}, {Point: "TP1", Reading: 1700 * measure.Millimetre}},
		{{Point: "TP1", Reading: 1254 * measure.Millimetre}, {Point: "C1", Reading: 1000 * measure.Millimetre}, {Point: "bench_mark", Reading: 1100 * measure.Millimetre}},
	}
	_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
	require.Len(t, faults.Sorted(), 1)
	assert.Contains(t, faults.Sorted()[0].Remedy, "1524")
}

func TestFaultsOfTheReadings(t *testing.T) {
	var names []string
	for _, p := range fieldtest.SampleFrame().Piers {
		names = append(names, p.Name)
	}
	for _, row := range []struct {
		name   string
		change func(*job.Job)
		wrong  string
		remedy string
	}{
		{"a pier that is not there", func(j *job.Job) { j.Ground.SetUps[0][1].Point = "D9" }, `"D9" is neither a pier`, "A1 to C5"},
		{"a start without a height", func(j *job.Job) { j.Ground.SetUps[1][0].Point = "B2" }, `starts from "B2"`, "an earlier set-up"},
		{"no bench mark", func(j *job.Job) { j.Ground.SetUps[0] = j.Ground.SetUps[0][1:] }, `starts from "A1"`, "read the bench mark first"},
		{"two readings", func(j *job.Job) {
			j.Ground.SetUps = [][]job.Sight{fieldtest.Sights("bench_mark", 50.0, "A1", 57.0, "A5", 62.0)}
		}, "2 readings", "read the ground at C"},
		{"a line", func(j *job.Job) {
			j.Ground.SetUps = [][]job.Sight{fieldtest.Sights("bench_mark", 50.0, "A1", 57.0, "A3", 60.0, "A5", 62.0)}
		}, "in one line", "read the ground at C"},
		{"a probe in the air", func(j *job.Job) { j.Ground.Probes["D1"] = job.Probe{Found: "firm"} }, `"D1" is not a pier`, "A1 to C5"},
		{"a hole in the air", func(j *job.Job) { j.Measured.Holes = map[string]job.Probe{"B9": {}} }, `"B9" is not a pier`, "A1 to C5"},
		{"a line in the air", func(j *job.Job) { j.Measured.Timber.Beams = map[string]measure.Length{"D": fieldtest.In(5)} }, `"D" is not a beam line`, "A to C"},
	} {
		t.Run(row.name, func(t *testing.T) {
			j := fieldtest.SampleJob()
			row.change(j)
			faults := j.CheckPiers(names)
			if faults.Empty() {
				_, faults = fieldtest.Try(j, fieldtest.SampleFrame())
			}
			require.False(t, faults.Empty())
			text := faults.Err().Error()
			assert.Contains(t, text, row.wrong)
			assert.Contains(t, text, row.remedy)
		})
	}
}

func TestAReshotThatMissesIsAFault(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.SetUps[0] = slices.Insert(j.Ground.SetUps[0], 3, job.Sight{Point: "bench_mark", Reading: fieldtest.In(50.75), At: fault.Place{File: "job.yaml", Line: 9, Column: 1}})
	_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
	require.Len(t, faults.Sorted(), 1)
	assert.Equal(t, 9, faults.Sorted()[0].At.Line)
	assert.True(t, strings.Contains(faults.Sorted()[0].Remedy, "knocked"))
}

// randomWalk draws true heights and reads them from random instrument heights.
func randomWalk(t *rapid.T, f *frame.Frame, heights map[string]measure.Length, label string) [][]job.Sight {
	mark := func(what string) measure.Length {
		return measure.Length(rapid.IntRange(100, 1600).Draw(t, label+what)) * measure.Sixteenth
	}
	names := make([]string, len(f.Piers))
	for i, p := range f.Piers {
		names[i] = p.Name
	}
	var book [][]job.Sight
	from, at := levelling.BenchMark, measure.Length(0)
	for len(names) > 0 {
		instrument := at + mark(" instrument at "+from)
		n := rapid.IntRange(1, len(names)).Draw(t, label+" shots")
		setUp := []job.Sight{{Point: from, Reading: instrument - at}}
		for _, name := range names[:n] {
			setUp = append(setUp, job.Sight{Point: name, Reading: instrument - heights[name]})
		}
		from, names = names[n-1], names[n:]
		at = heights[from]
		if len(names) == 0 {
			setUp = append(setUp, job.Sight{Point: levelling.BenchMark, Reading: instrument})
		}
		book = append(book, setUp)
	}
	return book
}

func TestHeightsDoNotDependOnWhereTheInstrumentStands(t *testing.T) {
	f := fieldtest.GridFrame(12*measure.Foot, 8*measure.Foot, 2, 3)
	rapid.Check(t, func(t *rapid.T) {
		heights := map[string]measure.Length{}
		for _, p := range f.Piers {
			heights[p.Name] = measure.Length(rapid.IntRange(-160, 160).Draw(t, p.Name)) * measure.Sixteenth
		}
		j := fieldtest.TermsJob()
		j.Frame.Posts.Longest = 100 * measure.Inch
		j.Ground.SetUps = randomWalk(t, f, heights, "first")
		one := fieldtest.Work(t, j, f)
		j.Ground.SetUps = randomWalk(t, f, heights, "second")
		two := fieldtest.Work(t, j, f)
		require.True(t, one.Book.Checks.Agree() && two.Book.Checks.Agree())
		for i, p := range one.Piers {
			require.Equal(t, heights[p.Name], p.Level.Height)
			require.Equal(t, p.Level.Height, two.Piers[i].Level.Height)
			require.Equal(t, *p.Hole, *two.Piers[i].Hole)
		}
	})
}
