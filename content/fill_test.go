package content

import (
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"html/template"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

var update = flag.Bool("update", false, "write what the archives in testdata/pages should hold")

// hostile is a job's text that tries to be more than text.
const hostile = `</script><b>{floor.height}</b> *x* | "q" & [a](b)`

// testFigures hold one figure of each sort. The numbers are invented.
func testFigures() *figure.Registry {
	var r figure.Registry
	r.Add(
		figure.Figure{Key: "floor.height", Means: "height of the floor", Value: 22*measure.Inch + measure.Inch/4, Origin: figure.Computed},
		figure.Figure{Key: "stone.least", Means: "least stone", Value: 6 * measure.Inch, Origin: figure.Assumed},
		figure.Figure{Key: "soil.bearing", Means: "bearing pressure", Value: 1500 * measure.PoundPerSquareFt, Origin: figure.Assumed, Memory: true},
		figure.Figure{Key: "pier.A1.dig", Means: "depth of the hole at A1"},
		figure.Figure{Key: "job.name", Means: "name of the job", Value: measure.Word(hostile), Origin: figure.Given},
		figure.Figure{Key: "joist.sit", Means: "how joists sit", Value: measure.Word("on_beams"), Origin: figure.Given},
		figure.Figure{Key: "has.rock", Means: "rock was found", Value: measure.Count(1)},
		figure.Figure{Key: "has.water", Means: "water was found", Value: measure.Count(0)},
		figure.Figure{Key: "has.septic", Means: "a septic field", Value: measure.Word("no")},
		figure.Figure{Key: "asked.permit.answer", Means: "answer", Value: measure.Word("none wanted"), Origin: figure.Given},
	)
	parcels := figure.Set{Name: "parcels", Key: "parcel", Fields: []figure.Field{
		{Key: "row", Means: "row of %"}, {Key: "long", Means: "length of %"}, {Key: "what", Means: "what % is"}, {Key: "heavy", Means: "whether % is heavy"},
	}}
	parcels.Row("1", "P1", measure.Word("X"), 22*measure.Inch, measure.Word(hostile), measure.Word("no"))
	parcels.Row("2", "P2", measure.Word("X"), 23*measure.Inch, figure.Said{Quantity: measure.Word("known"), Memory: true}, measure.Word("yes"))
	parcels.Row("3", "P3", measure.Word("Y"), nil, figure.Nothing, measure.Word("no"))
	parcels.Row("4", "P4", measure.Word("Y"), nil, figure.Nothing, measure.Word("no"))
	r.AddSets(parcels, figure.Set{Name: "nothing", Key: "none", Fields: []figure.Field{{Key: "long", Means: "length of %"}}})
	return &r
}

var testStyle = measure.Style{System: measure.Imperial, Fraction: measure.Sixteenth}

// testBlocks make plain text of what they are asked for.
func testBlocks() Blocks {
	told := func(c Call) template.HTML {
		return template.HTML(fmt.Sprintf("<p>%s %s %s [%s] {%s}</p>", c.Block, c.Argument, c.Number, c.Caption, template.HTMLEscapeString(c.Words)))
	}
	return Blocks{
		"drawing": {Names: []string{"pier", "plan"}, Make: told},
		"table": {Names: []string{"posts", "empty"}, Make: func(c Call) template.HTML {
			if c.Argument == "empty" {
				return ""
			}
			return told(c)
		}},
	}
}

// readArchive reads the pages of an archive with the data in testdata. Pages
// that the binding order wants and a test does not need are no faults here.
func readArchive(t *testing.T, files []txtar.File) (*Book, fault.List) {
	t.Helper()
	layers := []Layer{{Pages: fstest.MapFS{}, Data: os.DirFS("testdata"), Folder: "pages"}}
	shop := fstest.MapFS{}
	for _, f := range files {
		if name, own := strings.CutPrefix(f.Name, "shop/"); own {
			shop[name] = &fstest.MapFile{Data: f.Data}
		} else if strings.HasSuffix(f.Name, ".md") {
			layers[0].Pages.(fstest.MapFS)[f.Name] = &fstest.MapFile{Data: f.Data}
		}
	}
	if len(shop) > 0 {
		layers = append(layers, Layer{Pages: shop, Folder: "our-pages"})
	}
	book, all := Read(layers...)
	var faults fault.List
	for _, f := range all.Sorted() {
		if f.At.Known() || !strings.HasPrefix(f.Wrong, "there is no page") {
			faults.Add(f)
		}
	}
	return book, faults
}

// TestPages reads, fills and compares every archive in testdata/pages: its
// pages, then what they become, or what is wrong with them.
func TestPages(t *testing.T) {
	archives, err := filepath.Glob("testdata/pages/*.txt")
	require.NoError(t, err)
	require.NotEmpty(t, archives)
	for _, file := range archives {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			archive, err := txtar.ParseFile(file)
			require.NoError(t, err)
			book, faults := readArchive(t, archive.Files)
			sheets, more := book.Bind(testFigures(), testStyle, testBlocks())
			faults.Join(more)
			got := shown(sheets, faults)
			last := len(archive.Files) - 1
			require.Equal(t, "want", archive.Files[last].Name)
			if *update {
				archive.Files[last].Data = []byte(got)
				require.NoError(t, os.WriteFile(file, txtar.Format(archive), 0o644))
			}
			assert.Equal(t, string(archive.Files[last].Data), got)
			for _, s := range sheets {
				for _, leaf := range s.Leaves {
					checkXML(t, string(leaf.HTML))
				}
			}
		})
	}
}

// shown prints sheets, or the faults when there are some.
func shown(sheets []Sheet, faults fault.List) string {
	var b strings.Builder
	if !faults.Empty() {
		faults.Print(&b)
		return b.String()
	}
	for _, s := range sheets {
		fmt.Fprintf(&b, "=== %d %s: %s (%s)\n", s.Number, s.Name, s.Title, s.Kind)
		for _, fact := range []struct {
			name string
			html template.HTML
		}{{"people", s.People}, {"time", s.Time}, {"tools", s.Tools}, {"overnight", s.Overnight}} {
			if fact.html != "" {
				fmt.Fprintf(&b, "%s: %s\n", fact.name, fact.html)
			}
		}
		for _, r := range s.Needs {
			fmt.Fprintf(&b, "needs %q %d %s\n", r.Page, r.Number, r.Text)
		}
		for _, r := range s.Feeds {
			fmt.Fprintf(&b, "feeds %q %d %s\n", r.Page, r.Number, r.Text)
		}
		for i, leaf := range s.Leaves {
			fmt.Fprintf(&b, "--- leaf %d back %t assumed %t memory %t\n%s", i+1, leaf.Back, leaf.Assumed, leaf.Memory, leaf.HTML)
			if !strings.HasSuffix(string(leaf.HTML), "\n") {
				b.WriteByte('\n')
			}
		}
	}
	return b.String()
}

// checkXML wants well-formed XML.
func checkXML(t *testing.T, markup string) {
	t.Helper()
	decoder := xml.NewDecoder(strings.NewReader("<leaf>" + markup + "</leaf>"))
	for {
		_, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if !assert.NoError(t, err, markup) {
			return
		}
	}
}
