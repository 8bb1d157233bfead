package content

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/figure"
)

// A shop's new question stands on the page that asks the rest; what a block
// names elsewhere, on a page before or after, does not stand there twice.
func TestTheRestOfTheQuestions(t *testing.T) {
	const three = "id one\nask First?\nwhom who\nwhy because\n\nid two\nask Second?\nwhom who\nwhy because\n\nid three\nask Third?\nwhom who\nwhy because\n"
	page := func(body string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte("```sheet\ntitle x\nkind back\n```\n\n" + body)}
	}
	base := Layer{Data: fstest.MapFS{"cautions.txt": {}, "questions.txt": {Data: []byte(three)}}, Folder: "pages",
		Pages: fstest.MapFS{"deferral.md": page("```questions rest\n```\n"), "ask.md": page("```question two\n```\n"), "glossary.md": page("```question three\n```\n")}}
	shop := Layer{Data: fstest.MapFS{"questions.txt": {Data: []byte("id own\nask Ours?\nwhom who\nwhy because\n")}}, Folder: "ours"}
	sheet := func(name string, layers ...Layer) string {
		book, _ := Read(layers...)
		sheets, faults := book.Bind(&figure.Registry{}, testStyle, nil)
		require.True(t, faults.Empty())
		for _, s := range sheets {
			if s.Name == name {
				return string(s.Leaves[0].HTML)
			}
		}
		return ""
	}
	rest := sheet("deferral", base, shop)
	asked := func(html string) []string {
		var list []string
		for _, word := range []string{"First?", "Second?", "Third?", "Ours?"} {
			if strings.Contains(html, word) {
				list = append(list, word)
			}
		}
		return list
	}
	assert.Equal(t, []string{"First?", "Ours?"}, asked(rest))
	assert.Equal(t, []string{"Second?"}, asked(sheet("ask", base, shop)))

	base.Pages.(fstest.MapFS)["deferral.md"] = page("```questions others\n```\n")
	_, faults := Read(base)
	var b strings.Builder
	faults.Print(&b)
	assert.Contains(t, b.String(), `the block "questions" takes no "others"`)
}
