package blocks

import (
	"slices"
	"strconv"
	"strings"

	"pierbook/layouts"
)

// pierGroup is what a table says of one pier.
type pierGroup struct {
	pier, says string           // "A1" and "nothing changes from 8″ down"
	rows       [][]layouts.Cell // without the pier's name
}

// alike makes one group of all piers of which a table says the same.
func alike(list []pierGroup) []layouts.Group {
	var groups []layouts.Group
	for len(list) > 0 {
		first := list[0]
		same := func(g pierGroup) bool {
			return g.says == first.says && slices.EqualFunc(g.rows, first.rows, slices.Equal)
		}
		var piers []string
		for _, g := range list {
			if same(g) {
				piers = append(piers, g.pier)
			}
		}
		groups = append(groups, layouts.Group{Name: inRuns(piers) + ": " + first.says, Rows: first.rows})
		list = slices.DeleteFunc(slices.Clone(list), same)
	}
	return groups
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
