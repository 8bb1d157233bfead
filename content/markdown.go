package content

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	table "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// markdown reads and writes all pages. Raw HTML stays out (a page that holds
// some is at fault), quotes stay straight because 5' 6" is a length, and what
// is written is well-formed XML.
var markdown = goldmark.New(
	goldmark.WithExtensions(extension.Table, extension.TaskList, extension.DefinitionList),
	goldmark.WithParserOptions(parser.WithInlineParsers(util.Prioritized(braceParser{}, 50))),
	goldmark.WithRendererOptions(html.WithXHTML(), renderer.WithNodeRenderers(util.Prioritized(pageRenderer{}, 100))),
)

// brace is the text in a pair of braces: a figure's key or a condition.
type brace struct {
	ast.BaseInline
	inside string // without the braces
	length int    // in the source, with the braces
}

var kindBrace = ast.NewNodeKind("Brace")

func (*brace) Kind() ast.NodeKind              { return kindBrace }
func (b *brace) Dump(source []byte, level int) { ast.DumpHelper(b, source, level, nil, nil) }

// braceParser takes {…} out of running text before anything else can read it,
// so that an underscore in a key is no emphasis.
type braceParser struct{}

func (braceParser) Trigger() []byte { return []byte{'{'} }

func (braceParser) Parse(_ ast.Node, block text.Reader, _ parser.Context) ast.Node {
	line, segment := block.PeekLine()
	end := max(0, braceEnd(string(line)))
	block.Advance(end + 1)
	b := &brace{inside: string(line[min(1, end):end]), length: end + 1}
	b.SetPos(segment.Start)
	return b
}

// passage holds blocks that are bound together under one condition.
type passage struct {
	ast.BaseBlock
	condition condition
}

var kindPassage = ast.NewNodeKind("Passage")

func (*passage) Kind() ast.NodeKind              { return kindPassage }
func (p *passage) Dump(source []byte, level int) { ast.DumpHelper(p, source, level, nil, nil) }

// manuscript is one page while it is being read: the recorder of its pieces
// and what the renderer has to know of its Markdown.
type manuscript struct {
	recorder
	source     []byte
	conditions map[ast.Node]condition
	shift      int            // added to a heading's level, so that the page's own begin at h3
	ids        map[string]int // heading ids given so far
}

// readMarkdown records the pieces of a page's Markdown.
func (m *manuscript) readMarkdown() {
	m.conditions, m.ids = map[ast.Node]condition{}, map[string]int{}
	document := markdown.Parser().Parse(text.NewReader(m.source))
	m.shift = 3 - highestHeading(document)
	m.takeConditions(document)
	m.gatherPassages(document)
	if err := markdown.Renderer().Render(m, m.source, document); err != nil {
		panic("content: rendering " + m.page.name + ": " + err.Error())
	}
}

func highestHeading(document ast.Node) int {
	highest := 6
	for n := document.FirstChild(); n != nil; n = n.NextSibling() {
		if heading, ok := n.(*ast.Heading); ok {
			highest = min(highest, heading.Level)
		}
	}
	return highest
}

// takeConditions takes each leading {when …} out of the text and notes it for
// the block that it governs. It notes links on the way.
func (m *manuscript) takeConditions(document ast.Node) {
	var leading []*brace
	_ = ast.Walk(document, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if b, ok := n.(*brace); ok && entering && isCondition(b.inside) && m.governed(b) != nil {
			leading = append(leading, b)
		}
		if link, ok := n.(*ast.Link); ok && entering {
			m.link(string(link.Destination), m.page.span(max(0, link.Pos()), 1))
		}
		return ast.WalkContinue, nil
	})
	for _, b := range leading {
		m.conditions[m.governed(b)] = m.condition(b.inside, m.page.span(b.Pos(), b.length))
		if next, ok := b.NextSibling().(*ast.Text); ok {
			next.Segment = next.Segment.TrimLeftSpace(m.source)
		}
		b.Parent().RemoveChild(b.Parent(), b)
	}
}

// governed returns the block that a leading condition decides on, or nil when
// the condition does not lead one.
func (m *manuscript) governed(b *brace) ast.Node {
	block := b.Parent()
	if b.PreviousSibling() != nil {
		return nil
	}
	switch block.(type) {
	case *ast.Heading:
		return block
	case *ast.Paragraph, *ast.TextBlock:
		if item, ok := block.Parent().(*ast.ListItem); ok && block.PreviousSibling() == nil {
			return item
		}
		return block
	case *table.TableCell:
		if row, ok := block.Parent().(*table.TableRow); ok && block.PreviousSibling() == nil {
			return row
		}
	}
	return nil
}

// gatherPassages puts a conditional heading together with its section, and a
// paragraph that is nothing but a condition together with the block after it.
func (m *manuscript) gatherPassages(parent ast.Node) {
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		c, conditional := m.conditions[n]
		heading, isHeading := n.(*ast.Heading)
		alone := n.Kind() == ast.KindParagraph && n.ChildCount() == 0 && n.NextSibling() != nil
		if conditional && (isHeading || alone) {
			delete(m.conditions, n)
			whole := &passage{condition: c}
			parent.InsertBefore(parent, n, whole)
			last := n.NextSibling()
			if isHeading {
				last = endOfSection(heading)
			}
			moveInto(whole, n, last)
			if alone {
				whole.RemoveChild(whole, n)
			}
			n = whole
		}
		if n.Type() == ast.TypeBlock {
			m.gatherPassages(n)
		}
	}
}

// endOfSection returns the last block before the next heading of the same
// level or a higher one.
func endOfSection(heading *ast.Heading) ast.Node {
	last := ast.Node(heading)
	for n := heading.NextSibling(); n != nil; n = n.NextSibling() {
		if next, ok := n.(*ast.Heading); ok && next.Level <= heading.Level {
			break
		}
		last = n
	}
	return last
}

func moveInto(whole, first, last ast.Node) {
	for n := first; n != nil; {
		next := n.NextSibling()
		whole.AppendChild(whole, n)
		if n == last {
			return
		}
		n = next
	}
}

// pageRenderer writes what goldmark's own renderer does not write as a binder
// wants it. Its writer is always a manuscript.
type pageRenderer struct{}

func (pageRenderer) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	type write func(m *manuscript, n ast.Node, entering bool) ast.WalkStatus
	for kind, f := range map[ast.NodeKind]write{
		kindBrace: (*manuscript).brace, kindPassage: (*manuscript).passage,
		ast.KindHeading: (*manuscript).heading, ast.KindParagraph: (*manuscript).paragraph,
		ast.KindList: (*manuscript).list, ast.KindListItem: (*manuscript).item,
		ast.KindFencedCodeBlock: (*manuscript).fenced, ast.KindCodeBlock: (*manuscript).indented,
		ast.KindHTMLBlock: (*manuscript).rawHTML, ast.KindRawHTML: (*manuscript).rawHTML,
		ast.KindImage:   (*manuscript).image,
		table.KindTable: (*manuscript).table, table.KindTableHeader: (*manuscript).row, table.KindTableRow: (*manuscript).row,
		table.KindTableCell: (*manuscript).cell, table.KindTaskCheckBox: (*manuscript).taskBox,
	} {
		reg.Register(kind, func(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
			return f(w.(*manuscript), n, entering), nil
		})
	}
}

func (m *manuscript) brace(n ast.Node, entering bool) ast.WalkStatus {
	if entering {
		b := n.(*brace)
		at := m.page.span(b.Pos(), b.length)
		if b.length == 1 {
			m.wrong(at, "a brace is not closed", `write } after the key, or \{ for a brace`)
		} else {
			m.key(b.inside, at)
		}
	}
	return ast.WalkContinue
}

func (m *manuscript) passage(n ast.Node, entering bool) ast.WalkStatus {
	return m.conditional(n.(*passage).condition, entering, func() {}, func() {})
}

// conditional writes the start or the end of a block that may have a condition.
func (m *manuscript) conditional(c condition, entering bool, start, end func()) ast.WalkStatus {
	if entering {
		m.beginWhen(c)
		start()
	} else {
		end()
		m.endWhen(c)
	}
	return ast.WalkContinue
}

func (m *manuscript) heading(n ast.Node, entering bool) ast.WalkStatus {
	level := "h" + strconv.Itoa(min(6, n.(*ast.Heading).Level+m.shift))
	return m.conditional(m.conditions[n], entering,
		func() { m.html("<", level, ` id="`, m.id(n), `">`) },
		func() { m.html("</", level, ">\n") })
}

// id returns an id for the heading that no other in the binder has.
func (m *manuscript) id(heading ast.Node) string {
	var words strings.Builder
	_ = ast.Walk(heading, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if t, ok := n.(*ast.Text); ok && entering {
			words.Write(t.Value(m.source))
		}
		return ast.WalkContinue, nil
	})
	id := m.page.name + "-" + slug(words.String())
	m.ids[id]++
	if times := m.ids[id]; times > 1 {
		id += "-" + strconv.Itoa(times)
	}
	return strings.TrimSuffix(id, "-")
}

func (m *manuscript) paragraph(n ast.Node, entering bool) ast.WalkStatus {
	return m.conditional(m.conditions[n], entering, func() { m.html("<p>") }, func() { m.html("</p>\n") })
}

// list writes a list; one whose items are all conditional vanishes with them.
func (m *manuscript) list(n ast.Node, entering bool) ast.WalkStatus {
	list := n.(*ast.List)
	name, start := "ul", ""
	if m.steps(list) {
		start = ` class="steps"`
	}
	if list.IsOrdered() {
		name = "ol"
		if list.Start != 1 {
			start += fmt.Sprintf(` start="%d" style="counter-reset: step %d"`, list.Start, list.Start-1)
		}
	}
	if entering {
		m.begin()
	} else {
		m.group("<"+name+start+">\n", m.end(), "</"+name+">\n")
	}
	return ast.WalkContinue
}

// steps says whether the items of a list are the steps of a step sheet, each
// with a box to tick.
func (m *manuscript) steps(list *ast.List) bool {
	return m.page.kind == kindStep && list.IsOrdered() && list.Parent().Kind() != ast.KindListItem
}

func (m *manuscript) item(n ast.Node, entering bool) ast.WalkStatus {
	tick := ""
	if m.steps(n.Parent().(*ast.List)) {
		tick = tickBox
	}
	return m.conditional(m.conditions[n], entering, func() { m.html("<li>", tick) }, func() { m.html("</li>\n") })
}

func (m *manuscript) fenced(n ast.Node, entering bool) ast.WalkStatus {
	if !entering {
		return ast.WalkContinue
	}
	code := n.(*ast.FencedCodeBlock)
	if code.Info == nil {
		m.wrong(m.page.span(n.Pos(), 3), "a fenced block has no name", "write the block's name after the fence: "+blockNames())
		return ast.WalkSkipChildren
	}
	info := code.Info.Segment
	f := fence{info: m.page.span(info.Start, info.Len()).trimmed(), top: isTop(n)}
	for i := range code.Lines().Len() {
		line := code.Lines().At(i)
		f.lines = append(f.lines, m.page.span(line.Start, line.Len()).trimmed())
	}
	m.block(f)
	return ast.WalkSkipChildren
}

// isTop says whether a block stands on the page itself and in nothing else.
func isTop(n ast.Node) bool {
	parent := n.Parent()
	return parent.Kind() == ast.KindDocument || parent.Kind() == kindPassage && isTop(parent)
}

func (m *manuscript) indented(n ast.Node, entering bool) ast.WalkStatus {
	if entering {
		line := n.Lines().At(0)
		m.wrong(m.page.span(line.Start, line.Len()).trimmed(), "a line with four blanks before it is taken for program text", "take the blanks away")
	}
	return ast.WalkSkipChildren
}

func (m *manuscript) rawHTML(n ast.Node, entering bool) ast.WalkStatus {
	if entering {
		m.wrong(m.page.span(max(0, n.Pos()), 1), "raw HTML cannot stand in a page", `write Markdown, a block, or \< for the sign`)
	}
	return ast.WalkSkipChildren
}

func (m *manuscript) image(n ast.Node, entering bool) ast.WalkStatus {
	if entering {
		m.wrong(m.page.span(max(0, n.Pos()), 1), "a picture file cannot be bound", "bring a drawing in with a block: ```drawing NAME")
	}
	return ast.WalkSkipChildren
}

func (m *manuscript) table(n ast.Node, entering bool) ast.WalkStatus {
	if entering {
		m.html(`<div class="scroll" role="region" tabindex="0" aria-label="table"><table>`, "\n<thead>\n")
	} else {
		m.html("</tbody></table></div>\n")
	}
	return ast.WalkContinue
}

func (m *manuscript) row(n ast.Node, entering bool) ast.WalkStatus {
	if entering {
		m.cells(m.page.span(n.Pos(), 1), n.Parent().FirstChild().ChildCount())
	}
	return m.conditional(m.conditions[n], entering, func() { m.html("<tr>") }, func() {
		m.html("</tr>\n")
		if n.Kind() == table.KindTableHeader {
			m.html("</thead>\n<tbody>")
		}
	})
}

func (m *manuscript) cell(n ast.Node, entering bool) ast.WalkStatus {
	name, attributes := "td", ""
	if n.Parent().Kind() == table.KindTableHeader {
		name, attributes = "th", ` scope="col"`
	}
	switch n.(*table.TableCell).Alignment {
	case table.AlignRight:
		attributes += ` class="right"`
	case table.AlignCenter:
		attributes += ` class="centre"`
	}
	if entering {
		m.html("<", name, attributes, ">")
	} else {
		m.html("</", name, ">")
	}
	return ast.WalkContinue
}

func (m *manuscript) taskBox(_ ast.Node, entering bool) ast.WalkStatus {
	if entering {
		m.html(tickBox)
	}
	return ast.WalkContinue
}
