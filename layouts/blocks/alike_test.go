package blocks

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/content"
)

func TestPiersOfWhichATableSaysTheSameStandTogether(t *testing.T) {
	seven, two := content.Text("8″", "bed 5″"), content.Text("8″", "floor +2″")
	got := alike([]pierRowed{{"A1", seven}, {"A2", seven}, {"A3", two}, {"A4", seven}, {"B1", content.Text("9″", "bed 5″")}})
	assert.Equal(t, []string{"A1, A2, A4 | 8″ | bed 5″", "A3 | 8″ | floor +2″", "B1 | 9″ | bed 5″"}, rows(content.Table{Rows: got}))
}

func TestPiersThatFollowOneAnotherAreNamedByFirstAndLast(t *testing.T) {
	assert.Equal(t, "A1 to A5, B1, B2, C9 to C11", inRuns([]string{"A1", "A2", "A3", "A4", "A5", "B1", "B2", "C9", "C10", "C11"}))
	assert.Equal(t, "", inRuns(nil))
	assert.Equal(t, "A1, A3, B4", inRuns([]string{"A1", "A3", "B4"}))
}
