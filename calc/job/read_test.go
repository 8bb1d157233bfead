package job_test

import (
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// dozen is a job of a dozen lines, enough for a binder.
const dozen = `name: Hen house
platform:
  length: 10'
  width: 8'
  use: hen_house
timber:
  species: hem_fir
  grade: No.2
site:
  soil:
    class: silty_sand
crew: {people: 1}
`

func files(texts ...string) fstest.MapFS {
	fsys := fstest.MapFS{}
	for i := 0; i+1 < len(texts); i += 2 {
		fsys[texts[i]] = &fstest.MapFile{Data: []byte(texts[i+1])}
	}
	return fsys
}

func read(t *testing.T, texts ...string) *job.Job {
	t.Helper()
	j, faults := job.Read(files(texts...), texts[0])
	require.True(t, faults.Empty(), printed(faults))
	return j
}

func printed(list fault.List) string {
	var b strings.Builder
	list.Print(&b)
	return b.String()
}

func TestFullJob(t *testing.T) {
	j, faults := job.Read(os.DirFS("testdata"), "full.yaml")
	require.True(t, faults.Empty(), printed(faults))

	assert.Equal(t, "Orchard potting shed", j.Name)
	assert.Equal(t, "2027-05-01", j.Issued)
	assert.Equal(t, measure.Imperial, j.Units)
	assert.Equal(t, 16*measure.Foot, j.Platform.Length)
	assert.InDelta(t, 1915.21, float64(j.Platform.FloorLoad), 0.01, "40 psf")
	assert.Equal(t, 47*measure.Inch+measure.Inch/2, j.Platform.Surface.FaceWidth)
	assert.True(t, j.Platform.Floor.Lowest)
	assert.Equal(t, measure.Inch/4, j.Platform.Floor.RoundUp)
	assert.Equal(t, &job.Door{Side: "A", From1: 7 * measure.Foot, Width: 3 * measure.Foot}, j.Platform.Door)
	assert.InDelta(t, 8896.44, float64(j.Building.WeightLeast), 0.01)
	assert.Equal(t, "along_length", j.Building.Roof.Eaves)
	assert.InDelta(t, 71820.4, float64(j.Site.Soil.Bearing), 0.1, "1500 psf")
	assert.InDelta(t, 51.4096, float64(j.Site.Wind.Speed), 1e-6)
	assert.Equal(t, 8*measure.Foot, *j.Site.NearLot)
	assert.Equal(t, [3]string{"no", "yes", "no"}, [3]string{j.Site.Septic, j.Site.Power, j.Site.Fill})
	assert.True(t, j.Timber.Incised && j.Timber.Wet)
	assert.Equal(t, job.Section{Size: "4x6", Width: 3*measure.Inch + measure.Inch/2, Depth: 5*measure.Inch + measure.Inch/2, Plies: 1}, j.Frame.Beams.Section)
	assert.Equal(t, 16*measure.Inch, j.Frame.Joists.Spacing)
	assert.Equal(t, 5, j.Frame.Piers.PerLine)
	assert.Nil(t, j.Frame.Piers.First)
	assert.InDelta(t, 0.3823, float64(j.Stone.SoldBy), 0.0001)
	assert.Equal(t, job.Instrument{Kind: "rotary_laser", Error: measure.Inch / 8, Over: 100 * measure.Foot, Reads: "feet_inches"}, j.Ground.Instrument)
	assert.Equal(t, map[string]job.Spot{"E1": {X: 42 * measure.Inch, Y: -3 * measure.Foot}, "TP1": {TurningPoint: true}}, j.Ground.Spots)
	require.Len(t, j.Ground.SetUps, 2)
	require.Len(t, j.Ground.SetUps[0], 6)
	assert.Equal(t, "A3", j.Ground.SetUps[0][2].Point)
	assert.Equal(t, 59*measure.Inch+measure.Inch/2, j.Ground.SetUps[0][2].Reading)
	assert.Equal(t, 50, j.Ground.SetUps[0][2].At.Line)
	assert.Equal(t, job.Probe{Depth: 15 * measure.Inch / 2, Found: "rock"}, j.Ground.Probes["C1"])
	assert.Equal(t, 2*measure.Inch, *j.Piers["C1"].Bed)
	assert.Equal(t, 240*measure.Inch+measure.Inch/4, j.Measured.Strings["A1-C5"])
	assert.Equal(t, 5*measure.Inch+7*measure.Sixteenth, j.Measured.Timber.Beams["A"])
	assert.Equal(t, 58*measure.Inch, j.Measured.Seats["A1"])
	assert.Equal(t, []measure.Length{31 * measure.Inch, 8 * measure.Foot}, j.Measured.Stock["4x4"])
	assert.Equal(t, measure.Hours(2.5), j.Measured.Hours["survey"])
	assert.Equal(t, "our-pages", j.Pages)
	assert.Equal(t, job.Crew{People: 2, Starts: "2027-05-15", Rates: map[string]measure.Hours{"dig": 0.75}}, j.Crew)

	assert.InDelta(t, 0.08, float64(j.Stone.Waste), 1e-12, "the job's value lies over the shop's")
	price := func(m measure.Money) *measure.Money { return &m }
	assert.Equal(t, []job.StockLength{{Length: 8 * measure.Foot, Price: price(7.2)}, {Length: 12 * measure.Foot, Price: price(10.4)}, {Length: 16 * measure.Foot, Price: price(13.2)}}, j.Yard.Stock["2x6"],
		"the job's yard over the shop's yard, 10 ft taken out")
	assert.Equal(t, []job.StockLength{{Length: 8 * measure.Foot}, {Length: 16 * measure.Foot}}, j.Yard.Stock["4x6"])
	assert.Equal(t, []measure.Length{31 * measure.Inch}, j.Yard.OnHand["4x4"])
	assert.Equal(t, measure.Money(38), j.Yard.Prices["stone"])
	assert.Equal(t, job.Roll{Width: 6 * measure.Foot, Length: 50 * measure.Foot, Lap: measure.Foot}, j.Yard.Roll)
}

func TestDozenLinesAreEnough(t *testing.T) {
	j := read(t, "job.yaml", dozen)
	assert.InDelta(t, 2000, float64(j.Platform.FloorLoad), 2, "poultry house, 2.0 kPa")
	assert.InDelta(t, 95760.5, float64(j.Site.Soil.Bearing), 0.1, "2000 psf for silty sand")
	assert.Equal(t, "2x6", j.Frame.Joists.Size)
	assert.Equal(t, 3, j.Frame.Beams.Lines)
	assert.Equal(t, 4, j.Frame.Piers.PerLine)
	assert.True(t, j.Building.Assumed)
	assert.Nil(t, j.Platform.Door)
	assert.True(t, j.Timber.Incised, "treated Hem-Fir")
	assert.Len(t, j.Yard.Stock["2x6"], 5)
	entry, ok := j.Entry("platform.floor_load")
	require.True(t, ok)
	assert.InDelta(t, 41.8*47.88026, float64(entry.Value.(measure.Stress)), 0.01)
	entry.Value = nil
	assert.Equal(t, job.Entry{Path: "platform.floor_load", Text: "41.8 psf", Means: "live load of the floor", Origin: figure.Assumed,
		Source: "National Farm Building Code of Canada 1995, Table 2.3.2.1: poultry house floor"}, entry)
	entry, _ = j.Entry("site.soil.class")
	assert.Equal(t, figure.Given, entry.Origin)
	assert.Equal(t, "job.yaml:11:12", entry.At.String())
}
