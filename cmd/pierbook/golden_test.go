package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// goldenFolder holds the sample's binder as it is meant to be. Go test with
// -update rewrites it: read the change before it is committed.
const goldenFolder = "../../testdata/binders/kiln-field-garden-room"

// TestSampleBinderIsAsItWas holds the figures and tables of the sample, and
// every word of its two pages, drawings by what they say they show.
func TestSampleBinderIsAsItWas(t *testing.T) {
	made := boundFiles(t, "")
	for _, table := range []string{piersFile, cutsFile, orderFile} {
		// The repository keeps one kind of line end, so that of RFC 4180 is looked at here.
		lines, ends := bytes.Count(made[table], []byte("\n")), bytes.Count(made[table], []byte("\r\n"))
		assert.Equal(t, lines, ends, "lines of %s that end with carriage return and line feed", table)
		golden(t, table, bytes.ReplaceAll(made[table], []byte("\r\n"), []byte("\n")))
	}
	golden(t, figuresFile, made[figuresFile])
	golden(t, "binder.txt", wordsOf(t, made[binderFile]))
	golden(t, "client.txt", wordsOf(t, made[clientFile]))
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join(goldenFolder, name)
	if *update {
		require.NoError(t, os.MkdirAll(goldenFolder, 0o755))
		require.NoError(t, os.WriteFile(path, got, 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	line, wanted, found, same := firstDifference(string(want), string(got))
	assert.Truef(t, same, "%s:%d differs:\nwant %s\ngot  %s\ngo test -update rewrites it", name, line, wanted, found)
}

// firstDifference finds the first line in which two texts differ: the whole of
// them is too long to be read in a message.
func firstDifference(want, got string) (line int, wanted, found string, same bool) {
	if want == got {
		return 0, "", "", true
	}
	a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range max(len(a), len(b)) {
		switch {
		case i >= len(a):
			return i + 1, "(end)", b[i], false
		case i >= len(b):
			return i + 1, a[i], "(end)", false
		case a[i] != b[i]:
			return i + 1, a[i], b[i], false
		}
	}
	return 0, "", "", false
}

// ownLine are the elements that begin a line of their own in a text, silent
// those whose content is not read.
var (
	ownLine = []string{"article", "section", "header", "footer", "nav", "figure", "figcaption", "div", "p", "ul", "ol", "li", "dl", "dt", "dd",
		"table", "caption", "tr", "h1", "h2", "h3", "h4", "h5", "hr", "br", "form", "fieldset", "legend", "blockquote", "title", "desc", "details", "summary"}
	silent = []string{"style", "script", "text", "head"}
)

// wordsOf returns the words of a page as a reader without pictures gets them:
// a line for each block, cells parted by bars, a title and a description for
// each drawing. It also shows that the page is well-formed XML.
func wordsOf(t *testing.T, page []byte) []byte {
	t.Helper()
	decoder := xml.NewDecoder(bytes.NewReader(page))
	decoder.Entity = xml.HTMLEntity
	var text, line strings.Builder
	end := func() {
		if words := strings.Join(strings.Fields(line.String()), " "); words != "" {
			text.WriteString(words + "\n")
		}
		line.Reset()
	}
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			if slices.Contains(silent, token.Name.Local) {
				require.NoError(t, decoder.Skip())
			} else if slices.Contains(ownLine, token.Name.Local) {
				end()
			}
		case xml.EndElement:
			switch {
			case slices.Contains(ownLine, token.Name.Local):
				end()
			case token.Name.Local == "td" || token.Name.Local == "th":
				line.WriteString(" |")
			}
		case xml.CharData:
			line.Write(token)
		}
	}
	end()
	return []byte(text.String())
}
