package timber

import (
	"fmt"
	"maps"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/trade"
)

// spansFile is the file that the test reads; set PUBLISHED_SPANS to run a longer one.
func spansFile() string {
	if name := os.Getenv("PUBLISHED_SPANS"); name != "" {
		return name
	}
	return "../../testdata/published/spans.csv"
}

// TestPublishedSpans works every row of the published span tables by the set
// that its note names, and wants one inch or two per cent, whichever is larger.
// Sources stand in the rows.
func TestPublishedSpans(t *testing.T) {
	matched, exact, all := map[string]int{}, map[string]int{}, map[string]int{}
	for i, r := range publishedSpans(t, spansFile()) {
		set, _, _ := strings.Cut(strings.TrimPrefix(r["note"], "set "), ";")
		got, printed, err := spanOfRow(r, set)
		require.NoError(t, err, "row %d: %v", i+2, r)
		all[set]++
		want := r.Number("allowable_span_in")
		if printed == want {
			exact[set]++
		}
		if math.Abs(got-want) <= math.Max(1, 0.02*want) {
			matched[set]++
			continue
		}
		t.Errorf("row %d: %s %s %s %s %s-%s: %.2f in, printed %.0f in", i+2, r["table"], set, r["species"], r["grade"], r["plies"], r["size"], got, want)
	}
	for _, set := range []string{"J1", "J2", "J3", "B1", "B2", "B3", "B4"} {
		t.Logf("%s: %d of %d within tolerance, %d to the printed inch", set, matched[set], all[set], exact[set])
	}
}

// spanOfRow returns the span in inches and as the set rounds it.
func spanOfRow(r sample.Row, set string) (span, printed float64, err error) {
	conventions := map[string]Convention{"J1": FloorJoistTable, "J2": FloorJoistTable, "J3": OlderDeckJoistTable,
		"B1": DeckBeamTable, "B2": OlderDeckBeamTable, "B3": GirderTable, "B4": PorchGirderTable}
	convention, ok := conventions[set]
	if !ok {
		return 0, 0, fmt.Errorf("no set %q", set)
	}
	if err := wholeRow(r, set); err != nil {
		return 0, 0, err
	}
	span = math.Inf(1)
	for _, species := range strings.Split(r["species"], "|") {
		m, err := memberOfRow(r, set, species)
		if err != nil {
			return 0, 0, err
		}
		least, _ := convention.Spans(m).Least()
		span = math.Min(span, least.Inches())
	}
	if set == "J2" || set == "J3" {
		span = math.Min(span, 216) // the tables stop at 18 ft
	}
	printed = math.Round(span)
	if set == "B4" {
		printed = math.Floor(span)
	}
	return span, printed, nil
}

// wholeRow says what a row lacks, or what in it is no number above zero.
func wholeRow(r sample.Row, set string) error {
	wanted := []string{"allowable_span_in", "dead_psf", "supported_span_ft"}
	if strings.HasPrefix(set, "J") {
		wanted[2] = "spacing_in"
	}
	if r["snow_psf"] == "" {
		wanted = append(wanted, "live_psf")
	} else {
		wanted = append(wanted, "snow_psf")
	}
	for _, column := range wanted {
		if err := r.Positive(column); err != nil {
			return err
		}
	}
	if wet := r["wet"]; wet != "true" && wet != "false" {
		return fmt.Errorf("wet is %q, neither true nor false", wet)
	}
	return nil
}

// TestMalformedRowsAreRefused checks that a row of the published spans that
// cannot be worked says why, and never counts as a match.
func TestMalformedRowsAreRefused(t *testing.T) {
	good := sample.Row{"note": "set J1", "species": "hem_fir", "grade": "No.2", "size": "2x8", "plies": "1", "spacing_in": "16", "live_psf": "40", "dead_psf": "10",
		"wet": "false", "allowable_span_in": "144"}
	_, _, err := spanOfRow(good, "J1")
	require.NoError(t, err)
	for _, c := range []struct{ column, text, want string }{
		{"species", "ironwood", "not a species"}, {"grade", "Stud", "no grade"}, {"size", "2x7", "no size"}, {"plies", "two", "two"},
		{"spacing_in", "", "spacing_in"}, {"spacing_in", "sixteen", "spacing_in"}, {"live_psf", "", "live_psf"}, {"dead_psf", "-10", "dead_psf"},
		{"allowable_span_in", "12-0", "allowable_span_in"}, {"wet", "maybe", "wet"}, {"allowable_span_in", "NaN", "allowable_span_in"},
	} {
		bad := maps.Clone(good)
		bad[c.column] = c.text
		_, _, err := spanOfRow(bad, "J1")
		require.ErrorContains(t, err, c.want, c.column)
	}
	_, _, err = spanOfRow(good, "J9")
	require.ErrorContains(t, err, `no set "J9"`)
	_, _, err = spanOfRow(good, "B1")
	require.ErrorContains(t, err, "supported_span_ft")
}

func memberOfRow(r sample.Row, set, species string) (SimpleSpan, error) {
	aliases := map[string]string{"redwood": "redwood_open_grain", "ponderosa_pine": "northern_species", "red_pine": "northern_species"}
	if alias, ok := aliases[species]; ok {
		species = alias
	}
	plies, err := strconv.Atoi(r["plies"])
	if err != nil {
		return SimpleSpan{}, err
	}
	section, ok := job.ParseSize(r["size"])
	section.Plies = plies
	if !ok {
		return SimpleSpan{}, fmt.Errorf("no size %s", r["size"])
	}
	ref, err := LookUp(job.Timber{Species: species, Grade: r["grade"]}, section)
	if err != nil {
		return SimpleSpan{}, err
	}
	known, _ := trade.FindSpecies(species)
	live, duration := r.Number("live_psf"), TenYears
	if r["snow_psf"] != "" {
		live, duration = r.Number("snow_psf"), TwoMonths
	}
	wet := r["wet"] == "true"
	m := SimpleSpan{Reference: ref, Section: section, Wet: wet, Incised: wet && known.Incised,
		Repetitive: strings.HasPrefix(set, "J"), Duration: duration, LimitRatio: 360}
	m.Total, m.Live = loadOfRow(r, set, live+r.Number("dead_psf")), loadOfRow(r, set, live)
	return m, nil
}

// loadOfRow turns a load on the area into the member's line load as the set does.
func loadOfRow(r sample.Row, set string, psf float64) measure.LineLoad {
	area := measure.Stress(psf) * measure.PoundPerSquareFt
	supported := measure.Foot.Scale(r.Number("supported_span_ft"))
	switch set {
	case "J1", "J2", "J3":
		return measure.LineLoad(float64(area) * measure.Inch.Scale(r.Number("spacing_in")).Metres())
	case "B1", "B2":
		return OverhangingJoistLoad(area, supported, supported/4)
	}
	return measure.LineLoad(float64(area) * supported.Metres() / 2)
}

func publishedSpans(t *testing.T, name string) []sample.Row {
	t.Helper()
	rows, err := sample.Published(name)
	require.NoError(t, err)
	return rows
}
