package job

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every row of the table belongs to a key, and its limits stand in order.
func TestEveryRangeBelongsToAKeyAndStandsInOrder(t *testing.T) {
	used := map[string]bool{}
	for _, k := range Keys() {
		if k.Range == nil {
			continue
		}
		used[k.Range.Reason] = true
		limits := []float64{k.Range.low, k.Range.askLow, k.Range.askHigh, k.Range.high}
		last := math.Inf(-1)
		for _, limit := range limits {
			if !math.IsNaN(limit) {
				assert.GreaterOrEqual(t, limit, last, k.Path)
				last = limit
			}
		}
		assert.NotEmpty(t, k.Range.Reason, k.Path)
	}
	for path, row := range ranges() {
		assert.True(t, used[row.Reason], "no key takes the range of %s", path)
	}
}

// No default lies out of the usual: nobody is asked about what the program chose.
func TestDefaultsAreUsual(t *testing.T) {
	for _, k := range Keys() {
		for _, text := range []string{k.Default.Imperial, k.Default.Metric} {
			if text == "" || k.Range == nil {
				continue
			}
			var v value
			require.NoError(t, k.readScalar(&v, text), k.Path)
			assert.NoError(t, k.refuse(v, text), k.Path)
			assert.Empty(t, k.doubt(k.Path, text, v), k.Path)
		}
	}
}

// sound is a job in which nothing is odd.
const sound = `name: Shed
platform: {length: 12', width: 8', use: shed}
timber: {species: hem_fir, grade: No.2}
site: {soil: {class: silty_sand}}
`

func readJob(t *testing.T, text string) (*Job, string) {
	t.Helper()
	j, faults := Read(fstest.MapFS{"job.yaml": {Data: []byte(text)}}, "job.yaml")
	var out strings.Builder
	faults.Print(&out)
	return j, out.String()
}

func TestAnOrdinaryJobIsNotAskedAbout(t *testing.T) {
	j, faults := readJob(t, sound)
	require.Empty(t, faults)
	assert.Empty(t, j.Doubts())
}

// Values that a slip of a unit or of a thousand gives are refused or asked about.
func TestValuesThatMakeNoSense(t *testing.T) {
	for _, row := range []struct{ name, lines, refused, asked string }{
		{"wind in the wrong unit", "design: {braced_above: 24\"}\nblock: {rated_load: 90000 lb}", "block.rated_load", ""},
		{"a mast", "frame: {posts: {longest: 20'}}", "frame.posts.longest", ""},
		{"stone by the grain", "stone: {sold_by: 0.000001 yd3}", "stone.sold_by", ""},
		{"a vehicle of nothing", "yard: {payload: 0.0001 lb}", "yard.payload", ""},
		{"a year to dig", "crew: {rates: {dig: 1000000000}}", "crew.rates.dig", ""},
		{"a bench mark on the moon", "ground: {bench_mark: {height: 90000'}}", "ground.bench_mark.height", ""},
		{"a beam of five feet", "measured: {timber: {beams: {A: 60\"}}}", "measured.timber.beams.A", ""},
		{"sticks of a mile", "yard: {stock: {2x6: {5280': 3}}}", "yard.stock.2x6", ""},
		{"a paper beam", "frame: {beams: {width: 1 mm, depth: 100 mm}}", "frame.beams", ""},
		{"loose stone denser than tamped", "stone: {density: 100 pcf, loose_density: 110 pcf}", "stone.loose_density", ""},
		{"a seat over the block", "block: {height: 6\", seat_height: 8\"}", "block.seat_height", ""},
		{"work long before the issue", "issued: 2027-05-01\ncrew: {starts: 2017-05-01}", "crew.starts", ""},
		{"a reading longer than a rod", "ground: {sights: [[bench_mark: 4', A1: 44']]}", "ground.sights.1.A1", ""},
		{"millimetres taken for inches", "dig: {deepest: 40\"}", "", "dig.deepest"},
		{"a heavy block", "block: {weight: 300 lb}", "", "block.weight"},
		{"a crushing load for a rated one", "block: {base: 8\", rated_load: 8000 lb}", "", "block.rated_load"},
		{"firm at the surface", "ground: {probes: {A1: {depth: 0, found: firm}}}", "", "ground.probes.A1.depth"},
		{"work before the issue", "issued: 2027-05-01\ncrew: {starts: 2027-04-01}", "", "crew.starts"},
		{"densities that do not fit", "stone: {density: 145 pcf, loose_density: 86 pcf, loose: 1.15}", "", "stone.loose"},
	} {
		t.Run(row.name, func(t *testing.T) {
			j, faults := readJob(t, sound+row.lines+"\n")
			if row.refused != "" {
				assert.Contains(t, faults, row.refused+": ")
				return
			}
			require.Empty(t, faults)
			asked := ""
			for _, d := range j.Doubts() {
				asked += d.Path + "\n"
				assert.Positive(t, d.At.Line, d.Saying)
			}
			assert.Contains(t, asked, row.asked)
		})
	}
}

// The number with the unit that would be usual is offered.
func TestTheUnitThatWasMeantIsOffered(t *testing.T) {
	_, faults := readJob(t, sound+"stone: {least: 150\"}\n")
	assert.Contains(t, faults, "was 150 mm meant?")
}

// A default that follows from a value of the user's and makes no sense is a fault
// at that value, never a stop of the program.
func TestDefaultOutOfItsRangeIsAFaultOfTheValueItFollowsFrom(t *testing.T) {
	for _, lines := range []string{"block: {height: 1\"}", "frame: {posts: {longest: 200'}}", "stone: {least: 40\"}", "frame: {piers: {spacing: 0.5\"}}", "platform: {surface: {thickness: 3 mm}}"} {
		assert.NotPanics(t, func() { readJob(t, sound+lines+"\n") }, lines)
	}
}
