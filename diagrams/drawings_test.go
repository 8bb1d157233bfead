package diagrams

import (
	"encoding/xml"
	"flag"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

var update = flag.Bool("update", false, "write the golden drawings anew")

// faults returns what makes a sheet hard to read: words off the sheet or over
// one another or over an arrowhead, ink off the sheet, a sheet larger than the
// safe box of a page.
func faults(r kit.Record) []string {
	var list []string
	page := kit.Box{Right: 171.001, Bottom: 251}
	if !page.Holds(r.Sheet) {
		list = append(list, "the sheet is larger than the page")
	}
	if !r.Sheet.Grown(0.01).Holds(r.Ink) {
		list = append(list, "ink leaves the sheet")
	}
	for i, l := range r.Labels {
		if !r.Sheet.Holds(l.Box) {
			list = append(list, "off the sheet: "+l.Words)
		}
		for _, m := range r.Labels[:i] {
			if l.Box.Grown(-0.05).Meets(m.Box.Grown(-0.05)) {
				list = append(list, "one over another: "+m.Words+" | "+l.Words)
			}
		}
		for _, a := range r.Arrows {
			if l.Box.Grown(-0.3).Meets(a.Grown(-0.1)) {
				list = append(list, "over an arrowhead: "+l.Words)
			}
		}
	}
	return list
}

func TestEveryLabelStandsClearOnItsSheet(t *testing.T) {
	for _, j := range sites {
		for _, d := range everyDrawing(j) {
			t.Run(j.name+"/"+d.About().Name, func(t *testing.T) {
				assert.Empty(t, faults(d.sheet(j.style).Record()))
			})
		}
	}
}

// anySite draws a platform of any size that the trade would build.
func anySite(t *rapid.T) site {
	j := site{
		name: "any", style: imperial, left: rapid.Bool().Draw(t, "left"), planned: rapid.Bool().Draw(t, "planned"), longName: rapid.Bool().Draw(t, "long names"),
		long: measure.Length(rapid.Int64Range(int64(6*ft), int64(40*ft)).Draw(t, "length")),
		wide: measure.Length(rapid.Int64Range(int64(4*ft), int64(24*ft)).Draw(t, "width")),
	}
	// Blocks a foot wide in holes of their own stand at least two feet apart.
	j.lines = rapid.IntRange(2, max(2, min(5, int(j.wide/(2*ft))))).Draw(t, "lines")
	j.perLine = rapid.IntRange(2, max(2, min(9, int(j.long/(2*ft))))).Draw(t, "piers")
	if rapid.Bool().Draw(t, "metric") {
		j.style = metric
	}
	return j
}

func TestLabelsStandClearOnAnyPlatform(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := anySite(t)
		for _, d := range everyDrawing(j) {
			for _, fault := range faults(d.sheet(j.style).Record()) {
				t.Errorf("%s: %s", d.About().Name, fault)
			}
		}
	})
}

// Far more piers than the trade would set still give drawings that can be read:
// what does not fit is thinned out, since every figure stands in a table too.
func TestLabelsStandClearOnHugePlatforms(t *testing.T) {
	for _, j := range []site{
		{"two hundred", imperial, 40 * ft, 40 * ft, 10, 20, true, false, true},
		{"metric", metric, 60 * ft, 30 * ft, 6, 30, false, false, true},
		{"four hundred", imperial, 100 * ft, 60 * ft, 10, 40, false, false, true},
	} {
		for _, d := range everyDrawing(j) {
			assert.Empty(t, faults(d.sheet(j.style).Record()), j.name+": "+d.About().Name)
		}
	}
}

var (
	fontSize = regexp.MustCompile(`font-size="([^"]*)"`)
	colour   = regexp.MustCompile(`(?:fill|stroke)="([^"]*)"`)
	ids      = regexp.MustCompile(` id="([^"]*)"`)
)

// Patterns, filters and masks print as blurred pictures; style attributes are
// refused by strict pages; grey is no line of a drawing.
func TestDrawingsUseNothingThatPrintsBadly(t *testing.T) {
	for _, j := range sites {
		var all []string
		for _, d := range everyDrawing(j) {
			about := d.About()
			drawing, err := Draw(d, j.style)
			require.NoError(t, err)
			text := string(drawing)
			strict(t, text)
			for _, never := range []string{"<?xml", "<pattern", "<filter", "<mask", "<image", "<style", "style=", "opacity", "Gradient", "<use", "url(", "NaN", "Inf", "-0 ", "\"-0\""} {
				assert.NotContains(t, text, never, about.Name)
			}
			for _, m := range fontSize.FindAllStringSubmatch(text, -1) {
				size, err := strconv.ParseFloat(m[1], 64)
				require.NoError(t, err)
				assert.GreaterOrEqual(t, size, 3.5, "capitals of 2.5 mm")
			}
			for _, m := range colour.FindAllStringSubmatch(text, -1) {
				assert.Contains(t, []string{"#000", "#fff", "none"}, m[1], about.Name)
			}
			for _, m := range ids.FindAllStringSubmatch(text, -1) {
				assert.True(t, strings.HasPrefix(m[1], about.Name+"-"), m[1])
				all = append(all, m[1])
			}
			assert.NotEmpty(t, about.Title)
			assert.Greater(t, len(about.Shows), 40)
			again, err := Draw(d, j.style)
			require.NoError(t, err)
			assert.Equal(t, text, string(again), "the same bytes")
		}
		slices.Sort(all)
		assert.Equal(t, len(all), len(slices.Compact(slices.Clone(all))), "ids are one in a page")
	}
}

// strict reads the text as XML without forgiving anything.
func strict(t *testing.T, text string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		_, err := d.Token()
		if err == io.EOF {
			return
		}
		require.NoError(t, err)
	}
}

// Values that are not there yet must not stop a binder.
func TestEmptyDrawingsSayThatThereIsNothingYet(t *testing.T) {
	for _, d := range []Drawing{
		Plan{}, Rectangles{}, Section{}, PierSection{}, JoistMarks{}, Panels{}, Nailing{}, Boards{}, Sticks{}, SheetCuts{}, Splice{}, Strings{},
		Loads{}, Curves{}, LoadPath{}, Contours{}, HeightCurve{}, Racking{}, Squaring{}, Moves{}, AsBuilt{}, Weekend{}, Fall{},
	} {
		drawing, err := Draw(d, imperial)
		require.NoError(t, err)
		strict(t, string(drawing))
		r := d.sheet(imperial).Record()
		assert.Len(t, r.Labels, 1)
		assert.Empty(t, faults(r))
	}
}

func TestHostileTextsStayTexts(t *testing.T) {
	const hostile = "</text></svg><script>alert(1)</script>\x00\xff\" onload=\"x ]]> &amp; “long” " + "words without end and without end and without end"
	j := sites[0]
	plan, sticks, week, fall := samplePlan(j), sampleSticks(j), sampleWeekend(j), sampleFall(j)
	plan.Corner, sticks.Section, fall.Side, fall.LeftName = hostile, hostile, hostile, "A1"
	sticks.Sticks[1].Name, sticks.Sticks[1].Pieces[0].Label = hostile, "<b>"
	week.Steps[0].Name, week.Days[0].Name = hostile, hostile
	nailing, curves, path := sampleNailing(j), sampleCurves(j), sampleLoadPath(j)
	nailing.Fastener, curves.Case, curves.Member, path.Parts[2].Name, path.Parts[2].Check = hostile, hostile, hostile, hostile, hostile
	panels, boards := samplePanels(j), sampleBoards(j)
	panels.Note, panels.Openings[0].Name, boards.Openings[1].Name = hostile, hostile, hostile
	sheets := sampleSheetCuts(j)
	sheets.Name, sheets.Sheets[0].Name, sheets.Sheets[0].Parts[0].Label = hostile, hostile, hostile
	for _, d := range []Drawing{plan, sticks, week, fall, nailing, curves, path, panels, boards, sheets} {
		drawing, err := Draw(d, j.style)
		require.NoError(t, err)
		strict(t, string(drawing))
		assert.NotContains(t, string(drawing), "<script")
		assert.NotContains(t, string(drawing), `" onload`)
		assert.Empty(t, faults(d.sheet(j.style).Record()), d.About().Title)
	}
}

func TestGoldenDrawings(t *testing.T) {
	for _, d := range []Drawing{samplePlan(sites[0]), sampleSections(sites[0])[0], samplePanels(sites[0]), sampleBoards(sites[0])} {
		drawing, err := Draw(d, imperial)
		require.NoError(t, err)
		name := filepath.Join("testdata", d.About().Name+".svg")
		if *update {
			require.NoError(t, os.MkdirAll("testdata", 0o755))
			require.NoError(t, os.WriteFile(name, drawing, 0o644))
		}
		want, err := os.ReadFile(name)
		require.NoError(t, err)
		assert.Empty(t, firstDifference(string(want), string(drawing)), "look at the drawing, then run with -update")
	}
}

// firstDifference returns the first line that is not the same.
func firstDifference(want, got string) string {
	w, g := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range max(len(w), len(g)) {
		switch {
		case i >= len(w):
			return "more than wanted: " + g[i]
		case i >= len(g):
			return "less than wanted: " + w[i]
		case w[i] != g[i]:
			return "wanted " + w[i] + "\ngot " + g[i]
		}
	}
	return ""
}

func BenchmarkEveryDrawing(b *testing.B) {
	b.ReportAllocs()
	drawings := everyDrawing(sites[0])
	for b.Loop() {
		for _, d := range drawings {
			if _, err := Draw(d, imperial); err != nil {
				b.Fatal(err)
			}
		}
	}
}
