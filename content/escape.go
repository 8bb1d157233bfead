package content

import "unicode/utf8"

// AppendAttribute appends s for use between the quotes of an attribute, with
// the five signs of markup written as references.
func AppendAttribute(out []byte, s string) []byte {
	from := 0
	for i := range len(s) {
		var reference string
		switch s[i] {
		case '&':
			reference = "&amp;"
		case '<':
			reference = "&lt;"
		case '>':
			reference = "&gt;"
		case '"':
			reference = "&#34;"
		case '\'':
			reference = "&#39;"
		case 0:
			reference = "\ufffd"
		default:
			continue
		}
		out = append(append(out, s[from:i]...), reference...)
		from = i + 1
	}
	return append(out, s[from:]...)
}

// A run of letters longer than longWord may be broken after each breakAfter of
// them: in a table it would else push the whole print to a smaller scale, since
// a browser shrinks all pages when anything sticks out of one.
const (
	longWord   = 28
	breakAfter = 14
)

// AppendText appends s as text of a page, escaped.
func AppendText(out []byte, s string) []byte {
	run, start := 0, 0
	for i, c := range s {
		if c == ' ' || c == '\n' || c == '\t' {
			out = appendRun(out, s[start:i], run)
			out = append(out, byte(c))
			run, start = 0, i+1
			continue
		}
		run++
	}
	return appendRun(out, s[start:], run)
}

func appendRun(out []byte, s string, letters int) []byte {
	if letters <= longWord {
		return AppendAttribute(out, s)
	}
	for s != "" {
		end := 0
		for range breakAfter {
			_, size := utf8.DecodeRuneInString(s[end:])
			end += size
		}
		out = AppendAttribute(out, s[:end])
		if s = s[end:]; s != "" {
			out = append(out, "<wbr/>"...)
		}
	}
	return out
}
