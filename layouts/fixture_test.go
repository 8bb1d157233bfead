package layouts

import (
	"bytes"
	"fmt"
	"html/template"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
	"pierbook/content"
)

// hostile is a text as only an attacker or a slip of the keyboard writes it.
const hostile = `Kiln </script><img src=x onerror=alert(1)> & "field" {floor.height} | *x* ` + "`"

// fixtureFigures are the figures that the pages in testdata ask for. The
// numbers are invented.
func fixtureFigures(jobName string) *figure.Registry {
	var r figure.Registry
	add := func(key string, value measure.Quantity, origin figure.Origin) {
		r.Add(figure.Figure{Key: key, Means: strings.ReplaceAll(key, ".", " "), Value: value, Origin: origin})
	}
	add("job.name", measure.Word(jobName), figure.Given)
	add("frame.length", 16*measure.Foot, figure.Given)
	add("frame.width", 12*measure.Foot, figure.Given)
	add("frame.piers", measure.Count(15), figure.Computed)
	add("floor.height", 22*measure.Inch+measure.Inch/4, figure.Computed)
	add("floor.governed_by", measure.Word("C1"), figure.Computed)
	add("post.shortest_cut", 3*measure.Inch, figure.Computed)
	add("post.longest_cut", 14*measure.Inch+3*measure.Sixteenth, figure.Computed)
	add("stone.order", measure.Volume(2.5)*measure.CubicYard, figure.Computed)
	add("order.weight", 4200*measure.Pound, figure.Computed)
	add("platform.floor_load", 50*measure.PoundPerSquareFt, figure.Assumed)
	add("stone.least", 6*measure.Inch, figure.Assumed)
	add("has.rock", measure.Word("no"), figure.Computed)
	add("crew.dig.hours", measure.Hours(6), figure.Assumed)
	add("hole.side", 20*measure.Inch, figure.Computed)
	add("spoil.loose", measure.Volume(1.7)*measure.CubicYard, figure.Computed)
	add("target.do", measure.Inch/2, figure.Assumed)
	add("target.accept", 1*measure.Inch, figure.Assumed)
	add("target.stop", 2*measure.Inch, figure.Assumed)
	r.Add(figure.Figure{Key: "pier.A1.dig", Means: "depth of the hole at A1"}) // not known yet: prints a blank
	return &r
}

func imperial() measure.Style {
	return measure.Style{System: measure.Imperial, Fraction: measure.Sixteenth}
}

// ruler is a drawing with a bar exactly 4 in long between the letters L and R,
// and a hatched box drawn as lines.
func ruler(content.Call) template.HTML {
	return `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="a bar four inches long" width="150mm" height="60mm" viewBox="0 0 150 60">` +
		`<path d="M20 30H121.6M20 26V34M121.6 26V34" fill="none" stroke="currentColor" stroke-width=".5"/>` +
		`<text x="20" y="22" font-size="5" text-anchor="start">LEFTEND</text><text x="121.6" y="22" font-size="5" text-anchor="start">RIGHTEND</text>` +
		`<path d="M20 40h20v12h-20zM24 40l-4 4M30 40l-10 10M36 40l-12 12M40 42l-10 10M40 48l-4 4" fill="none" stroke="currentColor" stroke-width=".25"/></svg>`
}

func fixtureBlocks(name string) content.Blocks {
	holes := content.Table{Size: content.Working, Head: []content.Column{{Text: "Pier"}, {Text: "Wanted", Unit: "in", Align: content.Right, Big: true}, {Text: "Least", Unit: "in", Align: content.Right}, {Text: "Most", Unit: "in", Align: content.Right}, {Text: "Dug"}, {Text: "Found"}}}
	posts := content.Table{Size: content.Working, Note: "Cut the longest first.", Head: []content.Column{{Text: "Pier"}, {Text: "Ground"}, {Text: "Printed", Unit: "in", Align: content.Right}, {Text: "Post", Unit: "in", Align: content.Right, Big: true}, {Text: "Cut", Align: content.Centre}}}
	levels := content.Table{Size: content.Fine, Head: []content.Column{{Text: "Spot"}, {Text: "Backsight", Align: content.Right}, {Text: "Foresight", Align: content.Right}, {Text: "Rise", Align: content.Right}, {Text: "Fall", Align: content.Right}, {Text: "Reduced level", Align: content.Right}, {Text: "Remark"}}}
	for _, line := range []string{"A", "B", "C"} {
		var holeRows, postRows [][]content.Cell
		for i := 1; i <= 5; i++ {
			pier := fmt.Sprintf("%s%d", line, i)
			holeRows = append(holeRows, []content.Cell{{Text: pier, Kind: content.Head}, {Text: fmt.Sprintf("%d 1/2", 4+i)}, {Text: "4"}, {Text: "20"}, {Kind: content.Blank, Text: "depth dug at " + pier}, {Kind: content.Blank, Text: "what was found at " + pier}})
			postRows = append(postRows, []content.Cell{{Text: pier, Kind: content.Head}, {Text: "estimated", Assumed: i == 2, Memory: i == 3}, {Text: "−12 3/16"}, {Text: fmt.Sprintf("%d 7/16", 3+i), Strong: i == 5}, {Kind: content.Tick}})
			levels.Rows = append(levels.Rows, texts(pier, "4′ 2 1/4″", "4′ 9″", "", "6 3/4″", "−6 3/4″", name))
		}
		holes.Groups = append(holes.Groups, content.Group{Name: "Line " + line, Rows: holeRows})
		posts.Groups = append(posts.Groups, content.Group{Name: "Line " + line, Rows: postRows})
	}
	for range 4 { // long enough to run over
		levels.Rows = append(levels.Rows, levels.Rows[:15]...)
	}
	tables := map[string]content.Table{"holes": holes, "posts": posts, "levels": levels}
	form := Form{Result: "post", Plus: "reading on the seat", Minus: "reading on the bench mark", Reads: FeetInches,
		Fraction: measure.Sixteenth, Least: 3 * measure.Inch, Most: 24 * measure.Inch, Points: []Point{{"A1", 12 * measure.Inch}, {"A2", -3 * measure.Inch}}}
	return content.Blocks{
		"drawing": {Names: []string{"pier"}, Make: ruler},
		"table":   {Names: []string{"holes", "posts", "levels"}, Make: func(c content.Call) template.HTML { return tables[c.Argument].For(c) }},
		"parts":   {Names: []string{"posts"}, Make: content.Table{Head: []content.Column{{Text: "Part"}, {Text: "Count", Align: content.Right}}, Rows: [][]content.Cell{texts("Post, 4×4", "15")}}.For},
		"form":    {Names: []string{"post"}, Make: form.For},
	}
}

// fixtureBinder binds the pages in testdata for a job of the name given.
func fixtureBinder(t testing.TB, name string) Binder {
	book, faults := content.Read(content.Layer{Pages: os.DirFS("testdata/pages"), Data: os.DirFS("testdata"), Folder: "testdata/pages"})
	for _, f := range faults.Sorted() {
		require.Contains(t, f.Wrong, "there is no page", f) // the fixture has a few of them only
	}
	sheets, faults := book.Bind(fixtureFigures(name), imperial(), fixtureBlocks(name))
	require.NoError(t, faults.Err())
	return Binder{
		Job:     Job{Name: name, Client: "M. Ellwood", Revision: "A", Issued: "2027-05-01", Progress: "surveyed", Address: name},
		Sheets:  sheets,
		Banners: []Banner{NotForConstruction("2 checks fail; see the calculation sheets."), DoNotDig("No utility ticket number is in the job file.")},
	}
}

func fixtureHTML(t testing.TB, name string) []byte {
	var b bytes.Buffer
	require.NoError(t, WriteBinder(&b, fixtureBinder(t, name)))
	return b.Bytes()
}

// texts are plain cells.
func texts(texts ...string) []content.Cell {
	cells := make([]content.Cell, len(texts))
	for i, text := range texts {
		cells[i].Text = text
	}
	return cells
}
