package job

import (
	"regexp"
	"strconv"

	"pierbook/calc/fault"
)

// syntaxFaults returns why a file cannot be read. The reader of the language names
// the line where it gave up, often one line off and never a column, in words
// about mappings and scalars. A builder needs the place and the remedy, so the
// lines are gone through here for the slips that people make; see [lookout]. What
// the reader said is passed on only when none of them is found.
func syntaxFaults(src *source, message string) fault.List {
	near := lineOf(message)
	look := lookout{src: src}
	look.lines()
	found := look.from(near - 1)
	if len(found) == 0 {
		found = look.from(0)
	}
	var list fault.List
	if len(found) == 0 {
		at := src.start()
		if near > 0 {
			at = src.place(near, 1+indentOf(src.lines[min(near, len(src.lines))-1]), 1)
		}
		list.Add(fault.Fault{At: at, Wrong: "the file cannot be read near here: " + plainMessage(message), Remedy: "look at this line and its neighbours: quotes, brackets, blanks at the start of the line and after each colon"})
	}
	for _, f := range found {
		list.Add(f)
	}
	return list
}

var (
	lineNumber = regexp.MustCompile(`line ([0-9]+)`)
	yamlPrefix = regexp.MustCompile(`^yaml: (line [0-9]+: )?`)
)

func lineOf(message string) int {
	if m := lineNumber.FindStringSubmatch(message); m != nil {
		n, _ := strconv.Atoi(m[1])
		return n
	}
	return 1
}

func plainMessage(message string) string { return yamlPrefix.ReplaceAllString(message, "") }
