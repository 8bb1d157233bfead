package content

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"pierbook/calc/bidi"
	"pierbook/calc/fault"
)

// Book is all that the binder says, read and ready to be filled. It does not
// change, so that any number of jobs may be filled from it at once.
type Book struct {
	pages     []*page // in binding order, the client's own last
	cautions  []caution
	questions []question
	asked     map[string]bool // ids of the questions that a block of a page names
}

// pageName is the shape of a page's name: it becomes an id and an address.
var pageName = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// Read reads the layers, the built-in one first, and reports all that is wrong
// with their pages. A page that the binding order names and no layer has is a
// fault.
func Read(layers ...Layer) (*Book, fault.List) {
	book := &Book{}
	var faults fault.List
	for depth, layer := range layers {
		book.readData(layer, depth, &faults)
	}
	found := map[string]*page{}
	for depth, layer := range layers {
		readFolder(layer, depth, found, &faults)
	}
	for _, name := range boundNames(found) {
		p := found[name]
		if p == nil {
			faults.Add(fault.Fault{At: fault.Place{File: layers[0].Folder}, Wrong: fmt.Sprintf("there is no page %q", name), Remedy: "write " + name + ".md"})
			continue
		}
		book.pages = append(book.pages, p)
	}
	book.readPages(&faults)
	book.asked = map[string]bool{}
	for _, p := range book.pages {
		for _, id := range p.asks {
			book.asked[id] = true
		}
	}
	book.checkLinks(&faults)
	return book, faults
}

// boundNames returns the names of all pages in the order they are bound.
func boundNames(found map[string]*page) []string {
	var own []string
	for _, name := range keys(found) {
		if !slices.Contains(binding, name) && !slices.Contains(clientBinding, name) {
			own = append(own, name)
		}
	}
	after := slices.Index(binding, lastStep) + 1
	names := slices.Insert(slices.Clone(binding), after, own...)
	for _, name := range clientBinding {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// readData reads the cautions and the questions of a layer.
func (b *Book) readData(layer Layer, depth int, faults *fault.List) {
	if layer.Data == nil {
		return
	}
	for _, file := range []struct {
		name string
		read func(*recorder)
	}{{"cautions.txt", (*recorder).readCautions}, {"questions.txt", (*recorder).readQuestions}} {
		source, err := fs.ReadFile(layer.Data, file.name)
		if errors.Is(err, fs.ErrNotExist) && depth > 0 {
			continue
		}
		shown := path.Join(path.Dir(layer.Folder), file.name)
		if depth > 0 {
			shown = path.Join(layer.Folder, file.name)
		}
		if text, ok := readable(source, err, shown, faults); ok {
			p := &page{file: shown, source: text, layer: depth}
			file.read(&recorder{page: p, book: b, faults: faults})
		}
	}
}

// plainSigns reports control characters and signs that turn the direction of
// writing, the first of each line.
func plainSigns(text, file string, faults *fault.List) bool {
	clean := true
	for i, line := range strings.Split(text, "\n") {
		if at := strings.IndexFunc(line, bidi.Forbidden); at >= 0 {
			clean = false
			sign, _ := utf8.DecodeRuneInString(line[at:])
			faults.Add(fault.Fault{At: fault.Place{File: file, Line: i + 1, Column: utf8.RuneCountInString(line[:at]) + 1, Text: strings.TrimRight(line, "\r"), Length: 1},
				Wrong: fmt.Sprintf("the sign %U, which cannot be seen, stands here", sign), Remedy: "delete it; such signs come with copied text"})
		}
	}
	return clean
}

// mostInFolder bounds a folder of pages: the built-in one has a few dozen.
const mostInFolder = 1000

// readFolder reads the pages of a layer, as far as their text.
func readFolder(layer Layer, depth int, found map[string]*page, faults *fault.List) {
	if layer.Pages == nil {
		return
	}
	entries, err := fs.ReadDir(layer.Pages, ".")
	if err != nil {
		faults.Add(fault.Fault{At: fault.Place{File: layer.Folder}, Wrong: "the folder of pages cannot be read: " + reason(err), Remedy: "name a folder of .md files"})
	}
	if len(entries) > mostInFolder {
		faults.Add(fault.Fault{At: fault.Place{File: layer.Folder}, Wrong: fmt.Sprintf("the folder of pages holds more than %d files", mostInFolder), Remedy: "name a folder that holds the pages alone"})
		return
	}
	for _, entry := range entries {
		name, isPage := strings.CutSuffix(entry.Name(), ".md")
		if entry.IsDir() || !isPage || strings.HasPrefix(name, ".") {
			continue
		}
		file := path.Join(layer.Folder, entry.Name())
		if !pageName.MatchString(name) {
			faults.Add(fault.Fault{At: fault.Place{File: file}, Wrong: fmt.Sprintf("%q is not a name for a page", name), Remedy: "use small letters, digits and hyphens"})
			continue
		}
		source, err := fs.ReadFile(layer.Pages, entry.Name())
		if text, ok := readable(source, err, file, faults); ok {
			found[name] = &page{name: name, file: file, source: text, layer: depth}
		}
	}
}

// readable returns the text of a file with plain line ends, or reports why it
// cannot be used.
func readable(source []byte, err error, file string, faults *fault.List) (string, bool) {
	switch {
	case err != nil:
		faults.Add(fault.Fault{At: fault.Place{File: file}, Wrong: "the file cannot be read: " + reason(err), Remedy: "see that it is there and open to reading"})
	case !utf8.Valid(source):
		faults.Add(fault.Fault{At: fault.Place{File: file}, Wrong: "the file is not UTF-8 text", Remedy: "save it as UTF-8"})
	default:
		text := strings.TrimPrefix(string(source), "\ufeff")
		return strings.ReplaceAll(text, "\r\n", "\n"), plainSigns(text, file, faults)
	}
	return "", false
}

// reason says why a file was not read, without the name that stands beside it.
func reason(err error) string {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err.Error()
	}
	return err.Error()
}

// readPages reads all pages, as many at once as there are processors.
func (b *Book) readPages(faults *fault.List) {
	found := make([]fault.List, len(b.pages))
	stumbled := make([]error, len(b.pages))
	var reading sync.WaitGroup
	for i, p := range b.pages {
		reading.Go(func() {
			defer fault.Catch(&stumbled[i])
			b.readPage(p, &found[i])
		})
	}
	reading.Wait()
	for i, list := range found {
		if stumbled[i] != nil {
			panic(stumbled[i]) // where whoever asked for the pages can catch it
		}
		faults.Join(list)
	}
}

// scratchText holds memory that one page after another is written into.
var scratchText = sync.Pool{New: func() any { return new([]byte) }}

// readPage reads a page's sheet block and then its Markdown.
func (b *Book) readPage(p *page, faults *fault.List) {
	m := &manuscript{recorder: recorder{page: p, book: b, faults: faults}}
	scratch := scratchText.Get().(*[]byte)
	m.text = (*scratch)[:0]
	start := m.sheetBlock()
	// The block gives way to line ends, so that places in the page stay right.
	m.source = append(bytes.Repeat([]byte("\n"), start), p.source[start:]...)
	m.readMarkdown()
	m.flush()
	p.body, p.markup = slices.Clone(m.gather), string(m.text)
	*scratch = m.text
	scratchText.Put(scratch)
	p.ids = map[string]bool{p.name: true}
	for id := range m.ids {
		p.ids[id] = true
	}
}

// sheetBlock reads the block that begins the page and returns where the page
// goes on after it.
func (m *manuscript) sheetBlock() int {
	p := m.page
	first := max(0, strings.Index(p.source, "```"))
	opening := p.span(first, 0).line().trimmed()
	if strings.TrimSpace(p.source[:first]) != "" || strings.Trim(opening.text(), "` ") != "sheet" {
		m.wrong(p.span(0, 1), "the page does not begin with a sheet block", "begin it with ```sheet, a line for title and one for kind, and ```")
		return 0
	}
	f := fence{info: opening, top: true}
	for from := opening.line().to + 1; from < len(p.source); {
		line := p.span(from, 0).line()
		from = line.to + 1
		if strings.HasPrefix(line.trimmed().text(), "```") {
			m.readSheetBlock(f)
			return min(from, len(p.source))
		}
		f.lines = append(f.lines, line.trimmed())
	}
	m.wrong(opening, "the sheet block is not closed", "put ``` on a line of its own after it")
	return len(p.source)
}

// checkLinks reports links, needs and feeds that lead to no page or heading.
func (b *Book) checkLinks(faults *fault.List) {
	ids := map[string]bool{}
	for _, p := range b.pages {
		for id := range p.ids {
			ids[id] = true
		}
	}
	for _, p := range b.pages {
		for _, l := range p.links {
			if !ids[l.target] {
				faults.Add(fault.Fault{At: l.at.place(), Wrong: fmt.Sprintf("there is no page or heading %q", l.target), Remedy: didYouMean(l.target, keys(ids), "write the name of a page")})
			}
		}
	}
}
