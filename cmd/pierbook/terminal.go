package main

import (
	"io"
	"strings"
)

// terminal passes text on with the control characters made visible: the name of
// a job or of a file may hold sequences that repaint a terminal, or turn the
// direction of writing.
type terminal struct{ to io.Writer }

func (t terminal) Write(text []byte) (int, error) {
	if _, err := io.WriteString(t.to, strings.Map(plainRune, string(text))); err != nil {
		return 0, err
	}
	return len(text), nil
}

func plainRune(r rune) rune {
	switch {
	case r == '\n' || r == '\t':
		return r
	case r < ' ', 0x7f <= r && r < 0xa0, 0x202a <= r && r <= 0x202e, 0x2066 <= r && r <= 0x2069:
		return '\uFFFD'
	}
	return r
}
