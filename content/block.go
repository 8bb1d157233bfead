package content

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/fault"
)

// fence is a fenced block of a page: the line that names it and its body.
type fence struct {
	info  span
	lines []span
	top   bool // whether it stands on the page itself, not in a list or a quotation
}

// bodyLine is one line of a block's body.
type bodyLine struct {
	condition condition
	parts     []span
}

// body says what a block holds between its fences.
type body int

const (
	nothing body = iota
	caption      // running text
	lines        // one thing a line
)

// blockKind says how a block is written and what it becomes.
type blockKind struct {
	argument    string // what the word after the block's name is; empty for none
	option      string // the one word that may stand there when no other must
	body        body
	separator   byte // between the parts of a line
	least, most int  // parts in each line
	limit       int  // lines at most, 0 for any number
	onTop       bool // may stand only on the page itself
	sets        bool // names of sets may stand after its name
	record      func(r *recorder, b block)
}

// block is a fenced block that was found in order.
type block struct {
	name     string
	argument span
	caption  []piece
	lines    []bodyLine
}

var blockKinds map[string]blockKind

func init() { // not a plain value, since the recording functions need the table's names
	blockKinds = map[string]blockKind{
		"big":        {body: lines, separator: ':', least: 2, most: 2, limit: 6, record: (*recorder).big},
		"done":       {body: lines, least: 1, most: 1, record: (*recorder).done},
		"targets":    {body: lines, separator: '|', least: 5, most: 5, record: (*recorder).targets},
		"blanks":     {body: lines, separator: '|', least: 2, most: 5, record: (*recorder).blanks},
		"hold":       {body: lines, least: 1, most: 1, record: (*recorder).hold},
		"wrong":      {body: lines, separator: '|', least: 2, most: 2, record: (*recorder).troubles},
		"glossary":   {body: lines, separator: '|', least: 2, most: 2, record: (*recorder).glossary},
		"caution":    {argument: "caution", record: (*recorder).oneCaution},
		"cautions":   {argument: "stage", record: (*recorder).cautionsOfStage},
		"question":   {argument: "question", record: (*recorder).oneQuestion},
		"questions":  {option: "rest", record: (*recorder).allQuestions},
		"contents":   {record: func(r *recorder, _ block) { r.add(contents{}) }},
		"page-break": {onTop: true, sets: true, record: func(r *recorder, b block) { r.add(leafBreak{sets: r.setsNamed(b.argument)}) }},
		"back":       {onTop: true, sets: true, record: func(r *recorder, b block) { r.add(leafBreak{back: true, sets: r.setsNamed(b.argument)}) }},
		"drawing":    {argument: "drawing", body: caption, record: (*recorder).made},
		"table":      {argument: "table", body: caption, record: (*recorder).made},
		"rows":       {argument: "set of things", body: lines, least: 1, most: 1, record: (*recorder).rows},
		"parts":      {argument: "step", body: caption, record: (*recorder).made},
		"form":       {argument: "form", body: caption, record: (*recorder).made},
	}
}

func blockNames() string {
	var names []string
	for name := range blockKinds {
		names = append(names, name)
	}
	slices.Sort(names)
	return strings.Join(names, ", ")
}

// block reads a fenced block and records what it becomes.
func (r *recorder) block(f fence) {
	first, argument := f.info.word()
	name := first.text()
	kind, known := blockKinds[name]
	switch {
	case name == "sheet":
		r.wrong(f.info, "the sheet block stands in the middle of the page", "put it at the very start of the page, once")
	case !known:
		r.wrong(first, fmt.Sprintf("%q is not a block", name), didYouMean(name, keys(blockKinds), "write one of "+blockNames()))
	case kind.option != "" && !argument.empty() && argument.text() != kind.option:
		r.wrong(argument, fmt.Sprintf("the block %q takes no %q", name, argument.text()), fmt.Sprintf("write %s, or nothing for all", kind.option))
	case kind.argument == "" && kind.option == "" && !kind.sets && !argument.empty():
		r.wrong(argument, fmt.Sprintf("the block %q takes nothing after its name", name), "take it away")
	case kind.argument != "" && argument.empty():
		r.wrong(f.info, fmt.Sprintf("the block %q names no %s", name, kind.argument), "write its name after the block's")
	case kind.onTop && !f.top:
		r.wrong(f.info, fmt.Sprintf("the block %q stands inside a list or a quotation", name), "put it on the page itself")
	default:
		b := block{name: name, argument: argument}
		if r.blockBody(kind, f, &b) {
			kind.record(r, b)
		}
	}
}

// blockBody reads a block's body and says whether it is in order.
func (r *recorder) blockBody(kind blockKind, f fence, b *block) bool {
	filled := slices.DeleteFunc(slices.Clone(f.lines), func(s span) bool { return s.empty() })
	switch {
	case kind.body == nothing && len(filled) > 0:
		r.wrong(filled[0], fmt.Sprintf("the block %q has no body", b.name), "take the line away")
		return false
	case kind.body == lines && len(filled) == 0:
		r.wrong(f.info, fmt.Sprintf("the block %q is empty", b.name), "write a line for each thing, or take the block away")
		return false
	case kind.body == caption:
		b.caption = r.caption(filled)
		return true
	}
	good := true
	for _, line := range filled {
		read, ok := r.bodyLine(kind, b.name, line)
		good = good && ok
		b.lines = append(b.lines, read)
	}
	if kind.limit > 0 && len(b.lines) > kind.limit {
		r.wrong(filled[kind.limit], fmt.Sprintf("the block %q has more than %d lines", b.name, kind.limit), "keep those that matter most")
		return false
	}
	return good
}

func (r *recorder) bodyLine(kind blockKind, name string, line span) (bodyLine, bool) {
	rest, c := line.condition(r)
	read := bodyLine{condition: c, parts: []span{rest}}
	if kind.separator != 0 {
		most := kind.most + 1 // one more, to see a part too many
		if kind.separator == ':' {
			most = kind.most // a colon may stand in the value too
		}
		read.parts = rest.split(kind.separator, most)
	}
	count := len(read.parts)
	if count < kind.least || count > kind.most {
		wanted := strconv.Itoa(kind.least)
		if kind.most > kind.least {
			wanted = fmt.Sprintf("%d to %d", kind.least, kind.most)
		}
		r.wrong(line, fmt.Sprintf("the number of parts in this line of the block %q is %d", name, count), fmt.Sprintf("write %s parts with %q between them", wanted, kind.separator))
		return read, false
	}
	return read, true
}

// caption records the lines of a caption as one text.
func (r *recorder) caption(lines []span) []piece {
	r.begin()
	for i, line := range lines {
		if i > 0 {
			r.html(" ")
		}
		r.plain(line)
	}
	return r.end()
}

// made records a block that the job's plan fills. A drawing's name may be
// followed by the height that its page has for it, in whole millimetres.
func (r *recorder) made(b block) {
	c := call{block: b.name, argument: b.argument.text(), caption: b.caption, at: b.argument}
	if i := strings.LastIndexByte(c.argument, ' '); i > 0 && b.name == "drawing" {
		if height, err := strconv.ParseUint(c.argument[i+1:], 10, 8); err == nil {
			c.argument, c.height = strings.TrimSpace(c.argument[:i]), int(height)
		}
	}
	r.add(c)
}

// didYouMean returns a remedy that names the known word nearest to the one
// written, or else the other remedy.
func didYouMean(word string, known []string, otherwise string) string {
	near := fault.Nearest(word, known)
	if near == "" {
		return otherwise
	}
	return "did you mean " + near + "?"
}

func keys[V any](m map[string]V) []string {
	var names []string
	for name := range m {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}
