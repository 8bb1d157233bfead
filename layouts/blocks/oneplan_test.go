package blocks

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// TestAPierHasOnePlanOnAllSheets draws what was dug and reads every sheet back: the
// post, the seat and what the rod is to read are one number wherever they stand, and
// the row of the post adds up as it is printed.
func TestAPierHasOnePlanOnAllSheets(t *testing.T) {
	before, _, _ := strings.Cut(secondIssue, "measured:")
	sheets := 0
	drawn := rand.New(rand.NewPCG(1, 2))
	for range 20 {
		sixteenths := func(least, most int) string {
			return fmt.Sprintf(`%d/16"`, least+drawn.IntN(most-least+1))
		}
		text := strings.NewReplacer(`floor: {height: 15 1/2", room: 0}`, "floor: {height: lowest, room: "+sixteenths(0, 24)+"}",
			`thickness: 1"`, `thickness: 1 1/32"`, "A2: 4' 2\"", "A2: 4' "+sixteenths(0, 90)).Replace(before)
		text += "measured:\n  holes: {A1: {depth: " + sixteenths(170, 240) + ", found: firm}, B1: {depth: " + sixteenths(130, 240) + ", found: firm}}\n"
		j, faults := job.Read(fstest.MapFS{"job.yaml": {Data: []byte(text)}}, "job.yaml")
		require.NoError(t, faults.Err())
		p, faults := calc.Work(j)
		require.NoError(t, faults.Err())
		if p.Heights.Clash != nil {
			continue
		}
		seen := map[string]map[string]bool{} // pier and what it is: the numbers printed
		note := func(pier, what, number string) {
			if seen[pier+" "+what] == nil {
				seen[pier+" "+what] = map[string]bool{}
			}
			seen[pier+" "+what][number] = true
		}
		for _, s := range sheetsOf(t, p) {
			for _, leaf := range s.Leaves {
				for name, columns := range map[string]map[int]string{
					"piers": {6: "seat", 7: "post"}, "posts": {1: "post", 4: "number"}, "seat-readings": {1: "reading"},
				} {
					table, found := tableIn(t, string(leaf.HTML), name)
					if !found {
						continue
					}
					for _, row := range rows(table) {
						cells := strings.Split(row, " | ")
						if len(cells) < 3 {
							continue
						}
						sheets++
						for column, what := range columns {
							note(cells[0], what, cells[column])
						}
					}
				}
			}
		}
		length := func(key string) measure.Length {
			require.Len(t, seen[key], 1, "%s in %s", key, text)
			for printed := range seen[key] {
				sign := measure.Length(1)
				if rest, away := strings.CutPrefix(printed, "take away "); away {
					printed, sign = rest, -1
				}
				l, err := measure.ParseLength(strings.Replace(strings.TrimPrefix(printed, "add "), "−", "-", 1))
				require.NoError(t, err, printed)
				return sign * l
			}
			return 0
		}
		for _, pier := range p.Frame.Piers {
			assert.Equal(t, -length(pier.Name+" seat"), length(pier.Name+" reading"), pier.Name)
			assert.Equal(t, length(pier.Name+" post"), length(pier.Name+" number")+length(pier.Name+" reading"), pier.Name)
		}
	}
	assert.Positive(t, sheets)
}
