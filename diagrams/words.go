package diagrams

import (
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/measure"
)

func number(n int) string { return strconv.Itoa(n) }

// counted returns "1 pier" or "5 piers".
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return number(n) + " " + many
}

// listed joins names in words: "A, B and C".
func listed(names []string) string {
	switch len(names) {
	case 0:
		return ""
	case 1:
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// sortedLengths returns the lengths by rising size, each once.
func sortedLengths(list []measure.Length) []measure.Length {
	list = slices.Clone(list)
	slices.Sort(list)
	return slices.Compact(list)
}

// printed returns the lengths as they print.
func printed(list []measure.Length, style measure.Style) []string {
	words := make([]string, len(list))
	for i, l := range list {
		words[i] = l.Print(style)
	}
	return words
}
