package levelling_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"pierbook/calc/fieldtest"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

// levelNet is a published net of height differences. Each becomes a set-up with a
// backsight and a foresight, so that its weights are those of one set-up.
type levelNet struct {
	Fixed        map[string]float64
	Observations [][]any
	Sigma        float64 `yaml:"sigma_apriori_mm"`
}

func TestPublishedLevelNet(t *testing.T) {
	e := fieldtest.ByID(t, "levelling.yaml", "level_net_least_squares", "NET-01")
	net := fieldtest.Into[levelNet](t, e.Inputs)
	want := fieldtest.Into[struct {
		Adjusted   map[string]float64
		Residuals  []float64          `yaml:"residuals_mm"`
		Squares    float64            `yaml:"pvv_mm2"`
		Posteriori float64            `yaml:"sigma_aposteriori_mm"`
		Errors     map[string]float64 `yaml:"sd_mm"`
		Freedom    int                `yaml:"degrees_of_freedom"`
	}](t, e.Result)
	j := &job.Job{Units: measure.Metric}
	// A set-up is allowed 2 √2 times the error of a reading, and a difference of
	// two readings has √2 times that error.
	j.Ground.CloseTo = measure.Millimetre.Scale(2 * net.Sigma)
	j.Ground.Instrument.Reads = "millimetres"
	j.Ground.Spots = map[string]job.Spot{}
	name := func(point string) string {
		if _, fixed := net.Fixed[point]; fixed {
			j.Ground.BenchMark.Height = measure.FromMetres(net.Fixed[point])
			return levelling.BenchMark
		}
		j.Ground.Spots[point] = job.Spot{TurningPoint: true}
		return point
	}
	for _, o := range net.Observations {
		from, to, rise := name(o[0].(string)), name(o[1].(string)), o[2].(float64)
		j.Ground.SetUps = append(j.Ground.SetUps, []job.Sight{
			{Point: from, Reading: 2 * measure.Metre}, {Point: to, Reading: 2*measure.Metre - measure.FromMetres(rise)}})
	}
	j, f := anchored(j)
	book := fieldtest.Work(t, j, f).Book
	require.NotNil(t, book.Network)
	assert.Equal(t, want.Freedom, book.Network.Redundancy, e.Source)
	for point, height := range want.Adjusted {
		p, _ := book.Point(point)
		assert.InDelta(t, height, p.Height.Metres(), e.Tolerance, "%s: %s", point, e.Source)
		// The source prints errors by what was expected of a leg, not by what came out.
		expected := p.Error.Millimetres() * net.Sigma / math.Sqrt2 / book.Network.Reading.Millimetres()
		assert.InDelta(t, want.Errors[point], expected, 0.05, "%s: %s", point, e.Source)
	}
	// Half of a difference's residual falls on each of its two sights.
	assert.InDelta(t, want.Squares/2, book.Network.Squares*1e6, 0.001, e.Source)
	assert.InDelta(t, want.Posteriori/math.Sqrt2, book.Network.Residual.Millimetres(), 0.005, e.Source)
	height := func(point string) float64 {
		if point == levelling.BenchMark {
			return j.Ground.BenchMark.Height.Millimetres()
		}
		p, _ := book.Point(point)
		return p.Height.Millimetres()
	}
	for i, o := range net.Observations {
		residual := height(name(o[1].(string))) - height(name(o[0].(string))) - o[2].(float64)*1000
		assert.InDelta(t, want.Residuals[i], residual, 0.001, "leg %d: %s", i+1, e.Source)
	}
}

// bySights solves the book in a second way: all heights of instruments and of
// points at once, by orthogonal factors of the observation equations.
func bySights(book [][]job.Sight) (heights map[string]float64, s float64) {
	column := map[string]int{}
	rows := 0
	for _, setUp := range book {
		for _, sight := range setUp {
			rows++
			if _, seen := column[sight.Point]; !seen && sight.Point != levelling.BenchMark {
				column[sight.Point] = len(book) + len(column)
			}
		}
	}
	design, right := mat.NewDense(rows, len(book)+len(column), nil), mat.NewVecDense(rows, nil)
	row := 0
	for i, setUp := range book {
		for _, sight := range setUp {
			design.Set(row, i, 1)
			if sight.Point != levelling.BenchMark {
				design.Set(row, column[sight.Point], -1)
			}
			right.SetVec(row, sight.Reading.Metres())
			row++
		}
	}
	var solution mat.VecDense
	if err := solution.SolveVec(design, right); err != nil {
		panic(err)
	}
	var residual mat.VecDense
	residual.MulVec(design, &solution)
	residual.SubVec(&residual, right)
	heights = map[string]float64{}
	for name, at := range column {
		heights[name] = solution.AtVec(at)
	}
	return heights, math.Sqrt(mat.Dot(&residual, &residual) / float64(rows-len(book)-len(column)))
}

// netBook draws a book whose points are read from several set-ups, with reading
// errors of up to a sixteenth.
func netBook(t *rapid.T, sixteenths int) [][]job.Sight {
	names := []string{"A1", "A3", "A5", "C1", "C5", "E1", "TP1"}
	truth := map[string]measure.Length{levelling.BenchMark: 0}
	for _, n := range names {
		truth[n] = measure.Length(rapid.IntRange(-200, 200).Draw(t, "height of "+n)) * measure.Sixteenth
	}
	from := []string{levelling.BenchMark}
	var book [][]job.Sight
	for i := range rapid.IntRange(2, 5).Draw(t, "set-ups") {
		start := rapid.SampledFrom(from).Draw(t, "from")
		instrument := truth[start] + measure.Length(rapid.IntRange(200, 900).Draw(t, "instrument"))*measure.Sixteenth
		read := func(point string) job.Sight {
			off := measure.Length(rapid.IntRange(-sixteenths, sixteenths).Draw(t, "off at "+point)) * measure.Sixteenth
			return job.Sight{Point: point, Reading: instrument - truth[point] + off}
		}
		setUp := []job.Sight{read(start)}
		for _, n := range names {
			if i == 0 || n != start && rapid.Bool().Draw(t, "reads "+n) {
				setUp = append(setUp, read(n))
				from = append(from, n)
			}
		}
		if rapid.Bool().Draw(t, "closes") {
			setUp = append(setUp, read(levelling.BenchMark))
		}
		book = append(book, setUp)
	}
	return book
}

func TestNetworkAgainstAllSightsAtOnce(t *testing.T) {
	adjusted := 0
	rapid.Check(t, func(t *rapid.T) {
		j := fieldtest.SampleJob()
		j.Ground.CloseTo = measure.Inch
		j.Ground.SetUps = netBook(t, 1)
		book := fieldtest.Work(t, j, fieldtest.SampleFrame()).Book
		if book.Network == nil {
			return
		}
		adjusted++
		heights, s := bySights(j.Ground.SetUps)
		for _, p := range book.Points {
			require.InDelta(t, heights[p.Name], p.Height.Metres(), 1e-8, p.Name)
			require.Positive(t, p.Error)
		}
		require.InDelta(t, s, book.Network.Residual.Metres(), 1e-8)
		require.True(t, book.Checks.Agree())
	})
	assert.Positive(t, adjusted)
}

func TestReadingsWithoutErrorAreNotCorrected(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := fieldtest.SampleJob()
		j.Ground.SetUps = netBook(t, 0)
		for _, s := range fieldtest.Work(t, j, fieldtest.SampleFrame()).Book.SetUps {
			for _, shot := range s.Shots {
				require.Zero(t, shot.Correction)
			}
		}
	})
}

// The more ways lead to a point, the better it is known; a point read once is
// known no better than one reading.
func TestErrorsInANetwork(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.SetUps = [][]job.Sight{
		fieldtest.Sights("bench_mark", 50.0, "A1", 57.0, "A5", 62.0, "TP1", 63.0),
		fieldtest.Sights("TP1", 44.0, "A1", 38.0, "C1", 32.0, "bench_mark", 31.0),
		fieldtest.Sights("bench_mark", 40.0, "A1", 47.0, "C5", 46.5),
	}
	book := fieldtest.Work(t, j, fieldtest.SampleFrame()).Book
	errorAt := func(name string) measure.Length { p, _ := book.Point(name); return p.Error }
	assert.Less(t, errorAt("A1"), errorAt("A5"))
	assert.Greater(t, errorAt("C5"), book.Network.Reading)
	assert.Zero(t, book.Network.Residual, "readings that agree")
	assert.Equal(t, j.Ground.CloseTo.Scale(1/(2*math.Sqrt2)), book.Network.Reading, "but no better than the allowance stands for")
}

func TestTwoWaysToAPointThatDifferAreRefused(t *testing.T) {
	for _, row := range []struct {
		name   string
		change func(book [][]job.Sight)
		wrong  string
		says   string
		not    string
	}{
		{"an inch on the point", func(b [][]job.Sight) { b[1][1].Reading += measure.Inch },
			"the heights of A1 from two ways differ by 1″; over 2 set-ups they may differ by 1/4″", "A1 in set-up 2, 3′ 2″ for 3′ 3″ (an inch)", "TP1"},
		{"a foot on the backsight shows in the closing too", func(b [][]job.Sight) { b[1][0].Reading += measure.Foot },
			"by 12″", "TP1 in set-up 2, 3′ 8″ for 4′ 8″ (a foot)", "A1 in set-up"},
		{"read again from one set-up", func(b [][]job.Sight) {
			b[0] = append(b[0], job.Sight{Point: "A1", Reading: 45 * measure.Inch})
		}, "two readings on A1 from set-up 1 differ by 12″; they may differ by 3/16″", "A1 in set-up 1, 4′ 9″ for 3′ 9″ (a foot)", "TP1"},
	} {
		t.Run(row.name, func(t *testing.T) {
			j := fieldtest.SampleJob()
			j.Ground.SetUps = [][]job.Sight{
				fieldtest.Sights("bench_mark", 50.0, "A1", 57.0, "A5", 62.0, "TP1", 63.0),
				fieldtest.Sights("TP1", 44.0, "A1", 38.0, "C1", 32.0, "bench_mark", 31.0),
			}
			fieldtest.Work(t, j, fieldtest.SampleFrame())
			row.change(j.Ground.SetUps)
			_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
			require.Len(t, faults.Sorted(), 1, "one mistake")
			f := faults.Sorted()[0]
			plain := func(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }
			assert.Contains(t, plain(f.Wrong), row.wrong)
			assert.Contains(t, plain(f.Remedy), row.says)
			assert.NotContains(t, plain(f.Remedy), row.not)
		})
	}
}

// Two mistakes are two faults, each with what would close it alone.
func TestTwoMistakesAreTwoFaults(t *testing.T) {
	j := fieldtest.SampleJob()
	j.Ground.SetUps[0] = slices.Insert(j.Ground.SetUps[0], 3, job.Sight{Point: "A3", Reading: fieldtest.In(58.5)})
	j.Ground.SetUps[1][3].Reading += measure.Foot
	_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
	require.Len(t, faults.Sorted(), 2)
}

// A line that ends on a second bench mark of known height closes there; one that
// goes on to the first again has two conditions and is adjusted as a whole.
func TestFurtherBenchMarks(t *testing.T) {
	j := fieldtest.SampleJob()
	known := fieldtest.In(20)
	j.Ground.Spots["BM2"] = job.Spot{Known: &known}
	j.Ground.SetUps = [][]job.Sight{
		fieldtest.Sights("bench_mark", 50.0, "A1", 57.0, "A5", 62.0, "TP1", 63.0),
		fieldtest.Sights("TP1", 44.0, "C1", 32.0, "BM2", 10.875),
	}
	book := fieldtest.Work(t, j, fieldtest.SampleFrame()).Book
	require.True(t, book.Closed())
	require.Nil(t, book.Network)
	assert.Equal(t, fieldtest.In(0.125), book.Runs[0].Misclosure)
	assert.Equal(t, fieldtest.In(-7)-fieldtest.In(0.0625), fieldtest.Pier(t, fieldtest.Work(t, j, fieldtest.SampleFrame()), "A1").Level.Height)
	_, isPoint := book.Point("BM2")
	assert.False(t, isPoint, "its height is not sought")

	j.Ground.SetUps = append(j.Ground.SetUps, fieldtest.Sights("BM2", 30.0, "C5", 56.0, "bench_mark", 49.875))
	book = fieldtest.Work(t, j, fieldtest.SampleFrame()).Book
	require.Len(t, book.Runs, 2, "it starts anew from a bench mark")
	assert.Equal(t, fieldtest.In(0.125), book.Runs[1].Misclosure)

	j.Ground.SetUps = [][]job.Sight{
		fieldtest.Sights("bench_mark", 50.0, "A1", 57.0, "A5", 62.0, "TP1", 63.0),
		fieldtest.Sights("TP1", 44.0, "C1", 32.0, "BM2", 10.9375, "bench_mark", 31.0),
	}
	book = fieldtest.Work(t, j, fieldtest.SampleFrame()).Book
	require.NotNil(t, book.Network)
	assert.Equal(t, 2, book.Network.Redundancy)

	j.Ground.SetUps[1][2].Reading = fieldtest.In(22.875)
	_, faults := fieldtest.Try(j, fieldtest.SampleFrame())
	require.Len(t, faults.Sorted(), 1)
	plain := strings.ReplaceAll(faults.Err().Error(), "\u00a0", " ")
	assert.Contains(t, plain, "miss the bench mark BM2 by 11 7/8″")
	assert.Contains(t, plain, "BM2 in set-up 2, 10 7/8″ for 1′ 10 7/8″ (a foot)")
}
