package content

import (
	"fmt"
	"html/template"
	"strings"
	"unicode/utf8"
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

// sizes are the words for them, in pages and in the style sheet.
var sizes = []string{"reading", "working", "fine"}

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
func (t Table) For(c Call) template.HTML {
	if len(t.Rows) == 0 && len(t.Groups) == 0 {
		return ""
	}
	f := &filler{}
	f.write(`<div class="scroll" role="region" tabindex="0" aria-label="table `, c.Number, ": ")
	f.attribute(c.Words)
	f.write(`"><table class="made `, sizes[t.Size], t.many(), ofName(c.Argument), `"><caption><b>Table `, c.Number, "</b> ", string(c.Caption), "</caption>\n<thead>")
	// The caption is not repeated where a table runs on; on paper this row is.
	f.write(fmt.Sprintf(`<tr class="repeat" aria-hidden="true"><td colspan="%d"><b>Table %s</b> `, max(1, len(t.Head)), c.Number))
	f.text(c.Words)
	f.write("</td></tr>\n<tr>")
	for _, column := range t.Head {
		f.column(column)
	}
	f.write("</tr></thead>\n")
	if len(t.Rows) > 0 {
		f.write("<tbody>")
		t.rows(f, t.Rows)
		f.write("</tbody>\n")
	}
	for _, group := range t.Groups {
		t.group(f, group)
	}
	f.write("</table></div>\n")
	if t.Note != "" {
		f.write(`<p class="note">`)
		f.text(t.Note)
		f.write("</p>\n")
	}
	return template.HTML(f.out)
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

func (f *filler) column(c Column) {
	f.write(`<th scope="col"`, class(c, Cell{}), ">")
	f.text(c.Text)
	if c.Unit != "" {
		f.write(` <span class="unit">`)
		f.text(c.Unit)
		f.write("</span>")
	}
	f.write("</th>")
}

// group writes rows held together; many of them could not be held on one page
// anyway, and then each row alone is.
func (t Table) group(f *filler, g Group) {
	if len(g.Rows) <= mostKept {
		f.write(`<tbody class="kept">`)
	} else {
		f.write("<tbody>")
	}
	if g.Name != "" {
		told := ""
		if g.told() {
			told = " told"
		}
		f.write(fmt.Sprintf(`<tr class="group%s"><th scope="rowgroup" colspan="%d">`, told, max(1, len(t.Head))))
		f.text(g.Name)
		f.write("</th></tr>\n")
	}
	t.rows(f, g.Rows)
	f.write("</tbody>\n")
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

func (t Table) rows(f *filler, rows [][]Cell) {
	for _, row := range rows {
		if len(row) != len(t.Head) {
			panic(fmt.Sprintf("layouts: a row of %d cells under %d columns", len(row), len(t.Head)))
		}
		f.write("<tr>")
		for i, cell := range row {
			f.tableCell(t.Head[i], cell)
		}
		f.write("</tr>\n")
	}
}

func (f *filler) tableCell(column Column, cell Cell) {
	name, scope := "td", ""
	if cell.Kind == Head {
		name, scope = "th", ` scope="row"`
	}
	f.write("<", name, scope, class(column, cell), ">")
	switch cell.Kind {
	case Blank:
		f.write(blankStart)
		f.attribute(cell.Text)
		f.write(blankEnd)
	case Tick:
		f.write(tickBox)
		f.text(cell.Text)
	default:
		f.text(cell.Text)
	}
	if cell.Assumed {
		f.write(assumedMark)
	}
	if cell.Memory {
		f.write(fromMemoryMark)
	}
	f.write("</", name, ">")
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
