package blocks

import (
	"slices"
	"strconv"
	"strings"

	"pierbook/content"
)

// pierRowed is the row that a table has for one pier, without the pier's name.
type pierRowed struct {
	pier  string
	cells []content.Cell
}

// alike makes one row of all piers of which a table says the same.
func alike(list []pierRowed) [][]content.Cell {
	var rows [][]content.Cell
	for len(list) > 0 {
		first := list[0]
		same := func(r pierRowed) bool { return slices.Equal(r.cells, first.cells) }
		var piers []string
		for _, r := range list {
			if same(r) {
				piers = append(piers, r.pier)
			}
		}
		rows = append(rows, append([]content.Cell{head(inRuns(piers))}, first.cells...))
		list = slices.DeleteFunc(slices.Clone(list), same)
	}
	return rows
}

// inRuns names piers in order, three and more of one line that follow one
// another by the first and the last: "A1 to A5, B2".
func inRuns(piers []string) string {
	var runs []string
	for i := 0; i < len(piers); {
		end := i
		for end+1 < len(piers) && follows(piers[end], piers[end+1]) {
			end++
		}
		if end-i >= 2 {
			runs = append(runs, piers[i]+" to "+piers[end])
		} else {
			runs = append(runs, piers[i:end+1]...)
		}
		i = end + 1
	}
	return strings.Join(runs, ", ")
}

// follows says whether pier b stands next after a on one line.
func follows(a, b string) bool {
	line := strings.TrimRight(a, "0123456789")
	number, err := strconv.Atoi(a[len(line):])
	return err == nil && b == line+strconv.Itoa(number+1)
}
