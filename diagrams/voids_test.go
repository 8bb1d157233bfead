package diagrams

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A void is an outline with both diagonals, and carries its name wherever the
// floor has room for it.
func TestOpeningsAreOutlinedCrossedAndNamed(t *testing.T) {
	j := sites[0]
	for _, d := range []Drawing{samplePanels(j), sampleBoards(j)} {
		var names []string
		for _, l := range d.sheet(j.style).Record().Labels {
			names = append(names, l.Words)
		}
		all := strings.Join(names, "|")
		assert.Contains(t, all, "hatch 24″ × 20″", d.About().Name)
		assert.Contains(t, all, "sleeve", d.About().Name)
		assert.Contains(t, d.About().Shows, "2 openings")
	}
	with, without := samplePanels(j), samplePanels(j)
	without.Openings = nil
	drawn, err := Draw(with, j.style)
	require.NoError(t, err)
	plain, err := Draw(without, j.style)
	require.NoError(t, err)
	assert.NotContains(t, without.About().Shows, "opening")
	assert.Greater(t, strings.Count(string(drawn), "<path"), strings.Count(string(plain), "<path"), fmt.Sprint(len(drawn), len(plain)))
}
