package content

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestTable holds a small table word by word.
func TestTable(t *testing.T) {
	table := Table{
		Size: Working,
		Head: []Column{{Text: "Pier"}, {Text: "Post", Unit: "in", Align: Right, Big: true}, {Text: "Cut", Align: Centre}, {Text: "Read"}},
		Rows: [][]Cell{{{Text: "A1", Kind: Head}, {Text: "5 < 6", Assumed: true}, {Kind: Tick}, {Kind: Blank, Text: `say "A1"`}}},
		Groups: []Group{{Name: "Line B", Rows: [][]Cell{
			{{Text: "B1", Kind: Head, Strong: true}, {Text: "7", Memory: true}, {}, {Text: strings.Repeat("x", 30)}},
		}}},
		Note: "Longest first.",
	}
	want := `<div class="scroll" role="region" tabindex="0" aria-label="table 7.2: Posts &amp; all"><table class="made working"><caption><b>Table 7.2</b> Posts &amp; <em>all</em></caption>
<thead><tr class="repeat" aria-hidden="true"><td colspan="4"><b>Table 7.2</b> Posts &amp; all</td></tr>
<tr><th scope="col">Pier</th><th scope="col" class="right cut">Post <span class="unit">in</span></th><th scope="col" class="centre">Cut</th><th scope="col">Read</th></tr></thead>
<tbody><tr><th scope="row">A1</th><td class="right cut">5 &lt; 6<sup class="mark" title="assumed, not given by the job">a</sup></td><td class="centre"><span class="tick" aria-hidden="true"></span></td><td><span class="blank" role="img" aria-label="blank: say &#34;A1&#34;"></span></td></tr>
</tbody>
<tbody class="kept"><tr class="group told"><th scope="rowgroup" colspan="4">Line B</th></tr>
<tr><th scope="row" class="strong">B1</th><td class="right cut">7<sup class="mark" title="from memory, unconfirmed">m</sup></td><td class="centre"></td><td>xxxxxxxxxxxxxx<wbr/>xxxxxxxxxxxxxx<wbr/>xx</td></tr>
</tbody>
</table></div>
<p class="note">Longest first.</p>
`
	assert.Equal(t, want, string(table.For(Call{Number: "7.2", Caption: "Posts &amp; <em>all</em>", Words: "Posts & all"})))
	assert.Empty(t, Table{Head: table.Head}.For(Call{}))
	assert.Panics(t, func() { Table{Head: table.Head, Rows: [][]Cell{texts("one")}}.For(Call{}) })
}

// texts are plain cells.
func texts(texts ...string) []Cell {
	cells := make([]Cell, len(texts))
	for i, text := range texts {
		cells[i].Text = text
	}
	return cells
}
