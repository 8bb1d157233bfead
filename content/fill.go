package content

import (
	"bytes"
	"fmt"
	"html"
	"html/template"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// filler writes the pieces of one sheet with a job's figures in the holes.
type filler struct {
	binder *binder
	page   *page
	out    []byte
	leaf   Leaf
	leaves []Leaf
	words  bool // plain words are wanted, without marks and markup

	printed []string // keys of the figures so far

	tables, drawings int // so far on this sheet, for their numbers
}

// fillAll writes pieces in order.
func (f *filler) fillAll(pieces []piece) {
	for _, p := range pieces {
		if p.hole == nil {
			p.literal.fill(f)
		} else {
			p.hole.fill(f)
		}
	}
}

// markup returns what pieces become.
func (f *filler) markup(pieces []piece) template.HTML {
	from := len(f.out)
	f.fillAll(pieces)
	text := string(f.out[from:])
	f.out = f.out[:from]
	return template.HTML(text)
}

// plain returns pieces as plain words.
func (f *filler) plain(pieces []piece) string {
	f.words = true
	text := f.markup(pieces)
	f.words = false
	return html.UnescapeString(string(text))
}

func (f *filler) write(parts ...string) {
	for _, part := range parts {
		f.out = append(f.out, part...)
	}
}

// text writes plain text, which in words alone is not broken.
func (f *filler) text(s string) {
	if f.words {
		f.out = AppendAttribute(f.out, s)
	} else {
		f.out = AppendText(f.out, s)
	}
}

// attribute writes plain text between the quotes of an attribute.
func (f *filler) attribute(s string) { f.out = AppendAttribute(f.out, s) }

func (l literal) fill(f *filler) { f.out = append(f.out, f.page.markup[l.from:l.to]...) }

func (p figureText) fill(f *filler) {
	if fig, ok := f.figure(p.key, p.at); ok {
		f.value(fig)
	}
}

// value writes what a figure prints. Numbers are kept on one line and stand
// out from the words.
func (f *filler) value(fig figure.Figure) {
	f.printed = append(f.printed, fig.Key)
	text := fig.Text(f.binder.style)
	_, isWord := fig.Value.(measure.Word)
	switch {
	case f.words:
		f.text(text)
		return
	case fig.Value == nil:
		f.blank(fig.Means)
		return
	case isWord:
		f.text(text)
	default:
		f.write(`<span class="n">`)
		f.attribute(text)
		f.write("</span>")
	}
	if fig.Origin == figure.Assumed {
		f.leaf.Assumed = true
		f.write(assumedMark)
	}
	if fig.Memory {
		memoryMark{}.fill(f)
	}
}

const (
	assumedMark    = `<sup class="mark" title="assumed, not given by the job">a</sup>`
	fromMemoryMark = `<sup class="mark" title="from memory, unconfirmed">m</sup>`
)

// memoryMark is the mark of what is known from memory alone.
type memoryMark struct{}

func (memoryMark) fill(f *filler) {
	if !f.words {
		f.leaf.Memory = true
		f.write(fromMemoryMark)
	}
}

// blank writes a ruled blank for what label says.
func (f *filler) blank(label string) {
	f.write(blankStart)
	f.attribute(label)
	f.write(blankEnd)
}

func (p figureName) fill(f *filler) {
	if fig, ok := f.figure(p.key, p.at); ok {
		f.text(fig.Means)
	}
}

func (p answer) fill(f *filler) {
	fig, ok := f.binder.figures.Get(p.key)
	if !ok || fig.Text(f.binder.style) == "" {
		f.blank(p.label)
		return
	}
	f.value(fig)
}

func (p sheetLink) fill(f *filler) {
	number, known := f.binder.numbers[p.page]
	switch {
	case !known:
		f.binder.wrong(p.at, fmt.Sprintf("there is no sheet %q", p.page), didYouMean(p.page, keys(f.binder.numbers), "write the name of a page"))
	case f.words || number == 0:
		f.write("sheet ", p.number(number))
	default:
		f.write(`<a href="#`, p.page, `">sheet `, p.number(number), "</a>")
	}
}

// number is the sheet's number, or its name in words when it is not bound.
func (p sheetLink) number(n int) string {
	if n == 0 {
		return "“" + strings.ReplaceAll(p.page, "-", " ") + "” (not bound for this job)"
	}
	return strconv.Itoa(n)
}

func (p when) fill(f *filler) {
	if f.binder.holds(p.condition) {
		f.fillAll(p.body)
		return
	}
	f.binder.leftOut(p.body)
}

func (p group) fill(f *filler) {
	start := len(f.out)
	p.head.fill(f)
	begun := len(f.out)
	f.fillAll(p.body)
	if len(f.out) == begun {
		f.out = f.out[:start]
		return
	}
	p.tail.fill(f)
}

func (p leafBreak) fill(f *filler) {
	f.endLeaf()
	f.leaf.Back, f.leaf.Sets = p.back, p.sets
}

// endLeaf puts what was written since the last break on the sheet's leaves.
func (f *filler) endLeaf() {
	if len(bytes.TrimSpace(f.out)) > 0 {
		f.leaf.HTML = template.HTML(f.out)
		if f.leaf.Sets == nil {
			f.leaf.Sets = slices.Clone(setsOfPage(f.page))
		}
		f.leaves = append(f.leaves, f.leaf)
	}
	f.out, f.leaf = f.out[:0], Leaf{}
}

func (contents) fill(f *filler) {
	f.write(`<ol class="contents">`)
	for _, s := range f.binder.sheets {
		f.write(`<li value="`, strconv.Itoa(s.Number), `"><a href="#`, s.Name, `"><span class="number">`, strconv.Itoa(s.Number), `</span> <span class="title">`)
		f.text(s.Title)
		f.write("</span></a></li>")
	}
	f.write("</ol>\n")
}

// fill asks the caller's maker for the block; a drawing gets its frame here.
func (p call) fill(f *filler) {
	maker, known := f.binder.blocks[p.block]
	switch {
	case !known:
		f.binder.wrong(p.at, fmt.Sprintf("no %s can be brought in here", p.block), "take the block away")
		return
	case !maker.knows(p.argument):
		f.binder.wrong(p.at, fmt.Sprintf("there is no %s %q", p.block, p.argument), didYouMean(p.argument, maker.Names, "write one of "+strings.Join(maker.Names, ", ")))
		return
	}
	counted := &f.tables
	if p.block == "drawing" {
		counted = &f.drawings
	}
	number := strconv.Itoa(f.binder.numbers[f.page.name]) + "." + strconv.Itoa(*counted+1)
	c := Call{Block: p.block, Argument: p.argument, Page: f.page.name, Number: number, Caption: f.markup(p.caption), Words: f.plain(p.caption),
		Front: f.page.kind == kindStep && len(f.leaves) == 0, Back: f.leaf.Back, Height: p.height, Sheets: f.binder.sheets}
	if p.block == "parts" && c.Words == "" {
		c.Words = "Parts for this step"
		c.Caption = template.HTML(c.Words)
	}
	made := maker.Make(c)
	if made == "" {
		return
	}
	if p.block != "form" {
		*counted++
	}
	if p.block != "drawing" {
		f.write(string(made))
		return
	}
	f.write(`<figure class="drawing of-`, slug(p.argument), `">`, scrollStart)
	f.attribute("drawing: " + c.Words)
	f.write(`">`, string(made), `</div><figcaption><b>Figure `, number, `</b> `, string(c.Caption), "</figcaption></figure>\n")
}

// figure returns the figure with the key, or reports that there is none.
func (f *filler) figure(key string, at span) (figure.Figure, bool) {
	return f.binder.figure(key, at)
}
