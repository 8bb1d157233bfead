package content

import (
	"slices"
	"strconv"
	"strings"
)

// alike makes one row of all rows that read the same but for their first cell,
// which then names all of them.
func alike(rows [][]Cell) [][]Cell {
	var merged [][]Cell
	for len(rows) > 0 {
		first := rows[0]
		same := func(row []Cell) bool { return slices.Equal(row[1:], first[1:]) }
		var names []string
		for _, row := range rows {
			if same(row) {
				names = append(names, row[0].Text)
			}
		}
		row := slices.Clone(first)
		row[0].Text = InRuns(names)
		merged = append(merged, row)
		rows = slices.DeleteFunc(slices.Clone(rows), same)
	}
	return merged
}

// InRuns names things in order, three and more that follow one another by the
// first and the last: "A1 to A5, B2".
func InRuns(names []string) string {
	var runs []string
	for i := 0; i < len(names); {
		end := i
		for end+1 < len(names) && follows(names[end], names[end+1]) {
			end++
		}
		if end-i >= 2 {
			runs = append(runs, names[i]+" to "+names[end])
		} else {
			runs = append(runs, names[i:end+1]...)
		}
		i = end + 1
	}
	return strings.Join(runs, ", ")
}

// follows says whether b has the number after a's, and the letters before it.
func follows(a, b string) bool {
	letters := strings.TrimRight(a, "0123456789")
	number, err := strconv.Atoi(a[len(letters):])
	return err == nil && b == letters+strconv.Itoa(number+1)
}
