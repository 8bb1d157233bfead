package content

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestThingsOfWhichATableSaysTheSameStandTogether(t *testing.T) {
	got := alike([][]Cell{texts("A1", "8″", "bed 5″"), texts("A2", "8″", "bed 5″"), texts("A3", "8″", "floor +2″"), texts("A4", "8″", "bed 5″"), texts("B1", "9″", "bed 5″")})
	var rows []string
	for _, row := range got {
		var cells []string
		for _, cell := range row {
			cells = append(cells, cell.Text)
		}
		rows = append(rows, strings.Join(cells, " | "))
	}
	assert.Equal(t, []string{"A1, A2, A4 | 8″ | bed 5″", "A3 | 8″ | floor +2″", "B1 | 9″ | bed 5″"}, rows)
}

func TestThingsThatFollowOneAnotherAreNamedByFirstAndLast(t *testing.T) {
	assert.Equal(t, "A1 to A5, B1, B2, C9 to C11", InRuns([]string{"A1", "A2", "A3", "A4", "A5", "B1", "B2", "C9", "C10", "C11"}))
	assert.Equal(t, "", InRuns(nil))
	assert.Equal(t, "A1, A3, B4", InRuns([]string{"A1", "A3", "B4"}))
}
