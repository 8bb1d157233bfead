package content

import (
	"fmt"
	"html"
	"slices"
	"strings"
)

// rows is a table that a page writes: a row for each thing of a set, told once
// with keys that are the thing's own.
type rows struct {
	set, name string // what the rows are of, and what the style sheet calls the table
	at        span
	caption   []piece
	size      Size
	group     phrase
	only      []condition // that a thing meets to have a row
	alike     bool        // things of which the table says the same share a row
	columns   []column
	notes     []note
}

// column is one column: its head, what stands in it for each thing, and the unit
// for what is written into its blanks.
type column struct {
	condition  condition
	head, unit phrase
	cell       phrase
	cellWhen   condition
	strong     condition // a thing that meets it has this cell stand out
	kind       columnKind
}

// columnKind says how the cells of a column stand.
type columnKind struct {
	align Align
	big   bool
	cell  CellKind
}

var columnKinds = map[string]columnKind{
	"head":   {cell: Head},
	"words":  {},
	"number": {align: Right},
	"big":    {align: Right, big: true},
	"blank":  {cell: Blank},
	"tick":   {cell: Tick},
}

// note is a sentence under the table.
type note struct {
	condition condition
	text      []piece
}

// phrase is text with figures in it, written as plain words.
type phrase []phrasePart

// phrasePart is text as it stands, or a figure: what it prints, or what it is.
type phrasePart struct {
	text, key string
	means     bool
	at        span
}

var rowsWords = append(keys(columnKinds), "alike", "caption", "group", "letters", "note", "strong", "unless", "when")

// rows records a table that the page writes.
func (r *recorder) rows(b block) {
	set, name := b.argument.word()
	t := rows{set: set.text(), name: name.text(), at: set}
	if name.empty() {
		t.name = t.set
	} else if !pageName.MatchString(t.name) {
		r.wrong(name, fmt.Sprintf("%q is not a name for a table", t.name), "use small letters, digits and hyphens")
	}
	seen := map[string]bool{}
	for _, line := range b.lines {
		first, rest := line.parts[0].word()
		word := first.text()
		kind, isColumn := columnKinds[word]
		switch {
		case rest.empty() && word != "alike":
			r.wrong(first, fmt.Sprintf("%q has nothing after it", word), "write the rest of the line, or take the word away")
		case isColumn:
			t.columns = append(t.columns, r.column(kind, rest, line.condition))
		case word == "note":
			t.notes = append(t.notes, note{line.condition, r.pieces(rest)})
		case line.condition.given():
			r.wrong(line.condition.at, fmt.Sprintf("%q takes no condition", word), "columns and notes do")
		case word != "when" && word != "unless" && word != "strong" && seen[word]:
			r.wrong(first, fmt.Sprintf("%q stands twice in the table", word), "take one away")
		default:
			r.rowsWord(&t, first, rest)
		}
		seen[word] = true
	}
	switch {
	case !seen["caption"]:
		r.wrong(b.argument, "the table has no caption", "write a line that begins with caption and says what the table tells")
	case len(t.columns) == 0:
		r.wrong(b.argument, "the table has no column", "write a line for each: "+strings.Join(keys(columnKinds), ", ")+", its heading, a bar, and what stands in it")
	}
	r.add(t)
}

func (r *recorder) rowsWord(t *rows, first, rest span) {
	switch word := first.text(); word {
	case "caption":
		t.caption = r.pieces(rest)
	case "group":
		t.group = r.phrase(rest)
	case "letters":
		size := slices.Index(sizes, rest.text())
		if size < 0 {
			r.wrong(rest, fmt.Sprintf("%q is not a size of letters", rest.text()), "write one of "+strings.Join(sizes, ", "))
			return
		}
		t.size = Size(size)
	case "when", "unless":
		c, good := readCondition(word+" "+rest.text(), rest)
		if !good {
			r.wrong(rest, fmt.Sprintf("%q is not a condition", rest.text()), "write KEY or KEY is WORD")
			return
		}
		t.only = append(t.only, c)
	case "strong":
		r.strong(t, rest)
	case "alike":
		if t.alike = true; !rest.empty() {
			r.wrong(rest, `"alike" takes nothing after it`, "take it away")
		}
	default:
		r.wrong(first, fmt.Sprintf("%q is not a word of a table", word), didYouMean(word, rowsWords, "write one of "+strings.Join(rowsWords, ", ")))
	}
}

// column reads a column: its heading, what stands in it, the unit of its blanks.
func (r *recorder) column(kind columnKind, s span, c condition) column {
	parts := s.split('|', 4)
	col := column{condition: c, kind: kind, head: r.phrase(parts[0])}
	least := 2
	if kind.cell == Tick {
		least = 1
	}
	if len(parts) < least || len(parts) > 3 {
		r.wrong(s, fmt.Sprintf("the number of parts in this column is %d", len(parts)), `write its heading, what stands in it and, where something is written into it, the unit, with "|" between them`)
		return col
	}
	if len(parts) > 1 {
		rest, when := parts[1].condition(r)
		col.cell, col.cellWhen = r.phrase(rest), when
	}
	if len(parts) > 2 {
		col.unit = r.phrase(parts[2])
	}
	return col
}

// strong reads which cells stand out: a heading that was written before, and a
// figure of the thing.
func (r *recorder) strong(t *rows, s span) {
	parts := s.split('|', 3)
	if len(parts) != 2 {
		r.wrong(s, `"strong" wants two parts`, `write a heading of the table, "|" and KEY or KEY is WORD`)
		return
	}
	heading := parts[0].text()
	at := slices.IndexFunc(t.columns, func(c column) bool { return len(c.head) == 1 && c.head[0].text == heading })
	c, good := readCondition("when "+parts[1].text(), parts[1])
	switch {
	case at < 0:
		r.wrong(parts[0], fmt.Sprintf("no column above this line is headed %q", heading), "write its heading as it stands there")
	case !good:
		r.wrong(parts[1], fmt.Sprintf("%q is not a condition", parts[1].text()), "write KEY or KEY is WORD")
	default:
		t.columns[at].strong = c
	}
}

// phrase reads text that may hold keys of figures.
func (r *recorder) phrase(s span) phrase {
	var p phrase
	for _, piece := range r.pieces(s) {
		switch h := piece.hole.(type) {
		case nil:
			p = append(p, phrasePart{text: html.UnescapeString(string(r.text[piece.literal.from:piece.literal.to]))})
		case figureText:
			p = append(p, phrasePart{key: h.key, at: h.at})
		case figureName:
			p = append(p, phrasePart{key: h.key, means: true, at: h.at})
		default:
			r.wrong(s, "a cell holds text and figures alone", "put links to sheets into the caption or a note")
		}
	}
	return p
}
