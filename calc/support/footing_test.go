package support

import (
	"fmt"
	"maps"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/statics"
)

func footingsFile() string {
	if name := os.Getenv("PUBLISHED_FOOTINGS"); name != "" {
		return name
	}
	return "../../testdata/published/footings.csv"
}

// TestPublishedFootings works every row of the footing tables: AWC DCA 6 Table 4
// and the rows of IRC 2018 Table R507.3.1, which follow a simple rule. One inch or two per cent.
func TestPublishedFootings(t *testing.T) {
	matched, all := map[string]int{}, map[string]int{}
	for i, r := range publishedFootings(t, footingsFile()) {
		require.NoError(t, wholeFooting(r), "row %d: %v", i+2, r)
		side, diameter := footingOfRow(r)
		all[r["source"]]++
		ok := true
		for _, c := range []struct {
			got  measure.Length
			want float64
		}{{side, r.Number("side_in")}, {diameter, r.Number("diameter_in")}} {
			if math.Abs(c.got.Inches()-c.want) > math.Max(1, 0.02*c.want) {
				ok = false
				t.Errorf("row %d: %v: %.2f in, printed %.0f in", i+2, r, c.got.Inches(), c.want)
			}
		}
		if ok {
			matched[r["source"]]++
		}
	}
	for source := range all {
		t.Logf("%s: %d of %d", source, matched[source], all[source])
	}
}

// wholeFooting says what a row lacks, or which rule it would be worked by.
func wholeFooting(r sample.Row) error {
	if source := r["source"]; !strings.Contains(source, "DCA 6") && !strings.HasPrefix(source, "IRC") {
		return fmt.Errorf("no rule for the source %q", source)
	}
	for _, column := range []string{"live_or_snow_psf", "tributary_area_sf", "soil_psf", "side_in", "diameter_in"} {
		if err := r.Positive(column); err != nil {
			return err
		}
	}
	return nil
}

// TestMalformedFootingsAreRefused checks that a row that cannot be worked says why.
func TestMalformedFootingsAreRefused(t *testing.T) {
	good := sample.Row{"source": "AWC DCA 6 Table 4", "live_or_snow_psf": "40", "tributary_area_sf": "45", "soil_psf": "1500", "side_in": "17", "diameter_in": "19"}
	require.NoError(t, wholeFooting(good))
	for column, text := range map[string]string{"source": "hearsay", "soil_psf": "firm", "side_in": "", "tributary_area_sf": "0", "live_or_snow_psf": "-40"} {
		bad := maps.Clone(good)
		bad[column] = text
		assert.ErrorContains(t, wholeFooting(bad), column)
	}
}

// footingOfRow returns the exact side and diameter. DCA 6 notes 1 and 2: the
// footing's own weight at 150 pcf comes off the soil pressure, its thickness is
// the projection past a 4×4 post. R507.3.1: gross pressure, at least 12 and 14 in.
func footingOfRow(r sample.Row) (side, diameter measure.Length) {
	load := psf(r.Number("live_or_snow_psf") + 10).On(measure.Area(r.Number("tributary_area_sf")) * measure.SquareFoot)
	soil := psf(r.Number("soil_psf"))
	if !strings.Contains(r["source"], "DCA 6") {
		return max(12*measure.Inch, LeastSide(load, soil)), max(14*measure.Inch, leastDiameter(load, soil))
	}
	var thickness float64
	for range 50 {
		net := soil - psf(150*thickness/12)
		side, diameter = LeastSide(load, net), leastDiameter(load, net)
		thickness = math.Floor((math.Ceil(diameter.Inches()-0.05) - 3.5) / 2)
	}
	return side, diameter
}

// leastDiameter is that of the circle with the area of the least square.
func leastDiameter(load measure.Force, allowable measure.Stress) measure.Length {
	return LeastSide(load, allowable).Scale(2 / math.Sqrt(math.Pi))
}

// TestSpread checks the 2:1 rule: derived, a 12 in pad under 2400 lb on 6 in of
// stone.
func TestSpread(t *testing.T) {
	b := PierBlock{Block: job.Block{Base: measure.Foot}, Stone: job.Stone{Margin: measure.Foot}}
	side, _ := b.bed(&statics.PierLoad{Height: statics.Height{Stone: measure.Foot / 2}})
	assert.InDelta(t, 1066.7, float64((2400*measure.PoundForce).Over(side.Times(side))/measure.PoundPerSquareFt), 0.1)
}

// TestPadHoward checks a village's deck guideline (Howard WI): 5 ft × 10 ft at
// 50 psf on 3000 psf soil takes 11 in square or 13 in round.
func TestPadHoward(t *testing.T) {
	load := (50 * measure.PoundPerSquareFt).On((5 * measure.Foot).Times(10 * measure.Foot))
	require.InDelta(t, 2500, float64(load/measure.PoundForce), 0.01)
	assert.Equal(t, 11*measure.Inch, LeastSide(load, 3000*measure.PoundPerSquareFt).RoundUpTo(measure.Inch))
	assert.Equal(t, 13*measure.Inch, leastDiameter(load, 3000*measure.PoundPerSquareFt).RoundUpTo(measure.Inch))
}

func publishedFootings(t *testing.T, name string) []sample.Row {
	t.Helper()
	rows, err := sample.Published(name)
	require.NoError(t, err)
	return rows
}
