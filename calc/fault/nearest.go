package fault

import (
	"cmp"
	"slices"
	"strings"
)

// Nearest returns the known names that word was most likely meant to be, the
// nearest first and at most three: those that need no more changes than a third
// of its letters, or else those that have it as a part.
func Nearest(word string, known []string) []string {
	type candidate struct {
		name    string
		changes int
	}
	var near []candidate
	limit := max(1, (len([]rune(word))+1)/3)
	lower := strings.ToLower(word)
	for _, name := range known {
		changes := changesBetween(lower, strings.ToLower(name))
		if changes > limit && len(word) > 2 && strings.Contains(strings.ToLower(name), lower) {
			changes = limit
		}
		if changes <= limit {
			near = append(near, candidate{name, changes})
		}
	}
	slices.SortFunc(near, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(a.changes, b.changes), cmp.Compare(a.name, b.name))
	})
	var names []string
	for _, c := range near[:min(3, len(near))] {
		names = append(names, c.name)
	}
	return names
}

// changesBetween counts the letters to put in, take out, replace or swap with
// their neighbour to turn a into b.
//
// Source: optimal string alignment, after F. J. Damerau, Communications of the
// ACM 7(3), 1964; memory.
func changesBetween(a, b string) int {
	from, to := []rune(a), []rune(b)
	before, row := make([]int, len(to)+1), make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	var beforeThat []int
	for i, c := range from {
		beforeThat, before, row = before, row, make([]int, len(to)+1)
		row[0] = i + 1
		for j, d := range to {
			replace := before[j]
			if c != d {
				replace++
			}
			row[j+1] = min(replace, before[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && c == to[j-1] && from[i-1] == d {
				row[j+1] = min(row[j+1], beforeThat[j-1]+1)
			}
		}
	}
	return row[len(to)]
}
