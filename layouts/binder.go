package layouts

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"pierbook/content"
)

// Job is what every sheet says about the job it belongs to.
type Job struct {
	Name, Client, Address, Revision, Issued string
	Progress                                string // planned, surveyed, seats read, as built
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
	Sheets      []content.Sheet
	Banners     []Banner
	DoubleSided bool // the margin for binding changes sides
}

// neighbour is the sheet before or after another.
type neighbour struct{ Name, Title string }

// sheet is a filled page with all that its head and foot say.
type sheet struct {
	content.Sheet
	Job                     Job
	Of                      int // sheets in the file; 0 leaves the number out
	Cover                   bool
	Banners                 []Banner
	FactsBefore, FactsAfter int // leaf that the facts of a step stand before or after; -1 for none
	Assumptions             int // number of the sheet that lists them
	Before, After           *neighbour
}

// file is what the templates of the binder and the client's file take.
type file struct {
	Head   head
	Keep   string // under which ticks are kept on a phone
	Job    Job
	Sheets []sheet
}

// WriteBinder writes the binder as one HTML file.
func WriteBinder(w io.Writer, b Binder) error {
	f := newFile(b)
	f.Head = newHead(title(b.Job), pageRules(b))
	return write(w, "binder", f)
}

// WriteClient writes the client's file. What it may say about money and the
// address is decided by what the sheets and the job given here hold.
func WriteClient(w io.Writer, b Binder) error {
	f := newFile(b)
	for i := range f.Sheets {
		f.Sheets[i].Of = 0
		f.Sheets[i].Cover = i == 0
	}
	f.Head = newHead(title(b.Job), pageRules(b))
	return write(w, "client", f)
}

func title(j Job) string {
	if j.Revision == "" {
		return j.Name
	}
	return j.Name + ", revision " + j.Revision
}

func newFile(b Binder) file {
	f := file{Job: b.Job, Keep: b.Job.Name + "/" + b.Job.Revision}
	assumptions := 0
	for _, s := range b.Sheets {
		if s.Name == "assumptions" {
			assumptions = s.Number
		}
	}
	for i, s := range b.Sheets {
		set := sheet{Sheet: s, Job: b.Job, Of: len(b.Sheets), Cover: s.Name == "cover", Assumptions: assumptions}
		set.FactsBefore, set.FactsAfter = factsPlace(s)
		for _, banner := range b.Banners {
			if banner.on(s.Name) {
				set.Banners = append(set.Banners, banner)
			}
		}
		if i > 0 {
			set.Before = &neighbour{b.Sheets[i-1].Name, b.Sheets[i-1].Title}
		}
		if i+1 < len(b.Sheets) {
			set.After = &neighbour{b.Sheets[i+1].Name, b.Sheets[i+1].Title}
		}
		f.Sheets = append(f.Sheets, set)
	}
	return f
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
	turnedPage = "size:landscape;margin:25.4mm 12.7mm 15mm 12.7mm;page-orientation:rotate-left;"
	bothSides  = "@page :left{margin-left:12.7mm;margin-right:25.4mm}"
)

// pageRules gives each sheet a named page of its own, whose foot repeats job
// and sheet on paper that the sheet runs over to. Browsers that print no margin
// boxes lose nothing: the head of each sheet says it all.
func pageRules(b Binder) string {
	var rules strings.Builder
	if b.DoubleSided {
		rules.WriteString(bothSides)
	}
	for _, s := range b.Sheets {
		turned := ""
		if s.Wide {
			turned = turnedPage
		}
		foot := b.Job.Name
		if b.Job.Revision != "" {
			foot += " · revision " + b.Job.Revision
		}
		foot += fmt.Sprintf(" · %d %s", s.Number, s.Title)
		fmt.Fprintf(&rules, "@page s%d{%s@bottom-left{content:%s}}.s%d{page:s%d}", s.Number, turned, cssString(shortened(foot, 90)), s.Number, s.Number)
	}
	return rules.String()
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
	return string(letters[:most-1]) + "…"
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
