package content

import (
	"fmt"
	"strings"

	"pierbook/calc/fault"
)

// braceEnd returns the index of the brace that closes the one at the start of
// s, or -1. A key never runs over the end of its line.
func braceEnd(s string) int {
	end := strings.IndexAny(s[1:], "}\n")
	if end < 0 || s[1+end] != '}' {
		return -1
	}
	return 1 + end
}

// hole records what the text in a pair of braces stands for.
func (r *recorder) hole(inside string, at fault.Place) {
	key, ask, asks := strings.Cut(inside, ":")
	page, isSheet := strings.CutPrefix(key, "sheet.")
	switch {
	case isCondition(inside):
		r.wrong(at, fmt.Sprintf("{%s} stands in the middle of a text", inside),
			"put it at the very start of a paragraph, list item, heading, table row or block line")
	case !keyShape.MatchString(key), asks && ask != "name":
		r.wrong(at, fmt.Sprintf("{%s} is not the key of a figure", inside),
			`write a key such as {floor.height} or {floor.height:name}, or \{ for a brace`)
	case isSheet:
		r.add(sheetLink{page: page, at: at})
	case asks:
		r.add(figureName{key: key, at: at})
	default:
		r.add(figureText{key: key, at: at})
	}
}

// plain records a piece of a block's body: escaped text with keys in it. A
// backslash before a brace, a bar or a backslash makes it an ordinary letter.
func (r *recorder) plain(s span) {
	text := s.text
	from := 0
	for i := 0; i < len(text); i++ {
		switch {
		case text[i] == '\\' && i+1 < len(text) && strings.IndexByte(`{}|\`, text[i+1]) >= 0:
			r.escaped(text[from:i])
			from = i + 1
			i++
		case text[i] == '{':
			r.escaped(text[from:i])
			end := braceEnd(text[i:])
			at := s.place(i, end+1)
			if end < 0 {
				r.wrong(s.place(i, 1), "a brace is not closed", `write } after the key, or \{ for a brace`)
				return
			}
			r.hole(text[i+1:i+end], at)
			i += end
			from = i + 1
		}
	}
	r.escaped(text[from:])
}

// span is a part of one line of a file, with its place.
type span struct {
	text   string
	file   string
	line   int    // from 1
	column int    // of the first byte, in characters from 1
	whole  string // the whole line
}

// place points at length bytes of the span from offset on.
func (s span) place(offset, length int) fault.Place {
	before := len([]rune(s.text[:min(offset, len(s.text))]))
	end := min(len(s.text), offset+max(length, 1))
	marked := len([]rune(s.text[min(offset, end):end]))
	return fault.Place{File: s.file, Line: s.line, Column: s.column + before, Text: s.whole, Length: max(1, marked)}
}

// all points at the whole span.
func (s span) all() fault.Place { return s.place(0, len(s.text)) }

// from returns the span from the byte offset on, without blanks around it.
func (s span) part(from, to int) span {
	inner := s.text[from:to]
	lead := len(inner) - len(strings.TrimLeft(inner, " \t"))
	cut := s
	cut.column = s.column + len([]rune(s.text[:from+lead]))
	cut.text = strings.TrimSpace(inner)
	return cut
}

// split cuts the span at every separator that is neither escaped nor inside
// braces; at most so many parts, the last holding the rest.
func (s span) split(separator byte, most int) []span {
	var parts []span
	from, depth := 0, 0
	for i := 0; i < len(s.text) && len(parts)+1 < most; i++ {
		switch c := s.text[i]; {
		case c == '\\':
			i++
		case c == '{':
			depth++
		case c == '}':
			depth--
		case c == separator && depth <= 0:
			parts = append(parts, s.part(from, i))
			from = i + 1
		}
	}
	return append(parts, s.part(from, len(s.text)))
}

// condition takes a leading {when …} off the span.
func (s span) condition(r *recorder) (span, condition) {
	if !strings.HasPrefix(s.text, "{when") && !strings.HasPrefix(s.text, "{unless") {
		return s, condition{}
	}
	end := braceEnd(s.text)
	if end < 0 || !isCondition(s.text[1:end]) {
		return s, condition{}
	}
	c, good := readCondition(s.text[1:end], s.place(0, end+1))
	if !good {
		r.wrong(c.at, fmt.Sprintf("{%s} is not a condition", s.text[1:end]), "write {when KEY}, {unless KEY} or {when KEY is WORD}")
	}
	return s.part(end+1, len(s.text)), c
}
