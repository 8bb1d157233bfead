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
// within an inch, for its areas are rounded; IRC Table R507.3.1 to the printed inch
// in the edition of 2018, and in that of 2021, which rounds small ones up, within one.
func TestPublishedFootings(t *testing.T) {
	matched, exact, all := map[string]int{}, map[string]int{}, map[string]int{}
	for i, r := range publishedFootings(t, footingsFile()) {
		require.NoError(t, wholeFooting(r), "row %d: %v", i+2, r)
		side, diameter, thickness := footingOfRow(r)
		set := r["source"] + " " + r["edition"]
		all[set]++
		within, whole := true, true
		for _, c := range []struct {
			column string
			got    float64
		}{{"side_in", math.Round(side.Inches())}, {"diameter_in", math.Round(diameter.Inches())}, {"thickness_in", thickness}} {
			off := math.Abs(c.got - r.Number(c.column))
			allowed := 1.0
			if set == "IRC 2018" && !unlike2018(r, c.column) {
				allowed = 0
			}
			whole = whole && off == 0
			if off > allowed && !misprinted2021(r, c.column) {
				within = false
				t.Errorf("row %d: %v: %s is %g in, printed %s", i+2, r, c.column, c.got, r[c.column])
			}
		}
		if within {
			matched[set]++
		}
		if whole {
			exact[set]++
		}
	}
	for set := range all {
		t.Logf("%s: %d of %d, %d to the printed inch", set, matched[set], all[set], exact[set])
	}
}

// unlike2018 tells the two rows of the edition of 2018 that print a diameter of 19 in
// beside a side of 16 in, as no other row does.
func unlike2018(r sample.Row, column string) bool {
	load, area, soil := r.Number("live_or_snow_psf"), r.Number("tributary_area_sf"), r.Number("soil_psf")
	return column == "diameter_in" && load == 60 && (area == 40 && soil == 1500 || area == 80 && soil == 3000)
}

// misprinted2021 tells cells of the edition of 2021 that fit no neighbour of theirs
// and look like misprints.
func misprinted2021(r sample.Row, column string) bool {
	load, area, soil := r.Number("live_or_snow_psf"), r.Number("tributary_area_sf"), r.Number("soil_psf")
	return r["edition"] == "2021" && soil == 2000 && (load == 60 && area == 40 && column == "thickness_in" || load == 40 && area == 20)
}

// wholeFooting says what a row lacks, or which rule it would be worked by.
func wholeFooting(r sample.Row) error {
	if source := r["source"]; !strings.Contains(source, "DCA 6") && !strings.HasPrefix(source, "IRC") {
		return fmt.Errorf("no rule for the source %q", source)
	}
	for _, column := range []string{"live_or_snow_psf", "tributary_area_sf", "soil_psf", "side_in", "diameter_in", "thickness_in"} {
		if err := r.Positive(column); err != nil {
			return err
		}
	}
	return nil
}

// TestMalformedFootingsAreRefused checks that a row that cannot be worked says why.
func TestMalformedFootingsAreRefused(t *testing.T) {
	good := sample.Row{"source": "AWC DCA 6 Table 4", "live_or_snow_psf": "40", "tributary_area_sf": "45", "soil_psf": "1500", "side_in": "17", "diameter_in": "19", "thickness_in": "7"}
	require.NoError(t, wholeFooting(good))
	for column, text := range map[string]string{"source": "hearsay", "soil_psf": "firm", "side_in": "", "tributary_area_sf": "0", "live_or_snow_psf": "-40"} {
		bad := maps.Clone(good)
		bad[column] = text
		assert.ErrorContains(t, wholeFooting(bad), column)
	}
}

// footingOfRow returns the exact side and diameter, and the thickness in whole inches. DCA 6 notes 1 and 2: the
// footing's own weight at 150 pcf comes off the soil pressure, its thickness is
// the projection past a 4×4 post. R507.3.1: gross pressure, at least 12 and 14 in in
// the edition of 2018, 7 and 8 in that of 2021; the thickness, fitted here, is what
// projects past a post of 6 in, to the nearest inch and at least 6.
func footingOfRow(r sample.Row) (side, diameter measure.Length, thickness float64) {
	load := psf(r.Number("live_or_snow_psf") + 10).On(measure.Area(r.Number("tributary_area_sf")) * measure.SquareFoot)
	soil := psf(r.Number("soil_psf"))
	if !strings.Contains(r["source"], "DCA 6") {
		least := [2]measure.Length{12 * measure.Inch, 14 * measure.Inch}
		if r["edition"] == "2021" {
			least = [2]measure.Length{7 * measure.Inch, 8 * measure.Inch}
		}
		side, diameter = max(least[0], LeastSide(load, soil)), max(least[1], leastDiameter(load, soil))
		return side, diameter, max(6, math.Round((side.Inches()-6)/2))
	}
	for range 50 {
		net := soil - psf(150*thickness/12)
		side, diameter = LeastSide(load, net), leastDiameter(load, net)
		thickness = math.Floor((math.Ceil(diameter.Inches()-0.05) - 3.5) / 2)
	}
	return side, diameter, thickness
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
