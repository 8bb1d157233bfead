package layouts

import (
	"fmt"
	"html/template"
	"regexp"
	"slices"
	"strings"

	"pierbook/content"
)

// PrintSet is a set of sheets that the page offers to print by itself.
type PrintSet struct {
	Name  content.Set
	Title string // plain text
}

// class returns the class of what is in a set.
func class(set content.Set) string { return "in-" + string(set) }

// classes returns the classes of a sheet or a side of one, each after a blank.
func (b Binder) classes(in func(content.Set) bool) string {
	var all strings.Builder
	for _, set := range b.Sets {
		if set.Name != content.SetAll && in(set.Name) {
			all.WriteString(" " + class(set.Name))
		}
	}
	return all.String()
}

// setRules leave out of print what the chosen set does not hold. They need no
// script: the control on the page itself decides.
func (b Binder) setRules() string {
	var rules strings.Builder
	for _, set := range b.Sets {
		if set.Name != content.SetAll {
			fmt.Fprintf(&rules, `@media print{body:has(#to-print option[value=%q]:checked) :is(.sheet,.leaf):not(.%s){display:none}}`, set.Name, class(set.Name))
		}
	}
	return rules.String()
}

// chooser is the control by which a reader chooses what is printed; empty where
// there is nothing to choose from.
func (b Binder) chooser() template.HTML {
	if len(b.Sets) == 0 || b.Only != "" {
		return ""
	}
	var m writer
	m.markup(`<label class="to-print">To print <select id="to-print">`)
	for _, set := range b.Sets {
		m.markup(`<option value="`, string(set.Name), `">`)
		m.text(set.Title)
		m.markup("</option>")
	}
	m.markup("</select></label>\n")
	return template.HTML(m.out)
}

// titleOf returns what a set is called on the page.
func (b Binder) titleOf(name content.Set) string {
	for _, set := range b.Sets {
		if set.Name == name {
			return set.Title
		}
	}
	return string(name)
}

// kept returns the sheets that have a side in the only set that the file holds.
func (b Binder) kept() []content.Sheet {
	if b.Only == "" || b.Only == content.SetAll {
		return b.Sheets
	}
	return slices.DeleteFunc(slices.Clone(b.Sheets), func(s content.Sheet) bool { return !s.InSet(b.Only) })
}

var (
	anyID   = regexp.MustCompile(` id="([^"]*)"`)
	anyLink = regexp.MustCompile(`<a href="#([^"]*)"`)
)

// linkedWithin takes the address from links to what a file does not hold.
func linkedWithin(markup []byte) []byte {
	there := map[string]bool{}
	for _, id := range anyID.FindAllSubmatch(markup, -1) {
		there[string(id[1])] = true
	}
	return anyLink.ReplaceAllFunc(markup, func(link []byte) []byte {
		if there[string(anyLink.FindSubmatch(link)[1])] {
			return link
		}
		return []byte("<a")
	})
}
