package content

import (
	"strings"
	"unicode/utf8"

	"pierbook/calc/fault"
)

// span is a part of a page's source. It knows where it stands, which is worked
// out only when a fault has to tell it.
type span struct {
	page     *page
	from, to int
}

func (s span) text() string { return s.page.source[s.from:s.to] }
func (s span) empty() bool  { return s.from == s.to }

// sub returns length bytes of the span from offset on, as far as it goes.
func (s span) sub(offset, length int) span {
	from := min(s.from+offset, s.to)
	return span{s.page, from, min(from+length, s.to)}
}

// place says where the span stands.
func (s span) place() fault.Place {
	source := s.page.source
	start := strings.LastIndexByte(source[:s.from], '\n') + 1
	line, _, _ := strings.Cut(source[start:], "\n")
	marked, _, _ := strings.Cut(s.text(), "\n")
	return fault.Place{
		File: s.page.file, Line: strings.Count(source[:s.from], "\n") + 1, Column: utf8.RuneCountInString(source[start:s.from]) + 1,
		Text: line, Length: max(1, utf8.RuneCountInString(marked)),
	}
}

// line returns the whole line that the span begins on.
func (s span) line() span {
	start := strings.LastIndexByte(s.page.source[:s.from], '\n') + 1
	end := strings.IndexByte(s.page.source[start:], '\n')
	if end < 0 {
		return span{s.page, start, len(s.page.source)}
	}
	return span{s.page, start, start + end}
}

// trimmed returns the span without blanks around it.
func (s span) trimmed() span {
	for s.from < s.to && isBlank(s.page.source[s.from]) {
		s.from++
	}
	for s.from < s.to && isBlank(s.page.source[s.to-1]) {
		s.to--
	}
	return s
}

func isBlank(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }

// word splits a line into its first word and the rest.
func (s span) word() (word, rest span) {
	end := strings.IndexAny(s.text(), " \t")
	if end < 0 {
		end = s.to - s.from
	}
	return s.sub(0, end), s.sub(end, s.to).trimmed()
}

// split cuts the span at every separator that is neither escaped nor inside
// braces; at most so many parts, the last holding the rest.
func (s span) split(separator byte, most int) []span {
	parts := make([]span, 0, min(most, 8))
	from, depth, text := 0, 0, s.text()
	for i := 0; i < len(text) && len(parts)+1 < most; i++ {
		switch c := text[i]; {
		case c == '\\':
			i++
		case c == '{':
			depth++
		case c == '}':
			depth--
		case c == separator && depth <= 0:
			parts = append(parts, s.sub(from, i-from).trimmed())
			from = i + 1
		}
	}
	return append(parts, s.sub(from, len(text)).trimmed())
}

// condition takes a leading {when …} off the span.
func (s span) condition(r *recorder) (span, condition) {
	text := s.text()
	if !strings.HasPrefix(text, "{when") && !strings.HasPrefix(text, "{unless") {
		return s, condition{}
	}
	end := braceEnd(text)
	if end < 0 || !isCondition(text[1:end]) {
		return s, condition{}
	}
	return s.sub(end+1, len(text)).trimmed(), r.condition(text[1:end], s.sub(0, end+1))
}

// bare returns the span's text without what stands in braces.
func (s span) bare() string {
	var bare strings.Builder
	depth, text := 0, s.text()
	for i := range len(text) {
		switch c := text[i]; {
		case c == '{':
			depth++
		case c == '}':
			depth--
		case depth == 0:
			bare.WriteByte(c)
		}
	}
	return strings.TrimSpace(bare.String())
}
