package content

import (
	"bytes"
	"html/template"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/renderer/html"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// TestEmbeddedPagesAreThoseOnDisk finds a page that go:embed left out because
// of its name, and a name that would not do as an address.
func TestEmbeddedPagesAreThoseOnDisk(t *testing.T) {
	var embedded []string
	require.NoError(t, fs.WalkDir(builtIn, "pages", func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			embedded = append(embedded, path)
		}
		return err
	}))
	onDisk, err := filepath.Glob("pages/*")
	require.NoError(t, err)
	hidden, err := filepath.Glob("pages/.*")
	require.NoError(t, err)
	assert.Equal(t, append(onDisk, hidden...), embedded)
	for _, file := range onDisk {
		assert.Regexp(t, `^pages/[a-z0-9]+(-[a-z0-9]+)*\.md$`, filepath.ToSlash(file))
	}
}

// TestEveryBuiltInPageIsBoundOnce holds the binding order against the folder.
func TestEveryBuiltInPageIsBoundOnce(t *testing.T) {
	files, err := filepath.Glob("pages/*.md")
	require.NoError(t, err)
	var names []string
	for _, file := range files {
		names = append(names, strings.TrimSuffix(filepath.Base(file), ".md"))
	}
	bound := append(slices.Clone(binding), clientBinding...)
	slices.Sort(bound)
	assert.Equal(t, names, slices.Compact(bound))
	for i, name := range binding {
		assert.NotContains(t, binding[:i], name)
	}
}

// TestBuiltInPagesAreInOrder reads all that the program brings.
func TestBuiltInPagesAreInOrder(t *testing.T) {
	book, faults := Read(BuiltIn())
	require.NoError(t, faults.Err())
	for _, p := range book.pages {
		assert.NotContains(t, p.source, "[^", "%s: footnotes are not read", p.file)
		assert.NotRegexp(t, `(?m)^\S.*\|\s*:?---`, unfenced(p.source), "%s: a table whose rule is not one", p.file)
	}
	for _, c := range book.cautions {
		assert.Contains(t, signalWords, c.word)
	}
}

// unfenced returns a page's text without tables that are in order.
func unfenced(source string) string {
	return regexp.MustCompile(`(?m)^\|.*$`).ReplaceAllString(source, "")
}

// TestManyJobsAtOnce fills one book from many goroutines; each gets its own
// figures and the same words.
func TestManyJobsAtOnce(t *testing.T) {
	book := smallBook(t)
	first := bind(t, book, 1)
	var wait sync.WaitGroup
	results := make([]string, 32)
	for i := range results {
		wait.Go(func() { results[i] = bind(t, book, i) })
	}
	wait.Wait()
	for i, got := range results {
		assert.Equal(t, bind(t, book, i), got)
	}
	assert.Equal(t, first, results[1])
	assert.NotEqual(t, first, results[2])
}

func smallBook(t testing.TB) *Book {
	book, _ := Read(Layer{Pages: fstest.MapFS{"dig.md": {Data: []byte("```sheet\ntitle Dig\nkind step\n```\n\nDig {depth}.\n\n- {when depth} deep\n")}}, Data: os.DirFS("testdata"), Folder: "pages"})
	require.Len(t, book.pages, 1)
	return book
}

func bind(t testing.TB, book *Book, depth int) string {
	var r figure.Registry
	r.Add(figure.Figure{Key: "depth", Value: measure.Length(depth) * measure.Inch})
	sheets, faults := book.Bind(&r, testStyle, nil)
	if err := faults.Err(); err != nil || len(sheets) != 1 {
		t.Errorf("%d sheets, %v", len(sheets), err)
		return ""
	}
	return string(sheets[0].Leaves[0].HTML)
}

// TestWordsAreThoseOfGoldmark compares a page without holes and blocks, stripped
// of its tags, with what the Markdown library makes of it alone.
func TestWordsAreThoseOfGoldmark(t *testing.T) {
	const page = "## One *two*\n\nText with [a link](#dig), `code`, 5' 6 1/2\" & more.\n\n- a\n- b\n  1. c\n  2. d\n\n| h | i |\n|---|--:|\n| 1 | 2 |\n\n> quoted\n\nterm\n: meaning\n"
	book, faults := Read(Layer{Pages: fstest.MapFS{"dig.md": {Data: []byte("```sheet\ntitle Dig\nkind back\n```\n\n" + page)}}, Data: os.DirFS("testdata"), Folder: "pages"})
	require.Len(t, book.pages, 1, faults.Sorted())
	sheets, _ := book.Bind(&figure.Registry{}, testStyle, nil)
	var alone bytes.Buffer
	plain := goldmark.New(goldmark.WithExtensions(extension.Table, extension.DefinitionList), goldmark.WithRendererOptions(html.WithXHTML()))
	require.NoError(t, plain.Convert([]byte(page), &alone))
	assert.Equal(t, stripped(alone.String()), stripped(string(sheets[0].Leaves[0].HTML)))
}

func stripped(markup string) string {
	return strings.Join(strings.Fields(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(markup, " ")), " ")
}

// TestDataFileFaults holds what the reader of cautions and questions says.
func TestDataFileFaults(t *testing.T) {
	const cautions = "  lost\nid a\nid b\nword LOUD\nread never\nstage s\ntext t {open\nsource s\n\nid a\n\nid c\nwrod DANGER\nwhen x y\nstage\n"
	const questions = "id q\nask what\nwhom who\nwhy because\ndefault usual\n\nid q\nask what\nwhom who\nwhy because\n"
	_, faults := Read(Layer{Data: fstest.MapFS{"cautions.txt": {Data: []byte(cautions)}, "questions.txt": {Data: []byte(questions)}}, Folder: "content/pages"})
	var got []string
	for _, f := range faults.Sorted() {
		if f.At.Known() {
			got = append(got, f.At.String()+" "+f.Wrong)
		}
	}
	assert.Equal(t, []string{
		`content/cautions.txt:1:3 the line goes on with nothing`,
		`content/cautions.txt:3:1 "id" stands twice in one record`,
		`content/cautions.txt:4:6 "LOUD" is not a word`,
		`content/cautions.txt:5:6 "never" is not a read`,
		`content/cautions.txt:7:8 a brace is not closed`,
		`content/cautions.txt:10:1 the record has no "read"`,
		`content/cautions.txt:10:1 the record has no "source"`,
		`content/cautions.txt:10:1 the record has no "stage"`,
		`content/cautions.txt:10:1 the record has no "text"`,
		`content/cautions.txt:10:1 the record has no "word"`,
		`content/cautions.txt:12:1 the record has no "read"`,
		`content/cautions.txt:12:1 the record has no "source"`,
		`content/cautions.txt:12:1 the record has no "stage"`,
		`content/cautions.txt:12:1 the record has no "text"`,
		`content/cautions.txt:12:1 the record has no "word"`,
		`content/cautions.txt:13:1 "wrod" is not a word of this file`,
		`content/cautions.txt:15:1 "stage" has nothing after it`,
		`content/questions.txt:1:1 the record has no "read"`,
		`content/questions.txt:1:1 the record has no "source"`,
		`content/questions.txt:7:4 the question "q" stands here twice`,
	}, got)
}

// TestBrokenFiles holds what is said of files that are no pages.
func TestBrokenFiles(t *testing.T) {
	_, faults := Read(Layer{Pages: fstest.MapFS{
		"Dig it.md": {Data: []byte("x")}, "dig.md": {Data: []byte{0xff, 0xfe}}, "notes.txt": {Data: []byte("no page")},
	}, Data: fstest.MapFS{}, Folder: "shop"})
	text := faults.Err().Error()
	assert.Contains(t, text, `shop/Dig it.md: "Dig it" is not a name for a page`)
	assert.Contains(t, text, `shop/dig.md: the file is not UTF-8 text`)
	assert.Contains(t, text, `cautions.txt: the file cannot be read`)
	assert.NotContains(t, text, "notes")
}

// FuzzPage reads and fills any page: no panic, and what comes out is well-formed
// and holds nothing of a job's text as markup.
func FuzzPage(f *testing.F) {
	archives, err := filepath.Glob("testdata/pages/*.txt")
	require.NoError(f, err)
	for _, file := range archives {
		text, err := os.ReadFile(file)
		require.NoError(f, err)
		f.Add(string(text))
	}
	pages, err := filepath.Glob("pages/*.md")
	require.NoError(f, err)
	for _, file := range pages {
		text, err := os.ReadFile(file)
		require.NoError(f, err)
		_, body, _ := strings.Cut(strings.TrimPrefix(string(text), "```"), "```")
		f.Add(body)
	}
	f.Fuzz(func(t *testing.T, body string) {
		if strings.ContainsFunc(body, func(c rune) bool { return c < ' ' && c != '\n' && c != '\t' || c == '\ufffe' || c == '\uffff' }) {
			return // not in any XML
		}
		source := "```sheet\ntitle {job.name}\nkind step\n```\n" + body
		book, _ := Read(Layer{Pages: fstest.MapFS{"dig.md": {Data: []byte(source)}}, Data: os.DirFS("testdata"), Folder: "pages"})
		if len(book.pages) == 0 {
			return
		}
		sheets, _ := book.Bind(testFigures(), testStyle, testBlocks())
		for _, s := range sheets {
			for _, leaf := range s.Leaves {
				assert.NotContains(t, string(leaf.HTML), "</script>")
				assert.NotContains(t, string(leaf.HTML), "<script")
				checkXML(t, string(leaf.HTML))
			}
		}
	})
}

// anyFigures are figures for every key that the built-in pages ask for, so that
// the benchmarks do all the work of a job.
func anyFigures(t testing.TB) *figure.Registry {
	var r figure.Registry
	seen := map[string]bool{}
	key := regexp.MustCompile(`\{(?:when |unless )?([A-Za-z0-9_.-]+)`)
	files, err := filepath.Glob("pages/*.md")
	require.NoError(t, err)
	for _, file := range append(files, "cautions.txt", "questions.txt") {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		text = regexp.MustCompile(`(?m)^when +`).ReplaceAll(text, []byte("{"))
		for _, match := range key.FindAllSubmatch(text, -1) {
			if k := string(match[1]); !seen[k] && !strings.HasPrefix(k, "sheet.") {
				seen[k] = true
				r.Add(figure.Figure{Key: k, Means: k, Value: 123 * measure.Sixteenth, Origin: figure.Computed})
			}
		}
	}
	return &r
}

// anyBlocks know every block that the built-in pages ask for, and make next to
// nothing of it.
func anyBlocks(t testing.TB) Blocks {
	blocks := Blocks{}
	files, err := filepath.Glob("pages/*.md")
	require.NoError(t, err)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		for _, match := range regexp.MustCompile("(?m)^```(drawing|table|parts|form) +(.*?)(?: [0-9]+)?$").FindAllSubmatch(text, -1) {
			maker := blocks[string(match[1])]
			maker.Names = append(maker.Names, string(match[2]))
			maker.Make = func(Call) template.HTML { return "<p>made</p>" }
			blocks[string(match[1])] = maker
		}
	}
	return blocks
}

// BenchmarkGoldmarkAlone is the measure: the same pages through the Markdown
// library, with nothing filled in and no block made.
func BenchmarkGoldmarkAlone(b *testing.B) {
	files, err := filepath.Glob("pages/*.md")
	require.NoError(b, err)
	var sources [][]byte
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(b, err)
		sources = append(sources, text)
	}
	plain := goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList, extension.DefinitionList), goldmark.WithRendererOptions(html.WithXHTML()))
	b.ReportAllocs()
	for b.Loop() {
		for _, source := range sources {
			var out bytes.Buffer
			if err := plain.Convert(source, &out); err != nil {
				b.Fatal(err)
			}
		}
	}
}

// BenchmarkRead is done once in a run, however many jobs it makes.
func BenchmarkRead(b *testing.B) {
	layer := BuiltIn()
	b.ReportAllocs()
	for b.Loop() {
		Read(layer)
	}
}

// BenchmarkBind is done for each job.
func BenchmarkBind(b *testing.B) {
	book, _ := Read(BuiltIn())
	figures := anyFigures(b)
	blocks := anyBlocks(b)
	_, faults := book.Bind(figures, testStyle, blocks)
	require.NoError(b, faults.Err())
	b.ReportAllocs()
	for b.Loop() {
		book.Bind(figures, testStyle, blocks)
	}
}
