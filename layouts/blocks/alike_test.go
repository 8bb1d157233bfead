package blocks

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/layouts"
)

func TestPiersOfWhichATableSaysTheSameStandTogether(t *testing.T) {
	seven, two := [][]layouts.Cell{layouts.Text("7″", "keep the floor")}, [][]layouts.Cell{layouts.Text("2″", "lift the floor")}
	got := alike([]pierGroup{{"A1", "from 8″", seven}, {"A2", "from 8″", seven}, {"A3", "from 8″", two}, {"A4", "from 8″", seven}, {"B1", "from 9″", seven}})
	assert.Equal(t, []layouts.Group{{Name: "A1, A2, A4: from 8″", Rows: seven}, {Name: "A3: from 8″", Rows: two}, {Name: "B1: from 9″", Rows: seven}}, got)
}

func TestPiersThatFollowOneAnotherAreNamedByFirstAndLast(t *testing.T) {
	assert.Equal(t, "A1 to A5, B1, B2, C9 to C11", inRuns([]string{"A1", "A2", "A3", "A4", "A5", "B1", "B2", "C9", "C10", "C11"}))
	assert.Equal(t, "", inRuns(nil))
	assert.Equal(t, "A1, A3, B4", inRuns([]string{"A1", "A3", "B4"}))
}
