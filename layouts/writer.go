package layouts

import "pierbook/content"

// writer writes markup made here and text from anywhere, the text escaped.
type writer struct{ out []byte }

func (m *writer) markup(parts ...string) {
	for _, part := range parts {
		m.out = append(m.out, part...)
	}
}

func (m *writer) text(s string)      { m.out = content.AppendText(m.out, s) }
func (m *writer) attribute(s string) { m.out = content.AppendAttribute(m.out, s) }
