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
