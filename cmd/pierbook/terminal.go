package main

import (
	"io"

	"pierbook/calc/bidi"
)

// terminal passes text on as [bidi.Shown] makes it: the name of a job or of a
// file may hold sequences that repaint a terminal, or turn the direction of
// writing.
type terminal struct{ to io.Writer }

func (t terminal) Write(text []byte) (int, error) {
	if _, err := io.WriteString(t.to, bidi.Shown(string(text))); err != nil {
		return 0, err
	}
	return len(text), nil
}
