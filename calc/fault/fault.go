// Package fault holds what a user can put right: where in which file, what is
// wrong with the text that stands there, and what would be right. Faults are
// collected, sorted by position and shown all at once.
package fault

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Place is a spot in a text file. Line and Column count from 1, columns in
// characters. The zero Place is no place.
type Place struct {
	File   string // as the user named it, or relative to the file that names it
	Line   int
	Column int
	Text   string // the whole line, for the excerpt
	Length int    // how many characters the offending text takes, at least 1 once known
}

// Known says whether p points anywhere.
func (p Place) Known() bool { return p.Line > 0 }

// String returns file:line:column, or the file alone.
func (p Place) String() string {
	if !p.Known() {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// Said returns the text that stands at the place itself, and after a name its
// value, without the rest of a line that holds more: one reading of many.
func (p Place) Said() string {
	line := []rune(p.Text)
	if !p.Known() || p.Column < 1 || p.Column > len(line) || !strings.Contains(p.Text, ",") {
		return strings.TrimSpace(p.Text)
	}
	end := min(len(line), p.Column-1+max(1, p.Length))
	if end < len(line) && line[end] == ':' {
		for end < len(line) && !strings.ContainsRune(",]}#", line[end]) {
			end++
		}
	}
	return strings.TrimSpace(string(line[p.Column-1 : end]))
}

// Fault is one thing a user can put right.
type Fault struct {
	At     Place
	Path   string // job path such as frame.joists.spacing; empty when the file itself is at fault
	Wrong  string // what is wrong, with the value quoted
	Remedy string // what would be right
}

// List is a collection of faults. The zero List is empty and ready for use.
type List struct{ faults []Fault }

// Add puts f on the list.
func (l *List) Add(f Fault) { l.faults = append(l.faults, f) }

// Join puts all faults of other on the list.
func (l *List) Join(other List) { l.faults = append(l.faults, other.faults...) }

// Empty says whether nothing is wrong.
func (l List) Empty() bool { return len(l.faults) == 0 }

// Len returns how many faults were put on the list.
func (l List) Len() int { return len(l.faults) }

// Sorted returns the faults by file, line, column and text, each once.
func (l List) Sorted() []Fault {
	sorted := slices.Clone(l.faults)
	slices.SortStableFunc(sorted, func(a, b Fault) int {
		return cmp.Or(
			cmp.Compare(a.At.File, b.At.File), cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column),
			cmp.Compare(a.Path, b.Path), cmp.Compare(a.Wrong, b.Wrong), cmp.Compare(a.Remedy, b.Remedy))
	})
	return slices.Compact(sorted)
}

// Err returns the list as an error, or nil when it is empty.
func (l List) Err() error {
	if l.Empty() {
		return nil
	}
	return Error{List: l}
}

// Error is a list of faults as a Go error.
type Error struct{ List List }

// Error returns all faults as [List.Print] shows them.
func (e Error) Error() string {
	var b strings.Builder
	e.List.Print(&b)
	return strings.TrimRight(b.String(), "\n")
}
