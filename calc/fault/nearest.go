package fault

import "unicode/utf8"

// Nearest returns the choice that name was probably meant to be: the first of
// those with the fewest letters put in, left out, changed or swapped with their
// neighbour, when that is at most a third of the letters. It returns "" when
// none is near.
func Nearest(name string, choices []string) string {
	best, fewest := "", 0
	if utf8.RuneCountInString(name) > 64 {
		return ""
	}
	for _, choice := range choices {
		allowed := max(1, max(utf8.RuneCountInString(name), utf8.RuneCountInString(choice))/3)
		changes := distance([]rune(name), []rune(choice))
		if changes <= allowed && (best == "" || changes < fewest) {
			best, fewest = choice, changes
		}
	}
	return best
}

// distance is the optimal string alignment distance: the least number of
// insertions, deletions, changes and swaps of neighbours, no part edited twice.
func distance(a, b []rune) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row[0] = i + 1
		for j := range b {
			change := last[j]
			if a[i] != b[j] {
				change++
			}
			row[j+1] = min(last[j+1]+1, row[j]+1, change)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
