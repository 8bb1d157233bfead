package content

import (
	"fmt"
	"slices"
	"strings"
)

// Kind says what a sheet is for.
type Kind string

// The kinds of sheet.
const (
	kindFront       Kind = "front"
	kindAsk         Kind = "ask"
	kindPlan        Kind = "plan"
	kindOrder       Kind = "order"
	kindCut         Kind = "cut"
	kindStep        Kind = "step"
	kindWorksheet   Kind = "worksheet"
	kindCalculation Kind = "calculation"
	kindBack        Kind = "back"
	kindClient      Kind = "client"
)

var kinds = []string{"front", "ask", "plan", "order", "cut", "step", "worksheet", "calculation", "back", "client"}

// page is one page as it was read: its facts and its pieces.
type page struct {
	name      string // of the file, without .md
	file      string // as faults name it
	layer     int    // 0 for the built-in pages
	source    string
	markup    string // all that its pieces write by themselves
	kind      Kind
	wide      bool
	title     []piece
	people    []piece
	time      []piece
	tools     []piece
	overnight []piece
	needs     []reference
	feeds     []reference
	condition condition
	body      []piece
	ids       map[string]bool // that links may lead to
	links     []link
	asks      []string // ids of the questions that its blocks name
}

// reference is a sheet that another needs or feeds, or else words.
type reference struct {
	page string
	text []piece
}

// link is a link inside the binder and where it stands.
type link struct {
	target string
	at     span
}

// readSheetBlock reads the block named sheet that begins a page: one word,
// blanks, then the rest of the line.
func (r *recorder) readSheetBlock(f fence) {
	facts := record{fields: map[string]span{}}
	for _, line := range f.lines {
		if line.empty() {
			continue
		}
		if word := r.field(&facts, line, sheetBlock); word != "" && !facts.fields[word].empty() {
			r.sheetWord(word, facts.fields[word])
		}
	}
	for _, word := range []string{"title", "kind"} {
		if _, given := facts.fields[word]; !given {
			r.wrong(f.info, "the sheet block has no "+word, "every page has a title and a kind")
		}
	}
}

var sheetBlock = form{
	words: []string{"title", "kind", "people", "time", "tools", "needs", "feeds", "overnight", "when", "paper"},
	file:  "the sheet block", one: "the sheet block", another: "take one away",
}

func (r *recorder) sheetWord(word string, rest span) {
	p := r.page
	switch word {
	case "title":
		p.title = r.pieces(rest)
	case "people":
		p.people = r.pieces(rest)
	case "time":
		p.time = r.pieces(rest)
	case "tools":
		p.tools = r.pieces(rest)
	case "overnight":
		p.overnight = r.pieces(rest)
	case "needs":
		p.needs = r.references(rest)
	case "feeds":
		p.feeds = r.references(rest)
	case "kind":
		p.kind = Kind(rest.text())
		if !slices.Contains(kinds, rest.text()) {
			r.wrong(rest, fmt.Sprintf("%q is not a kind of sheet", rest.text()), "write one of "+strings.Join(kinds, ", "))
		}
	case "when":
		c, good := readCondition("when "+rest.text(), rest)
		if p.condition = c; !good {
			r.wrong(rest, fmt.Sprintf("%q is not a condition", rest.text()), "write KEY or KEY is WORD")
		}
	case "paper":
		p.wide = rest.text() == "landscape"
		if !p.wide && rest.text() != "portrait" {
			r.wrong(rest, fmt.Sprintf("%q is not a way to turn the paper", rest.text()), "write landscape, or leave the line out")
		}
	}
}

// pieces returns the pieces of a text.
func (r *recorder) pieces(s span) []piece {
	r.begin()
	r.plain(s)
	return r.end()
}

// references reads a list of sheets, set apart by semicolons or commas. A
// single word made of small letters is the name of a page; anything else is
// words for the reader.
func (r *recorder) references(s span) []reference {
	var list []reference
	separator := byte(';')
	if !strings.Contains(s.text(), ";") {
		separator = ','
	}
	for _, part := range s.split(separator, s.to) {
		switch {
		case part.empty():
		case pageName.MatchString(part.text()):
			list = append(list, reference{page: part.text()})
			r.page.links = append(r.page.links, link{target: part.text(), at: part})
		default:
			list = append(list, reference{text: r.pieces(part)})
		}
	}
	return list
}

// link notes a link for the check that it leads somewhere, and refuses one to
// a file: a binder is a single file, and a relative address would carry the
// builder's folder names into print.
func (r *recorder) link(target string, at span) {
	if inside, ok := strings.CutPrefix(target, "#"); ok {
		r.page.links = append(r.page.links, link{target: inside, at: at})
		return
	}
	for _, scheme := range []string{"https://", "http://", "mailto:", "tel:"} {
		if strings.HasPrefix(target, scheme) {
			return
		}
	}
	r.wrong(at, fmt.Sprintf("%q leads out of the binder to a file", target), "write #NAME for a page of the binder, or a whole address that begins https://")
}

// cells reports a table row with more cells than the heading, since the rest
// would vanish from the page.
func (r *recorder) cells(row span, columns int) {
	line := row.line().trimmed()
	cells := len(line.split('|', line.to))
	if strings.HasPrefix(line.text(), "|") {
		cells--
	}
	if strings.HasSuffix(line.text(), "|") && !strings.HasSuffix(line.text(), `\|`) {
		cells--
	}
	if cells != columns {
		r.wrong(line, fmt.Sprintf("the row has %d cells under %d headings", cells, columns), `give each heading one cell; write \| for a bar inside a cell`)
	}
}

// span returns length bytes of the page from offset on, as far as it goes.
func (p *page) span(offset, length int) span {
	return span{p, 0, len(p.source)}.sub(offset, length)
}
