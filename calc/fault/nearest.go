package fault

import (
	"strings"
	"unicode/utf8"
)

// Nearest returns the choice that name was probably meant to be: the first of
// those with the fewest letters put in, left out, changed or swapped with their
// neighbour, when that is at most a third of the letters. It returns "" when
// none is near. Before that it looks for a choice that is written in part: by its
// initials (SPF for spruce_pine_fir), its beginning (douglas fir for
// douglas_fir_larch) or its number (2 for No.2), when one choice alone fits.
func Nearest(name string, choices []string) string {
	best, fewest := "", 0
	if utf8.RuneCountInString(name) > 64 {
		return ""
	}
	if short := meantBy(name, choices); short != "" {
		return short
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

// meantBy returns the one choice that the name abbreviates, or "".
func meantBy(name string, choices []string) string {
	name = plainWords(name)
	if name == "" {
		return ""
	}
	for _, fits := range []func(choice string) bool{
		func(choice string) bool { return choice == name },
		func(choice string) bool {
			return len(name) > 1 && initials(choice) == strings.ReplaceAll(name, "_", "")
		},
		func(choice string) bool { return strings.HasPrefix(choice, name+"_") },
		func(choice string) bool { return digits(name) == name && digits(choice) == name },
	} {
		found := ""
		for _, choice := range choices {
			if !fits(plainWords(choice)) {
				continue
			}
			if found != "" {
				found = ""
				break
			}
			found = choice
		}
		if found != "" {
			return found
		}
	}
	return ""
}

// plainWords writes a name in small letters, with one line between its words.
func plainWords(name string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" -_/#", r) }), "_")
}

func initials(words string) string {
	first := ""
	for word := range strings.SplitSeq(words, "_") {
		first += word[:1]
	}
	return first
}

func digits(name string) string {
	return strings.Map(func(r rune) rune {
		if r < '0' || r > '9' {
			return -1
		}
		return r
	}, name)
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
