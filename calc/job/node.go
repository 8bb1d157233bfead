package job

import (
	"strings"
	"unicode/utf8"

	"pierbook/calc/fault"
	"pierbook/calc/figure"
)

// shape says what stands at a place of the file.
type shape int

const (
	scalarShape shape = iota
	listShape
	tableShape
)

func (s shape) String() string {
	return [...]string{"a single value", "a list", "a map of keys"}[s]
}

// node is a piece of a job file with its place: a value, a list or a table of
// keys. It knows nothing of the language that the file is written in.
type node struct {
	shape  shape
	text   string // of a scalar, as the reader of the file understands it
	quoted bool
	items  []*node
	pairs  []pair
	at     fault.Place
	origin figure.Origin // Given, or Shop for what another file laid under the job
}

// pair is one key of a table with its value, in the order of the file.
type pair struct {
	key   string
	at    fault.Place // of the key
	value *node
}

// get returns the value of a key, or nil.
func (n *node) get(key string) *node {
	if n == nil {
		return nil
	}
	for _, p := range n.pairs {
		if p.key == key {
			return p.value
		}
	}
	return nil
}

// source is one file as text.
type source struct {
	name   string
	lines  []string
	hidden bool // no line of it is shown
}

// newSource splits a text at the line breaks that the reader of the file counts.
func newSource(name, text string) *source {
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n").Replace(strings.TrimPrefix(text, "\ufeff"))
	return &source{name: name, lines: strings.Split(text, "\n")}
}

// place returns the place of length characters, kept inside the file.
func (s *source) place(line, column, length int) fault.Place {
	line = min(max(line, 1), len(s.lines))
	text := s.lines[line-1]
	room := utf8.RuneCountInString(text)
	column = min(max(column, 1), room+1)
	if s.hidden {
		text = ""
	}
	return fault.Place{File: s.name, Line: line, Column: column, Text: text, Length: max(1, min(length, room-column+1))}
}

// start returns the place of the file as a whole.
func (s *source) start() fault.Place { return fault.Place{File: s.name} }

// after returns what stands on a line from a column on.
func (s *source) after(line, column int) string {
	if line < 1 || line > len(s.lines) {
		return ""
	}
	for at := range s.lines[line-1] {
		if column--; column == 0 {
			return s.lines[line-1][at:]
		}
	}
	return ""
}

// String returns the value in one line, as a file would have it.
func (n *node) String() string {
	var parts []string
	switch n.shape {
	case listShape:
		for _, item := range n.items {
			parts = append(parts, item.String())
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case tableShape:
		for _, p := range n.pairs {
			parts = append(parts, p.key+": "+p.value.String())
		}
		return "{" + strings.Join(parts, ", ") + "}"
	}
	return strings.Join(strings.Fields(n.text), " ")
}
