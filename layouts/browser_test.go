package layouts

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/layouts/browser"
)

// TestPrintsOnBothPapers prints the fixture as a person would and measures the
// paper.
func TestPrintsOnBothPapers(t *testing.T) {
	b := browser.Require(t)
	for _, name := range []string{"Kiln field workshop", hostile, strings.Repeat("Longword", 12)} {
		file := fixtureHTML(t, name)
		assert.Empty(t, b.TooWide(t, file), name)
		for _, paper := range []browser.Paper{browser.Letter, browser.A4} {
			t.Run(string(paper)+" "+name[:10], func(t *testing.T) {
				pdf := b.Print(t, file, paper)
				pdf.CheckPaper(t)
				pdf.CheckRuler(t, "LEFTEND", "RIGHTEND", 288)
				width := map[browser.Paper]float64{browser.Letter: 612, browser.A4: 595}[paper]
				assert.InDelta(t, width, pdf.Pages[0].Width, 1)
				checkSheetStarts(t, pdf)
				assert.GreaterOrEqual(t, len(pdf.Pages), 8)
				assert.LessOrEqual(t, len(pdf.Pages), 14)
			})
		}
	}
}

// checkSheetStarts wants every leaf to begin a page of its own with its number
// at the head, and the warning on each.
func checkSheetStarts(t *testing.T, pdf browser.PDF) {
	var heads []string
	for _, page := range pdf.Pages {
		if _, after, found := strings.Cut(page.Text(), "Sheet "); found {
			heads = append(heads, strings.Join(strings.Fields(after)[:3], " "))
			assert.Contains(t, page.Text(), "NOT FOR CONSTRUCTION")
		}
	}
	require.Equal(t, []string{"1 of 6", "2 of 6", "3 of 6", "3 of 6,", "4 of 6", "5 of 6", "6 of 6"}, heads)
}

// TestTurnedSheetIsTurned wants the wide sheet on upright paper with its
// writing turned, so that it goes into the same folder.
func TestTurnedSheetIsTurned(t *testing.T) {
	pdf := browser.Require(t).Print(t, fixtureHTML(t, "Kiln"), browser.A4)
	for _, page := range pdf.Pages {
		assert.Less(t, page.Width, page.Height)
	}
	words, _ := pdf.Find("Foresight")
	require.NotEmpty(t, words)
	assert.Less(t, words[0].XMax-words[0].XMin, words[0].YMax-words[0].YMin, "the word runs up the page")
}

// TestClientPrints prints the client's file, which has a head of its own.
func TestClientPrints(t *testing.T) {
	b := browser.Require(t)
	files := every(t, "Kiln field workshop")
	pdf := b.Print(t, files["client"], browser.A4)
	pdf.CheckPaper(t)
	pdf.CheckRuler(t, "LEFTEND", "RIGHTEND", 288)
	b.Print(t, files["front"], browser.A4).CheckPaper(t)
}

// TestPhone opens the files on narrow screens.
func TestPhone(t *testing.T) {
	b := browser.Require(t)
	for _, width := range []int{320, 390} {
		for _, name := range []string{"Kiln field workshop", hostile, strings.Repeat("Longword", 12)} {
			screen := b.Show(t, fixtureHTML(t, name), width)
			assert.LessOrEqual(t, screen.Width, width, "%s sticks out: %v", name, screen.StickingOut)
			assert.Empty(t, screen.Small, "targets for a thumb")
			assert.Empty(t, screen.Twice, "ids")
			assert.Empty(t, screen.Nowhere, "links")
			assert.Greater(t, screen.Ticks, 10)
			// printed number 12 in, plus 2 ft, less 1 ft
			assert.Equal(t, []string{"post = 24 in"}, screen.Sums)
		}
	}
	for kind, file := range every(t, hostile) {
		screen := b.Show(t, file, 320)
		assert.LessOrEqual(t, screen.Width, 320, "%s sticks out: %v", kind, screen.StickingOut)
		assert.Empty(t, screen.Small, kind)
		assert.Empty(t, screen.Nowhere, kind)
	}
}
