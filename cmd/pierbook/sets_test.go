package main

import (
	"fmt"
	"io/fs"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/content"
	"pierbook/layouts/blocks"
	"pierbook/layouts/browser"
)

// landing is a step on four piers, hall a floor on twenty.
const (
	landing = `
name: Back door landing
platform: {length: 6', width: 4', use: deck}
timber: {species: hem_fir, grade: No.2}
site: {soil: {class: silty_sand}}
frame: {beams: {lines: 2}, piers: {per_line: 2}}
ground: {sights: [[bench_mark: 4' 2", A1: 4' 6", A2: 4' 8", B1: 4' 4", B2: 4' 7", bench_mark: 4' 2"]]}
`
	hall = `
name: Long meadow hall
platform: {length: 32', width: 16', use: workshop}
timber: {species: douglas_fir_larch, grade: No.2}
site: {soil: {class: sandy_gravel}}
frame: {beams: {size: 4x8, lines: 4}, piers: {per_line: 5}}
ground: {sights: [[bench_mark: 4' 10", A1: 4' 9", A5: 5' 4", B3: 5' 2", D1: 4' 7", D5: 5' 2", bench_mark: 4' 10"]]}
`
)

// setOf makes the files of one set of a job; no text stands for the sample.
func setOf(t *testing.T, text string, set content.Set) map[string][]byte {
	t.Helper()
	var files fs.FS = fstest.MapFS{"job.yaml": {Data: []byte(text)}}
	name := "job.yaml"
	if text == "" {
		files, name = content.Sample, content.SampleJob
	}
	plan, faults := work(files, name)
	require.NoError(t, faults.Err())
	made, faults, err := bindSet(plan, files, newLibrary(), set)
	require.NoError(t, err)
	require.NoError(t, faults.Err())
	return made
}

// sheetsOf binds the sheets of a plan.
func sheetsOf(t *testing.T, p *calc.Plan, files fs.FS) []content.Sheet {
	t.Helper()
	book, faults := newLibrary().bookFor(p, files)
	require.NoError(t, faults.Err())
	made, _ := blocks.Of(p)
	sheets, faults := book.Bind(p.Figures, p.Style, made)
	require.NoError(t, faults.Err())
	return sheets
}

// The sides of each set, on both papers.
func TestSetsOnPaper(t *testing.T) {
	b := browser.Require(t)
	for _, c := range []struct {
		name, job   string
		set         content.Set
		least, most int
	}{
		{"crew of the sample", "", content.SetCrew, 20, 30},
		{"crew on four piers", landing, content.SetCrew, 15, 21},
		{"crew on twenty piers", hall, content.SetCrew, 20, 31},
		{"days of the sample", "", everyDay, 6, 10},
		{"saw and yard", "", content.SetSaw, 4, 6},
		{"drawings", "", content.SetDrawings, 3, 4},
	} {
		t.Run(c.name, func(t *testing.T) {
			for name, file := range setOf(t, c.job, c.set) {
				if !strings.HasSuffix(name, ".html") {
					continue
				}
				assert.Empty(t, b.TooWide(t, file))
				for _, paper := range []browser.Paper{browser.Letter, browser.A4} {
					pdf := b.Print(t, file, paper)
					pdf.CheckPaper(t)
					sides := 0
					for _, page := range pdf.Pages {
						if len(page.Words) > 20 {
							sides++
						}
					}
					assert.LessOrEqual(t, sides, c.most, "%s on %s", name, paper)
					assert.GreaterOrEqual(t, sides, c.least, "%s on %s", name, paper)
				}
			}
		})
	}
}

var asFirstChoice = regexp.MustCompile(`<option value="crew">`)

// What the control on the page names is what a set's file holds, and no script
// is needed for it.
func TestChoiceOnPagePrintsItsSet(t *testing.T) {
	b := browser.Require(t)
	whole := boundFiles(t, "")[binderFile]
	require.Regexp(t, asFirstChoice, string(whole))
	chosen := asFirstChoice.ReplaceAll(whole, []byte(`<option value="crew" selected="selected">`))
	alone := setOf(t, "", content.SetCrew)[setFile(content.SetCrew)]
	onPage, byItself := sidesOf(t, b.Print(t, chosen, browser.Letter)), sidesOf(t, b.Print(t, alone, browser.Letter))
	require.Len(t, onPage, len(byItself))
	for i := range onPage {
		assert.Equal(t, byItself[i].sheet, onPage[i].sheet)
		assert.Equal(t, byItself[i].which, onPage[i].which)
		assert.Len(t, onPage[i].pages, len(byItself[i].pages))
	}
}

// Sides are counted within their sheet, so that one sheet can be exchanged.
func TestSidesCountedWithinSheetOnPaper(t *testing.T) {
	b := browser.Require(t)
	for _, s := range sidesOf(t, b.Print(t, boundFiles(t, "")[binderFile], browser.Letter)) {
		if s.which != "" {
			continue
		}
		for i, page := range s.pages {
			assert.Contains(t, page.Text(), fmt.Sprintf("%d, side %d", s.sheet, i+1))
		}
	}
}

// Every side is in a set, and a step's hold point is the crew's.
func TestEverySideIsInASet(t *testing.T) {
	plan, faults := work(content.Sample, content.SampleJob)
	require.NoError(t, faults.Err())
	sheets := sheetsOf(t, plan, content.Sample)
	for _, set := range deal(plan, sheets) {
		assert.NotEmpty(t, set.Title)
	}
	for _, s := range sheets {
		for i, leaf := range s.Leaves {
			assert.NotEmpty(t, leaf.Sets, "side %d of %s", i+1, s.Name)
			if strings.Contains(string(leaf.HTML), `class="hold"`) && s.Kind == "step" {
				assert.True(t, leaf.InSet(content.SetCrew), "side %d of %s", i+1, s.Name)
			}
		}
	}
}

func TestSetAsTyped(t *testing.T) {
	for typed, want := range map[string]content.Set{
		"crew": "crew", "Crew": "crew", "saw and yard": "saw-and-yard", "yard": "saw-and-yard", "saw_and_yard": "saw-and-yard",
		"day": "day", "day 2": "day-2", "DAY-12": "day-12", "all": "all", "changes": "changes",
	} {
		got, known := setAsked(typed)
		assert.True(t, known, typed)
		assert.Equal(t, want, got, typed)
	}
	for _, typed := range []string{"", "and", "day-0", "crew-1", "crews", "-"} {
		_, known := setAsked(typed)
		assert.False(t, known, typed)
	}
}
