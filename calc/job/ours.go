package job

import (
	"fmt"
	"regexp"
	"strings"

	"pierbook/calc/fault"
)

// topKey finds a key at the beginning of a line, or behind the bracket that
// opens the file.
var topKey = regexp.MustCompile(`^\{?[ \t]*["']?([A-Za-z][A-Za-z0-9_ -]*?)["']?[ \t]*:(?:[ \t]|$)`)

// isOurs says whether a text looks like a file of ours: of the keys on its
// outermost level at least as many are among the names, or near to one, as are
// not. It is asked before anything of the file is shown, since a job may name
// any file.
func isOurs(src *source, names []string) bool {
	outermost := -1
	for _, line := range src.lines {
		if indent := indentOf(line); !idle(line) && (outermost < 0 || indent < outermost) {
			outermost = indent
		}
	}
	known, unknown := 0, 0
	for _, line := range src.lines {
		if idle(line) || indentOf(line) != outermost {
			continue
		}
		if key := topKey.FindStringSubmatch(line[outermost:]); key == nil {
			continue
		} else if fault.Nearest(strings.ToLower(key[1]), names) != "" {
			known++
		} else {
			unknown++
		}
	}
	return known > 0 && known >= unknown
}

// idle says whether a line holds no key or value.
func idle(line string) bool {
	text := strings.TrimSpace(line)
	return text == "" || text[0] == '#' || text == "---" || text == "..."
}

// deepestNesting is how many maps and lists may stand in one another. A job
// needs seven.
const deepestNesting = 32

// shallow sees, before the file is read as a tree, that it does not nest deeper
// than any real one, and reports where it does. Brackets count wherever they
// stand, since feet and inches look like quotes.
func shallow(src *source, faults *fault.List) bool {
	var columns []int // of the maps and lists that are open by their indentation
	brackets := 0
	for i, line := range src.lines {
		if idle(line) {
			continue
		}
		column := indentOf(line)
		for len(columns) > 0 && columns[len(columns)-1] > column {
			columns = columns[:len(columns)-1]
		}
		for _, at := range openings(line, column) {
			if len(columns) == 0 || columns[len(columns)-1] < at {
				columns = append(columns, at)
			}
		}
		for at, sign := range line {
			switch sign {
			case '[', '{':
				brackets++
			case ']', '}':
				brackets = max(0, brackets-1)
			}
			if len(columns)+brackets > deepestNesting {
				faults.Add(fault.Fault{At: src.place(i+1, len([]rune(line[:at]))+1, 1), Wrong: fmt.Sprintf("more than %d maps and lists stand in one another here", deepestNesting),
					Remedy: "a job needs seven at most; is a bracket left open?"})
				return false
			}
		}
	}
	return true
}

// openings returns the columns of a line at which a map or a list may begin: its
// first sign, and what follows each dash or question mark of a list or a key.
func openings(line string, column int) []int {
	list := []int{column}
	for column+1 < len(line) && (line[column] == '-' || line[column] == '?') && (line[column+1] == ' ' || line[column+1] == '\t') {
		column += 1 + indentOf(line[column+1:])
		list = append(list, column)
	}
	return list
}
