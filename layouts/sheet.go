package layouts

import (
	"html/template"
	"strconv"
	"strings"

	"pierbook/content"
)

// sheet is a filled page with all that its head and foot say.
type sheet struct {
	content.Sheet
	Job           Job
	of            int // sheets in the file; 0 leaves the number out
	cover         bool
	banners       []Banner
	assumptions   int // number of the sheet that lists them
	before, after *content.Sheet
	only          content.Set                            // the set that is written; empty for all
	classes       func(in func(content.Set) bool) string // for the sets that a sheet or a side is in
}

// markup writes a sheet. It is written without a template, since a binder has
// some thirty of them and nothing in them is conditional on where it stands:
// text is escaped by the writer, attributes hold names of pages and numbers.
func (s sheet) markup(m *writer) {
	turned := ""
	if s.Wide {
		turned = " turned"
	}
	m.markup(`<article class="sheet kind-`, string(s.Kind), turned, " s", strconv.Itoa(s.Number), s.classes(s.InSet), `" id="`, s.Name, "\">\n")
	before, after := factsPlace(s.Sheet)
	for i, leaf := range s.Leaves {
		if s.only != "" && !leaf.InSet(s.only) {
			continue
		}
		if leaf.Back {
			m.markup(`<section class="leaf reverse`)
		} else {
			m.markup(`<section class="leaf`)
		}
		m.markup(s.classes(leaf.InSet), "\">\n")
		s.running(m, i, leaf)
		s.heading(m, i)
		if i == before {
			s.facts(m)
		}
		m.markup(string(leaf.HTML), "\n")
		if i == after {
			s.facts(m)
		}
		m.markup("</section>\n")
	}
	m.markup(`<p class="turn">`)
	if s.before != nil {
		m.link(s.before.Name, "‹ "+s.before.Title)
	}
	m.markup(" ")
	if s.after != nil {
		m.link(s.after.Name, s.after.Title+" ›")
	}
	m.markup("</p>\n</article>\n")
}

// link writes a link to another sheet.
func (m *writer) link(page, text string) {
	m.markup(`<a href="#`, page, `">`)
	m.text(text)
	m.markup("</a>")
}

// running writes the line over each leaf: whose it is, the key to the marks on
// it, and which sheet it is.
func (s sheet) running(m *writer, i int, leaf content.Leaf) {
	m.markup(`<div class="running"><p><b>`)
	m.text(s.Job.Name)
	m.markup("</b>")
	if s.Job.Revision != "" {
		m.text(" · revision " + s.Job.Revision)
	}
	if s.Job.Progress != "" {
		m.text(" · " + s.Job.Progress)
	}
	m.markup("</p>\n")
	s.marks(m, leaf)
	m.markup("<p>")
	if s.of > 0 {
		m.markup("Sheet ", strconv.Itoa(s.Number), " of ", strconv.Itoa(s.of))
		switch {
		case leaf.Back:
			m.markup(", back")
		case i > 0:
			m.markup(", continued")
		}
	}
	m.markup("</p></div>\n")
}

func (s sheet) marks(m *writer, leaf content.Leaf) {
	if !leaf.Assumed && !leaf.Memory {
		return
	}
	m.markup("<p>")
	if leaf.Assumed {
		m.markup("<b>a</b> assumed")
		if s.assumptions > 0 {
			m.markup(", see sheet ", strconv.Itoa(s.assumptions))
		}
	}
	if leaf.Assumed && leaf.Memory {
		m.markup(" · ")
	}
	if leaf.Memory {
		m.markup("<b>m</b> from memory")
	}
	m.markup("</p>\n")
}

func (s sheet) heading(m *writer, i int) {
	switch {
	case i > 0:
		m.markup(`<div class="heading again"><p>`)
		m.text(s.Title)
		m.markup("</p>")
		s.warnings(m)
		m.markup("</div>\n")
	case s.cover:
		s.coverHeading(m)
		s.warnings(m)
	default:
		m.markup(`<div class="heading"><span class="numeral" aria-hidden="true">`, strconv.Itoa(s.Number), "</span><h2>")
		m.text(s.Title)
		m.markup("</h2>")
		s.warnings(m)
		m.markup("</div>\n")
	}
}

// coverHeading writes what the binder is, for whom, and how far the job is.
func (s sheet) coverHeading(m *writer) {
	m.markup(`<div class="cover"><p class="kind">`)
	m.text(s.Title)
	m.markup("</p>\n<h1>")
	m.text(s.Job.Name)
	m.markup("</h1>\n<dl class=\"whom\">")
	for _, fact := range [][2]string{{"For", s.Job.Client}, {"At", s.Job.Address}, {"Revision", s.Job.Revision}, {"Issued", s.Job.Issued}, {"Progress", s.Job.Progress}} {
		if fact[1] != "" {
			m.markup("<div><dt>", fact[0], "</dt><dd>")
			m.text(fact[1])
			m.markup("</dd></div>")
		}
	}
	m.markup("</dl></div>\n")
}

func (s sheet) warnings(m *writer) {
	if len(s.banners) == 0 {
		return
	}
	m.markup(`<div class="banners">`)
	for _, b := range s.banners {
		m.markup(`<div class="banner" role="note"><p class="shout">`)
		m.text(b.Words)
		m.markup("</p>")
		if b.Why != "" {
			m.markup("<p>")
			m.text(s.why(b))
			m.markup("</p>")
		}
		m.markup("</div>")
	}
	m.markup("</div>\n")
}

// why returns the reason of a warning: all of it on the cover, its first sentence
// on the sheets of the work.
func (s sheet) why(b Banner) string {
	first, _, more := strings.Cut(b.Why, ". ")
	if s.cover || !more {
		return b.Why
	}
	return first + "."
}

// facts writes what a step takes and how it hangs together with the others.
func (s sheet) facts(m *writer) {
	m.markup(`<dl class="facts">`)
	for _, fact := range []struct {
		name string
		html template.HTML
	}{{"People", s.People}, {"Time", s.Time}, {"Tools", s.Tools}, {"May be left overnight", s.Overnight}} {
		if fact.html != "" {
			m.markup("<div><dt>", fact.name, "</dt><dd>", string(fact.html), "</dd></div>")
		}
	}
	m.references("Needs first", s.Needs)
	m.references("Leads on to", s.Feeds)
	m.markup("</dl>\n")
}

func (m *writer) references(name string, list []content.Reference) {
	if len(list) == 0 {
		return
	}
	m.markup("<div><dt>", name, "</dt><dd>")
	for i, r := range list {
		if i > 0 {
			m.markup("; ")
		}
		if r.Number == 0 {
			m.markup(string(r.Text))
			continue
		}
		m.markup(`<a href="#`, r.Page, `">`, strconv.Itoa(r.Number), " ", string(r.Text), "</a>")
	}
	m.markup("</dd></div>")
}
