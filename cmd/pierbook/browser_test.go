package main

import (
	"io/fs"
	"os"
	"path"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/content"
	"pierbook/layouts/browser"
)

// The files of whole jobs, printed and opened as people do. The tests are
// skipped on a machine without a browser, and fail there when REQUIRE_BROWSER
// is 1.

// plannedJob is metric, with no reading yet and a name too long for any head.
var plannedJob = fstest.MapFS{"job.yaml": {Data: []byte(`
name: Werkstatt und Trockenboden am oberen Mühlteich, Flurstück siebzehn, zweiter Bauabschnitt
client: B. Featherstonehaugh-Cholmondeley and the trustees of the upper pond
revision: AB
units: metric
platform: {length: 4800 mm, width: 3600 mm, use: workshop}
timber: {species: hem_fir, grade: No.2}
site: {soil: {class: silty_sand}}
`)}}

// crowdedJobs have what fills the fronts of steps: long units of a rod, jointed
// beams, many piers under a line, and blanks for all that is not read.
var crowdedJobs = map[string]string{
	"tenths, spliced": `
name: Long Meadow hall
units: imperial
platform: {length: 40', width: 12', use: workshop}
timber: {species: douglas_fir_larch, grade: No.2}
site: {soil: {class: sandy_gravel}}
frame: {beams: {size: 4x8, lines: 3}, piers: {per_line: 9}}
ground:
  unit: ft
  instrument: {kind: builders_level, reads: tenths}
  sights: [[bench_mark: 4.86, A1: 4.78, A5: 5.33, A9: 5.64, B5: 5.15, C1: 4.60, C4: 4.81, C9: 5.20, bench_mark: 4.86]]
`,
	"water level, not read": `
name: Reed Bank deck
units: metric
platform: {length: 3600 mm, width: 3000 mm, use: deck, surface: {kind: boards}}
site: {soil: {class: silty_sand}}
timber: {species: spruce_pine_fir, grade: No.2, incised: false}
ground: {instrument: {kind: water_level, reads: millimetres}}
`,
}

// filesFrom makes the files of a job in a file system.
func filesFrom(t testing.TB, files fs.FS, name string) map[string][]byte {
	t.Helper()
	plan, faults := work(files, name)
	require.NoError(t, faults.Err())
	made, faults, err := bind(plan, files, newLibrary())
	require.NoError(t, err)
	require.NoError(t, faults.Err())
	return made
}

// side is a leaf of a sheet as it came out on paper.
type side struct {
	sheet int
	which string // "", "back" or "continued"
	pages []browser.Page
}

var headOfLeaf = regexp.MustCompile(`Sheet (\d+) of \d+(?:, (back|continued))?`)

// sidesOf deals printed pages to the leaves: a page without a head at its top
// is one that the leaf before runs over to.
func sidesOf(t *testing.T, pdf browser.PDF) []side {
	var sides []side
	for i, page := range pdf.Pages {
		top := page
		top.Words = nil
		for _, w := range page.Words {
			if w.YMin < 40 { // points: within the first line
				top.Words = append(top.Words, w)
			}
		}
		head := headOfLeaf.FindStringSubmatch(top.Text())
		if head == nil {
			require.NotEmpty(t, sides, "page %d has no head, and none is before it", i+1)
			last := &sides[len(sides)-1]
			last.pages = append(last.pages, page)
			continue
		}
		number, err := strconv.Atoi(head[1])
		require.NoError(t, err)
		sides = append(sides, side{number, head[2], []browser.Page{page}})
	}
	return sides
}

var (
	sheetMarkup = regexp.MustCompile(`<article class="sheet kind-([a-z]+)[^"]*" id="([^"]*)">`)
	leafMarkup  = regexp.MustCompile(`<section class="leaf( reverse)?[" ]`)
)

// sheetsIn returns name and kind of each sheet of a file, and how many leaves it has.
func sheetsIn(file []byte) (names, kinds []string, leaves []int) {
	parts := strings.Split(string(file), "<article ")[1:]
	for _, part := range parts {
		m := sheetMarkup.FindStringSubmatch("<article " + part)
		names, kinds, leaves = append(names, m[2]), append(kinds, m[1]), append(leaves, len(leafMarkup.FindAllString(part, -1)))
	}
	return names, kinds, leaves
}

// checkSides wants every leaf on a page of its own, and the front of every step
// on one side of paper with its hold point.
func checkSides(t *testing.T, file []byte, pdf browser.PDF) {
	names, kinds, leaves := sheetsIn(file)
	sides := sidesOf(t, pdf)
	found := make([]int, len(names))
	for _, s := range sides {
		name := names[s.sheet-1]
		found[s.sheet-1]++
		if kinds[s.sheet-1] == "step" && s.which == "" {
			assert.Len(t, s.pages, 1, "sides of the front of %s", name)
			assert.Contains(t, s.pages[0].Text(), "HOLD POINT", name)
		}
	}
	assert.Equal(t, leaves, found, "leaves that begin a page, sheet by sheet")
}

// mostSides is how many sides of paper all sheets of the sample may take; what
// people carry are its sets.
const mostSides = 85

func TestSampleBinderOnPaper(t *testing.T) {
	b := browser.Require(t)
	file := boundFiles(t, "")[binderFile]
	assert.Empty(t, b.TooWide(t, file))
	for _, paper := range []browser.Paper{browser.Letter, browser.A4} {
		t.Run(string(paper), func(t *testing.T) {
			pdf := b.Print(t, file, paper)
			pdf.CheckPaper(t)
			checkSides(t, file, pdf)
			checkBars(t, pdf)
			assert.LessOrEqual(t, len(pdf.Pages), mostSides)
			assert.Greater(t, len(pdf.Pages), 40)
			for _, s := range sidesOf(t, pdf) {
				if s.which == "back" {
					assert.Len(t, s.pages, 1, "sides of the back of sheet %d", s.sheet)
				}
				last := s.pages[len(s.pages)-1]
				assert.Greater(t, len(last.Words), 40, "no page with hardly a word ends sheet %d", s.sheet)
			}
		})
	}
}

// checkBars measures the bars on the first sheet, as the binder asks its reader to.
func checkBars(t *testing.T, pdf browser.PDF) {
	const inch, hundredMillimetres = 72.0, 100 * 72 / 25.4
	first := browser.PDF{File: pdf.File, Pages: pdf.Pages[:3]}
	first.CheckRuler(t, "P", "Q", 4*inch)
	first.CheckRuler(t, "R", "S", hundredMillimetres)
	first.CheckUpright(t, "T", "U", 4*inch)
	first.CheckUpright(t, "V", "W", hundredMillimetres)
}

func TestPlannedMetricBinderOnPaper(t *testing.T) {
	b := browser.Require(t)
	files := filesFrom(t, plannedJob, "job.yaml")
	assert.Empty(t, b.TooWide(t, files[binderFile]))
	pdf := b.Print(t, files[binderFile], browser.A4)
	pdf.CheckPaper(t)
	checkSides(t, files[binderFile], pdf)
	checkBars(t, pdf)
	checkScreen(t, b, files[binderFile], 320)
}

// Openings add a step to the front of the floor's sheet, and a list to its back.
func TestOpeningsOnPaper(t *testing.T) {
	b := browser.Require(t)
	deck, err := os.ReadFile(explained + "/openings-in-boards.yaml")
	require.NoError(t, err)
	papers := map[string]browser.Paper{sampleWithOpenings(t): browser.Letter, string(deck): browser.A4} // each on the paper of its country
	for text, paper := range papers {
		files := fstest.MapFS{"job.yaml": {Data: []byte(text)}}
		for _, name := range []string{"shop.yaml", "yard.yaml"} {
			data, err := fs.ReadFile(content.Sample, path.Join(path.Dir(content.SampleJob), name))
			require.NoError(t, err)
			files[name] = &fstest.MapFile{Data: data}
		}
		file := filesFrom(t, files, "job.yaml")[binderFile]
		assert.Empty(t, b.TooWide(t, file))
		pdf := b.Print(t, file, paper)
		pdf.CheckPaper(t)
		checkSides(t, file, pdf)
	}
}

// sampleWithOpenings is the sample with a hatch and a sleeve between joists and
// a stair that cuts two of them.
func sampleWithOpenings(t *testing.T) string {
	t.Helper()
	text, err := fs.ReadFile(content.Sample, content.SampleJob)
	require.NoError(t, err)
	const before = "  door: {side: A"
	require.Contains(t, string(text), before)
	return strings.Replace(string(text), before, `  openings:
    hatch: {x: 100", y: 40", length: 10", width: 20"}
    sleeve: {x: 38", y: 20", length: 4", width: 4"}
    stair: {x: 140", y: 90", length: 24", width: 30"}
`+before, 1)
}

func TestCrowdedBindersOnPaper(t *testing.T) {
	t.Skip("known gap: with a tenths rod or twenty piers the front of the posts runs over, and the post table is wider than its page")
	b := browser.Require(t)
	for name, text := range crowdedJobs {
		t.Run(name, func(t *testing.T) {
			file := filesFrom(t, fstest.MapFS{"job.yaml": {Data: []byte(text)}}, "job.yaml")[binderFile]
			assert.Empty(t, b.TooWide(t, file))
			for _, paper := range []browser.Paper{browser.Letter, browser.A4} {
				checkSides(t, file, b.Print(t, file, paper))
			}
		})
	}
}

func TestClientFileOnPaper(t *testing.T) {
	b := browser.Require(t)
	file := boundFiles(t, "")[clientFile]
	assert.Empty(t, b.TooWide(t, file))
	for _, paper := range []browser.Paper{browser.Letter, browser.A4} {
		pdf := b.Print(t, file, paper)
		pdf.CheckPaper(t)
		assert.LessOrEqual(t, len(pdf.Pages), 4)
	}
}

func TestFilesOnPhone(t *testing.T) {
	b := browser.Require(t)
	made := boundFiles(t, "")
	for _, name := range []string{binderFile, clientFile} {
		for _, width := range []int{320, 390} {
			checkScreen(t, b, made[name], width)
		}
	}
}

func checkScreen(t *testing.T, b browser.Browser, file []byte, width int) {
	t.Helper()
	screen := b.Show(t, file, width)
	assert.LessOrEqual(t, screen.Width, width, "sticks out: %v", screen.StickingOut)
	assert.Empty(t, screen.Small, "targets for a thumb")
	assert.Empty(t, screen.Twice, "ids")
	assert.Empty(t, screen.Nowhere, "links")
}

// TestFilesStandAlone needs no browser: the files are well-formed, and their
// policy lets nothing load from elsewhere.
func TestFilesStandAlone(t *testing.T) {
	for job, made := range map[string]map[string][]byte{"sample": boundFiles(t, ""), "planned": filesFrom(t, plannedJob, "job.yaml")} {
		for _, name := range []string{binderFile, clientFile} {
			text := string(made[name])
			assert.NotEmpty(t, wordsOf(t, made[name]), "%s of %s: read as strict XML", name, job)
			policy := strings.Index(text, `<meta http-equiv="Content-Security-Policy" content="default-src &#39;none&#39;;`)
			assert.Positive(t, policy, "%s of %s", name, job)
			assert.Less(t, policy, strings.Index(text, "<style>"))
			for _, never := range []string{"http://", "https://", "file:", "url(", "@import", "<link", "<img", "<iframe"} {
				assert.NotContains(t, strings.ReplaceAll(text, `xmlns="http://www.w3.org/2000/svg"`, ""), never, "%s of %s", name, job)
			}
		}
	}
}
