package blocks

import (
	"html"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/trade"
	"pierbook/content"
)

var tags = regexp.MustCompile(`<[^>]*>`)

// Every step is named once, in the table of the steps: with each word and number
// of the table changed, the sheets, the plan of the days and the table of the
// hours print the changed ones.
func TestStepsArePrintedFromTheirTable(t *testing.T) {
	var changed strings.Builder
	for line := range strings.Lines(trade.TableText("steps")) {
		cells := strings.Split(strings.TrimSpace(line), " | ")
		if !strings.HasPrefix(line, "#") && cells[0] != "step" {
			people, err := strconv.Atoi(cells[2])
			require.NoError(t, err)
			cells[1], cells[2], cells[3], cells[4] = "Title of "+cells[0], strconv.Itoa(people+1), cells[3]+" (night of "+cells[0]+")", "hold of "+cells[0]
		}
		changed.WriteString(strings.Join(cells, " | ") + "\n")
	}
	back, err := trade.Try("steps", changed.String())
	require.NoError(t, err)
	defer back()

	p := sample(t)
	byName := map[string]content.Sheet{}
	for _, s := range sheetsOf(t, p) {
		byName[s.Name] = s
	}
	plain := func(markup string) string { return html.UnescapeString(tags.ReplaceAllString(markup, "")) }
	hours, days := strings.Join(rows(onPaper(t, p, "hours")), "\n"), strings.Join(rows(onPaper(t, p, "days")), "\n")
	for _, step := range trade.Steps() {
		sheet := byName[step.Name]
		assert.Equal(t, "Title of "+step.Name, sheet.Title)
		assert.Equal(t, strconv.Itoa(step.People), plain(string(sheet.People)), step.Name)
		assert.Equal(t, step.Overnight, plain(string(sheet.Overnight)), step.Name)
		assert.Contains(t, hours, step.Title+" |")
		assert.Contains(t, days, step.Title+" |")
		assert.Contains(t, days, step.Hold)
	}
}
