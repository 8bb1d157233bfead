package content

import (
	"fmt"
	"strings"
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

// key records what the text in a pair of braces stands for.
func (r *recorder) key(inside string, at span) {
	key, ask, asks := strings.Cut(inside, ":")
	page, isSheet := strings.CutPrefix(key, "sheet.")
	switch {
	case isCondition(inside):
		r.wrong(at, fmt.Sprintf("{%s} stands in the middle of a text", inside),
			"put it at the very start of a paragraph, list item, heading, table row or block line")
	case !isKey(key), asks && ask != "name":
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
	text := s.text()
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
			at := s.sub(i, end+1)
			if end < 0 {
				r.wrong(s.sub(i, 1), "a brace is not closed", `write } after the key, or \{ for a brace`)
				return
			}
			r.key(text[i+1:i+end], at)
			i += end
			from = i + 1
		}
	}
	r.escaped(text[from:])
}
