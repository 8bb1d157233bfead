package layouts

import (
	"fmt"
	"html/template"
	"strings"
	"unicode/utf8"

	"pierbook/content"
)

// Align says which way the cells of a column stand.
type Align int

// Words stand left; numbers stand right, so that their digits line up.
const (
	Left Align = iota
	Right
	Centre
)

// Column is one column of a table.
type Column struct {
	Text  string // short: it is repeated on every page the table runs over to
	Unit  string // under the text, or empty
	Align Align
	Big   bool // the number to mark or cut: 18 pt bold on paper
}

// CellKind says what a cell is.
type CellKind int

// The kinds of cell.
const (
	Plain CellKind = iota
	Blank          // ruled, to be written into; Text says what for
	Tick           // a box to tick
	Head           // heads its row
)

// Cell is one cell of a table.
type Cell struct {
	Text    string
	Kind    CellKind
	Strong  bool // stands out: the governing pier, a failing check
	Assumed bool // carries the mark of an assumption
	Memory  bool // carries the mark of something known from memory
}

// Text returns plain cells.
func Text(texts ...string) []Cell {
	cells := make([]Cell, len(texts))
	for i, text := range texts {
		cells[i].Text = text
	}
	return cells
}

// Group is a number of rows that are kept on one page, such as the rows of one
// beam line. Its name stands over them.
type Group struct {
	Name string
	Rows [][]Cell
}

// Size is the size of a table's letters on paper.
type Size int

// A table to work by is 14 pt, one to read 12 pt, one to look things up 10 pt.
const (
	Reading Size = iota
	Working
	Fine
)

// Table is any table of the binder that is made from the plan.
type Table struct {
	Head   []Column
	Rows   [][]Cell // ungrouped rows, before the groups
	Groups []Group
	Size   Size
	Note   string // under the table, or empty
}

// For returns the table as the block that a page asked for. A table without
// rows is left out.
func (t Table) For(c content.Call) template.HTML {
	if len(t.Rows) == 0 && len(t.Groups) == 0 {
		return ""
	}
	var m writer
	m.markup(`<div class="scroll" role="region" tabindex="0" aria-label="table `, c.Number, ": ")
	m.attribute(c.Words)
	m.markup(`"><table class="made `, [...]string{"reading", "working", "fine"}[t.Size], t.many(), ofName(c.Argument), `"><caption><b>Table `, c.Number, "</b> ", string(c.Caption), "</caption>\n<thead>")
	// The caption is not repeated where a table runs on; on paper this row is.
	m.markup(fmt.Sprintf(`<tr class="repeat" aria-hidden="true"><td colspan="%d"><b>Table %s</b> `, max(1, len(t.Head)), c.Number))
	m.text(c.Words)
	m.markup("</td></tr>\n<tr>")
	for _, column := range t.Head {
		m.column(column)
	}
	m.markup("</tr></thead>\n")
	if len(t.Rows) > 0 {
		m.markup("<tbody>")
		t.rows(&m, t.Rows)
		m.markup("</tbody>\n")
	}
	for _, group := range t.Groups {
		t.group(&m, group)
	}
	m.markup("</table></div>\n")
	if t.Note != "" {
		m.markup(`<p class="note">`)
		m.text(t.Note)
		m.markup("</p>\n")
	}
	return template.HTML(m.out)
}

// many is the class of a table whose columns stand close.
func (t Table) many() string {
	if len(t.Head) > 8 {
		return " many"
	}
	return ""
}

// ofName is the class by which the style sheet knows a table.
func ofName(name string) string {
	if name == "" {
		return ""
	}
	return " of-" + name
}

func (m *writer) column(c Column) {
	m.markup(`<th scope="col"`, class(c, Cell{}), ">")
	m.text(c.Text)
	if c.Unit != "" {
		m.markup(` <span class="unit">`)
		m.text(c.Unit)
		m.markup("</span>")
	}
	m.markup("</th>")
}

// group writes rows held together; many of them could not be held on one page
// anyway, and then each row alone is.
func (t Table) group(m *writer, g Group) {
	if len(g.Rows) <= mostKept {
		m.markup(`<tbody class="kept">`)
	} else {
		m.markup("<tbody>")
	}
	if g.Name != "" {
		told := ""
		if g.told() {
			told = " told"
		}
		m.markup(fmt.Sprintf(`<tr class="group%s"><th scope="rowgroup" colspan="%d">`, told, max(1, len(t.Head))))
		m.text(g.Name)
		m.markup("</th></tr>\n")
	}
	t.rows(m, g.Rows)
	m.markup("</tbody>\n")
}

// told says whether the rows' own names tell the group's: A1, A2 and A3 need no
// "Line A" over them where room is short.
func (g Group) told() bool {
	letter, isLine := strings.CutPrefix(g.Name, "Line ")
	for _, row := range g.Rows {
		isLine = isLine && len(row) > 0 && strings.HasPrefix(row[0].Text, letter)
	}
	return isLine
}

// mostKept rows fit on one side of paper with room to spare.
const mostKept = 12

func (t Table) rows(m *writer, rows [][]Cell) {
	for _, row := range rows {
		if len(row) != len(t.Head) {
			panic(fmt.Sprintf("layouts: a row of %d cells under %d columns", len(row), len(t.Head)))
		}
		m.markup("<tr>")
		for i, cell := range row {
			m.cell(t.Head[i], cell)
		}
		m.markup("</tr>\n")
	}
}

func (m *writer) cell(column Column, cell Cell) {
	name, scope := "td", ""
	if cell.Kind == Head {
		name, scope = "th", ` scope="row"`
	}
	m.markup("<", name, scope, class(column, cell), ">")
	switch cell.Kind {
	case Blank:
		m.markup(`<span class="blank" role="img" aria-label="blank: `)
		m.attribute(cell.Text)
		m.markup(`"></span>`)
	case Tick:
		m.markup(`<span class="tick" aria-hidden="true"></span>`)
		m.text(cell.Text)
	default:
		m.text(cell.Text)
	}
	if cell.Assumed {
		m.markup(`<sup class="mark" title="assumed, not given by the job">a</sup>`)
	}
	if cell.Memory {
		m.markup(`<sup class="mark" title="from memory, unconfirmed">m</sup>`)
	}
	m.markup("</", name, ">")
}

// longestNumber is longer than any number with its unit; what is longer holds
// words as well and may run over several lines.
const longestNumber = 16

func class(column Column, cell Cell) string {
	names := ""
	switch column.Align {
	case Right:
		names += " right"
		if utf8.RuneCountInString(cell.Text) > longestNumber {
			names += " long"
		}
	case Centre:
		names += " centre"
	}
	if column.Big {
		names += " cut"
	}
	if cell.Strong {
		names += " strong"
	}
	if names == "" {
		return ""
	}
	return ` class="` + names[1:] + `"`
}

// writer writes markup made here and text from anywhere, the text escaped.
type writer struct{ out []byte }

func (m *writer) markup(parts ...string) {
	for _, part := range parts {
		m.out = append(m.out, part...)
	}
}

func (m *writer) text(s string)      { m.out = content.AppendText(m.out, s) }
func (m *writer) attribute(s string) { m.out = content.AppendAttribute(m.out, s) }
