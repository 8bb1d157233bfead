package content

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whoever writes a measurement down reads beside it what is expected, what may
// stand and where to stop.
func TestEveryMeasuredBlankSaysWhatIsExpectedAndWhereToStop(t *testing.T) {
	pages, err := filepath.Glob("pages/*.md")
	require.NoError(t, err)
	blanks := 0
	for _, page := range pages {
		text, err := os.ReadFile(page)
		require.NoError(t, err)
		inside := false
		for _, line := range strings.Split(string(text), "\n") {
			if strings.HasPrefix(line, "```") {
				inside = line == "```blanks"
				continue
			}
			parts := strings.Split(line, " | ")
			if !inside || len(parts) < 2 || !strings.HasPrefix(parts[1], "{unit.") {
				continue
			}
			blanks++
			assert.Len(t, parts, 5, "%s: %s", page, line)
		}
	}
	assert.Greater(t, blanks, 20)
}

// A reading is either accepted or not: what to do with one that is not stands in
// words, never as the same number once more.
func TestAcceptAndOtherwiseNeverCoincide(t *testing.T) {
	pages, err := filepath.Glob("pages/*.md")
	require.NoError(t, err)
	seen := 0
	for _, page := range pages {
		text, err := os.ReadFile(page)
		require.NoError(t, err)
		inside := false
		for _, line := range strings.Split(string(text), "\n") {
			if strings.HasPrefix(line, "```") {
				inside = line == "```blanks" || line == "```targets"
				continue
			}
			parts := strings.Split(line, " | ")
			if !inside || len(parts) < 5 {
				continue
			}
			seen++
			accept, otherwise := parts[3], parts[4]
			assert.NotEqual(t, accept, otherwise, "%s: %s", page, line)
			bare := strings.HasPrefix(otherwise, "{") && strings.HasSuffix(otherwise, "}") && strings.Count(otherwise, "{") == 1
			assert.False(t, bare, "%s: a number alone says nothing of what to do: %s", page, line)
		}
	}
	assert.Greater(t, seen, 60)
}
