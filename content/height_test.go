package content

import (
	"html/template"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/figure"
)

// TestPageSaysHowHighItsDrawingIs reads the height after a drawing's name, and
// tells a maker on which side of a step's sheet it draws.
func TestPageSaysHowHighItsDrawingIs(t *testing.T) {
	page := "```sheet\ntitle Dig\nkind step\n```\n\n```drawing section A 66\n```\n\n```drawing plan\n```\n\n```back\n```\n\n```drawing plan 120\n```\n"
	book, _ := Read(Layer{Pages: fstest.MapFS{"dig.md": {Data: []byte(page)}}, Data: fstest.MapFS{}, Folder: "pages"})
	var calls []Call
	maker := Maker{Names: []string{"section A", "plan"}, Make: func(c Call) template.HTML {
		calls = append(calls, c)
		return "<p>made</p>"
	}}
	_, faults := book.Bind(&figure.Registry{}, testStyle, Blocks{"drawing": maker})
	require.NoError(t, faults.Err())
	require.Len(t, calls, 3)
	for i, want := range []struct {
		name        string
		height      int
		front, back bool
	}{{"section A", 66, true, false}, {"plan", 0, true, false}, {"plan", 120, false, true}} {
		assert.Equal(t, want.name, calls[i].Argument)
		assert.Equal(t, want.height, calls[i].Height, want.name)
		assert.Equal(t, want.front, calls[i].Front, want.name)
		assert.Equal(t, want.back, calls[i].Back, want.name)
	}
}
