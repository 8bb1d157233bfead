package diagrams

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
)

// A void is an outline with both diagonals, and a note beside the floor names it.
func TestOpeningsAreOutlinedCrossedAndNamed(t *testing.T) {
	j := sites[0]
	for _, d := range []Drawing{samplePanels(j), sampleBoards(j)} {
		var names []string
		for _, l := range d.sheet(j.style).Record().Labels {
			names = append(names, l.Words)
		}
		all := strings.Join(names, "|")
		for _, words := range []string{"hatch", "24″ × 20″", "sleeve", "4″ × 4″"} {
			assert.Contains(t, all, words, d.About().Name)
		}
		assert.Contains(t, d.About().Shows, "2 openings")
	}
	with, without := samplePanels(j), samplePanels(j)
	without.Openings = nil
	drawn, err := Draw(with, j.style)
	require.NoError(t, err)
	plain, err := Draw(without, j.style)
	require.NoError(t, err)
	assert.NotContains(t, without.About().Shows, "opening")
	assert.Greater(t, strings.Count(string(drawn), "<path"), strings.Count(string(plain), "<path"))
}

// More openings than the floor is high for: the first ones are named, and nothing
// runs into anything else.
func TestManyOpeningsStayReadable(t *testing.T) {
	for _, j := range sites {
		panels, boards := samplePanels(j), sampleBoards(j)
		for i := range measure.Length(40) {
			o := Void{Name: "sleeve" + number(int(i)), X: j.long.Part(int(i), 41), Y: j.wide.Part(int(i*7%40), 41), Length: 2 * in, Width: 2 * in}
			panels.Openings, boards.Openings = append(panels.Openings, o), append(boards.Openings, o)
		}
		for _, d := range []Drawing{panels, boards} {
			assert.Empty(t, faults(d.sheet(j.style).Record()), j.name+": "+d.About().Name)
		}
	}
}
