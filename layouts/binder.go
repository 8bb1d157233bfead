package layouts

import (
	"bytes"
	"fmt"
	"html/template"
	"io"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/bidi"
	"pierbook/content"
)

// Job is what every sheet says about the job it belongs to.
type Job struct {
	Name, Client, Address, Revision, Issued string
	Progress                                string // planned, surveyed, holes dug … as built
}

// Banner is a warning across the head of a sheet.
type Banner struct {
	Words  string   // in capitals
	Why    string   // one sentence, may be empty
	Sheets []string // names of the sheets that carry it; nil for all
}

// NotForConstruction goes on every sheet when a check fails.
func NotForConstruction(why string) Banner { return Banner{Words: "NOT FOR CONSTRUCTION", Why: why} }

// DoNotDig goes on the digging sheet until the job has a utility ticket.
func DoNotDig(why string) Banner {
	return Banner{Words: "DO NOT DIG", Why: why, Sheets: []string{"dig"}}
}

func (b Banner) on(sheet string) bool { return b.Sheets == nil || slices.Contains(b.Sheets, sheet) }

// Binder is all that the binder's file shows.
type Binder struct {
	Job         Job
	Sheets      []content.Sheet // all of them, also where the file holds one set only
	Banners     []Banner
	Sets        []PrintSet  // that the page offers to print, all sheets first
	Only        content.Set // the set that the file holds; empty for all
	DoubleSided bool        // the margin for binding changes sides
}

// file is what the templates of the binder and the client's file take.
type file struct {
	Head   head
	Keep   string        // under which ticks are kept on a phone
	Choose template.HTML // the control for what is printed
	Job    Job
	List   template.HTML // the sheets as a list of links
	Sheets template.HTML
}

// WriteBinder writes the binder as one HTML file.
func WriteBinder(w io.Writer, b Binder) error {
	return write(w, "binder", b.file(b.pageRules()+b.setRules(), func(s *sheet) { s.of, s.cover = len(b.Sheets), s.Name == "cover" }))
}

// WriteClient writes the client's file. What it may say about money and the
// address is decided by what the sheets and the job given here hold.
func WriteClient(w io.Writer, b Binder) error {
	return write(w, "client", b.file(b.oneFoot(), func(s *sheet) { s.cover = s.before == nil }))
}

// file sets all sheets, each after the finishing touch that the kind of file
// gives it.
func (b Binder) file(rules string, finish func(*sheet)) file {
	title := b.Job.Name
	if b.Job.Revision != "" {
		title += ", revision " + b.Job.Revision
	}
	of := len(b.Sheets)
	if b.Only != "" {
		title += ", " + b.titleOf(b.Only)
		b.Sheets = b.kept()
	}
	set, list := writer{make([]byte, 0, b.size())}, writer{}
	list.markup("<ol>\n")
	for i := range b.Sheets {
		s := b.sheet(i)
		finish(&s)
		if s.of > 0 {
			s.of = of
		}
		s.markup(&set)
		number := strconv.Itoa(s.Number)
		list.markup(`<li value="`, number, `"><a href="#`, s.Name, `"><span class="number">`, number, "</span> ")
		list.text(s.Title)
		list.markup("</a></li>\n")
	}
	list.markup("</ol>")
	if b.Only != "" {
		set.out = linkedWithin(set.out)
	}
	return file{
		Head: newHead(title, rules), Keep: b.Job.Name + "/" + b.Job.Revision, Job: b.Job, Choose: b.chooser(),
		List: template.HTML(list.out), Sheets: template.HTML(set.out),
	}
}

// size returns about how many bytes the sheets take.
func (b Binder) size() int {
	size := 0
	for _, s := range b.Sheets {
		for _, leaf := range s.Leaves {
			size += len(leaf.HTML) + 1500
		}
	}
	return size
}

// sheet returns the i-th sheet with what it says about the others.
func (b Binder) sheet(i int) sheet {
	s := sheet{Sheet: b.Sheets[i], Job: b.Job, only: b.Only, classes: b.classes}
	for j := range b.Sheets {
		if b.Sheets[j].Name == "assumptions" {
			s.assumptions = b.Sheets[j].Number
		}
	}
	for _, banner := range b.Banners {
		if banner.on(s.Name) {
			s.banners = append(s.banners, banner)
		}
	}
	if i > 0 {
		s.before = &b.Sheets[i-1]
	}
	if i+1 < len(b.Sheets) {
		s.after = &b.Sheets[i+1]
	}
	return s
}

// factsPlace returns where people, time, tools, needs and feeds of a sheet
// stand: at the head of its back, or else after everything.
func factsPlace(s content.Sheet) (before, after int) {
	if s.People == "" && s.Time == "" && s.Tools == "" && s.Overnight == "" && len(s.Needs)+len(s.Feeds) == 0 {
		return -1, -1
	}
	if back := slices.IndexFunc(s.Leaves, func(l content.Leaf) bool { return l.Back }); back >= 0 {
		return back, -1
	}
	return -1, len(s.Leaves) - 1
}

// Margins: the left one takes the holes of a ring binder (ISO 838 advises 20 to
// 25 mm; three-hole punches need no more), the others keep clear of what
// printers cannot mark (4 to 7 mm). No size is given, since a fixed one is
// shrunk on any other paper; a turned sheet asks for landscape only.
const (
	turnedPage = "size:landscape;margin:25.4mm 12.7mm 12mm 9mm;page-orientation:rotate-left;"
	bothSides  = "@page :left{margin-left:12.7mm;margin-right:25.4mm}"
)

// pageRules gives each sheet a named page of its own, whose foot repeats job
// and sheet on paper that the sheet runs over to and counts its sides: each
// sheet has a counter of its own, so that one can be exchanged alone. Browsers that print no margin
// boxes lose nothing: the head of each sheet says it all.
func (b Binder) pageRules() string {
	var rules strings.Builder
	if b.DoubleSided {
		rules.WriteString(bothSides)
	}
	for _, s := range b.Sheets {
		turned := ""
		if s.Wide {
			turned = turnedPage
		}
		foot := fmt.Sprintf("%s · %d %s", b.foot(), s.Number, s.Title)
		fmt.Fprintf(&rules, `@page s%[1]d{%[2]scounter-increment:side%[1]d;@bottom-left{content:%[3]s}@bottom-right{content:"%[1]d, side " counter(side%[1]d)}}.s%[1]d{page:s%[1]d}`,
			s.Number, turned, cssString(shortened(foot, footLetters)))
	}
	return rules.String()
}

// footLetters stand on one line of the foot, capitals among them.
const footLetters = 75

// oneFoot gives all paper one foot: sheets with pages of their own could not
// run on, one after the other.
func (b Binder) oneFoot() string {
	return fmt.Sprintf("@page{@bottom-left{content:%s}}", cssString(shortened(b.foot(), footLetters)))
}

// foot names the job and the issue, after what forbids to build: it stands on
// every side, also where a sheet runs over.
func (b Binder) foot() string {
	foot := b.Job.issue()
	for _, banner := range b.Banners {
		if banner.Sheets == nil {
			foot = banner.Words + " · " + foot
		}
	}
	return foot
}

// issue names the job and the issue of its binder.
func (j Job) issue() string {
	if j.Revision == "" {
		return j.Name
	}
	return j.Name + " · revision " + j.Revision
}

// cssString returns s as a string of a style sheet in which every sign that is
// not a plain letter or digit is written by its number.
func cssString(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range s {
		if c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == ' ' {
			b.WriteRune(c)
		} else {
			fmt.Fprintf(&b, "\\%06x ", c) // the blank ends the number
		}
	}
	b.WriteByte('"')
	return b.String()
}

func shortened(s string, most int) string {
	letters := []rune(s)
	if len(letters) <= most {
		return s
	}
	return bidi.Closed(string(letters[:most-1]) + "…")
}

// Entry is one job on the front page.
type Entry struct {
	Folder   string // beside the front page
	Name     string
	Revision string
	Progress string
	Checks   string // such as "24 of 24 pass; worst 0.83"
	Stop     bool   // whether a check fails
	NextHold string // the next hold point, or empty
	Failed   string // why the binder was not made, or empty
}

// WriteFrontPage writes the page that leads to the binders of several jobs.
func WriteFrontPage(w io.Writer, entries []Entry) error {
	return write(w, "front", struct {
		Head    head
		Entries []Entry
	}{newHead("Binders"), entries})
}

// IsFrontPage says whether a page is one that [WriteFrontPage] wrote, also
// before front pages had a mark.
func IsFrontPage(page []byte) bool {
	for _, part := range []string{`<title>Binders</title>`, `<body class="front"`, `<ul class="jobs">`} {
		if !bytes.Contains(page, []byte(part)) {
			return false
		}
	}
	return true
}
