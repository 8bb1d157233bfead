package content

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/fault"
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
	lines     []int  // offset of each line in the source
	source    string
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
}

// reference is a sheet that another needs or feeds, or else words.
type reference struct {
	page string
	text []piece
}

// link is a link inside the binder and where it stands.
type link struct {
	target string
	at     fault.Place
}

// readSheetBlock reads the block named sheet that begins a page: one word,
// blanks, then the rest of the line.
func (r *recorder) readSheetBlock(f fence) {
	seen := map[string]bool{}
	for _, line := range f.lines {
		if line.text == "" {
			continue
		}
		word, rest := line.word()
		if seen[word] {
			r.wrong(line.place(0, len(word)), fmt.Sprintf("%q stands twice in the sheet block", word), "take one away")
		}
		seen[word] = true
		if rest.text == "" {
			r.wrong(line.all(), fmt.Sprintf("%q has nothing after it", word), "write the rest of the line, or take the word away")
			continue
		}
		r.sheetWord(word, line, rest)
	}
	for _, word := range []string{"title", "kind"} {
		if !seen[word] {
			r.wrong(f.info.all(), "the sheet block has no "+word, "every page has a title and a kind")
		}
	}
}

var sheetWords = []string{"title", "kind", "people", "time", "tools", "needs", "feeds", "overnight", "when", "paper"}

func (r *recorder) sheetWord(word string, line, rest span) {
	p := r.page
	texts := map[string]*[]piece{"title": &p.title, "people": &p.people, "time": &p.time, "tools": &p.tools, "overnight": &p.overnight}
	switch {
	case texts[word] != nil:
		*texts[word] = r.pieces(rest)
	case word == "needs":
		p.needs = r.references(rest)
	case word == "feeds":
		p.feeds = r.references(rest)
	case word == "kind":
		p.kind = Kind(rest.text)
		if !slices.Contains(kinds, rest.text) {
			r.wrong(rest.all(), fmt.Sprintf("%q is not a kind of sheet", rest.text), "write one of "+strings.Join(kinds, ", "))
		}
	case word == "when":
		c, good := readCondition("when "+rest.text, rest.all())
		if p.condition = c; !good {
			r.wrong(rest.all(), fmt.Sprintf("%q is not a condition", rest.text), "write KEY or KEY is WORD")
		}
	case word == "paper":
		p.wide = rest.text == "landscape"
		if !p.wide && rest.text != "portrait" {
			r.wrong(rest.all(), fmt.Sprintf("%q is not a way to turn the paper", rest.text), "write landscape, or leave the line out")
		}
	default:
		r.wrong(line.place(0, len(word)), fmt.Sprintf("%q is not a word of the sheet block", word), "write one of "+strings.Join(sheetWords, ", "))
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
	if !strings.Contains(s.text, ";") {
		separator = ','
	}
	for _, part := range s.split(separator, len(s.text)+1) {
		switch {
		case part.text == "":
		case pageName.MatchString(part.text):
			list = append(list, reference{page: part.text})
			r.page.links = append(r.page.links, link{target: part.text, at: part.all()})
		default:
			list = append(list, reference{text: r.pieces(part)})
		}
	}
	return list
}

// link notes a link for the check that it leads somewhere, and refuses one to
// a file: a binder is a single file, and a relative address would carry the
// builder's folder names into print.
func (r *recorder) link(target string, at fault.Place) {
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
	line := span{text: strings.TrimSpace(row.whole), file: row.file, line: row.line, column: 1, whole: row.whole}
	cells := len(line.split('|', len(line.text)+1))
	if strings.HasPrefix(line.text, "|") {
		cells--
	}
	if strings.HasSuffix(line.text, "|") && !strings.HasSuffix(line.text, `\|`) {
		cells--
	}
	if cells != columns {
		r.wrong(line.all(), fmt.Sprintf("the row has %d cells under %d headings", cells, columns), `give each heading one cell; write \| for a bar inside a cell`)
	}
}

// span returns length bytes of the page from offset on, as far as its line goes.
func (p *page) span(offset, length int) span {
	n, found := slices.BinarySearch(p.lines, offset)
	if !found {
		n--
	}
	start := p.lines[n]
	whole, _, _ := strings.Cut(p.source[start:], "\n")
	whole = strings.TrimSuffix(whole, "\r")
	end := min(offset+length, start+len(whole))
	return span{text: p.source[min(offset, end):end], file: p.file, line: n + 1, column: 1 + len([]rune(p.source[start:min(offset, end)])), whole: whole}
}

// word splits a line into its first word and the rest.
func (s span) word() (string, span) {
	end := strings.IndexAny(s.text, " \t")
	if end < 0 {
		end = len(s.text)
	}
	return s.text[:end], s.part(end, len(s.text))
}

// trimmed returns the span without blanks around it.
func (s span) trimmed() span { return s.part(0, len(s.text)) }

func lineStarts(source string) []int {
	starts := []int{0}
	for i := range len(source) {
		if source[i] == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}
