package blocks

import (
	"encoding/xml"
	"html"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/content"
)

var builtIn = sync.OnceValue(func() *content.Book {
	book, _ := content.Read(content.BuiltIn())
	return book
})

// sheetsOf binds the built-in pages for a plan, the client's own after the others.
func sheetsOf(t testing.TB, p *calc.Plan) []content.Sheet {
	t.Helper()
	made, trouble := Of(p)
	sheets, faults := builtIn().Bind(p.Figures, p.Style, made)
	require.NoError(t, faults.Err())
	client, faults := builtIn().BindClient(p.Figures, p.Style, made)
	require.NoError(t, faults.Err())
	require.NoError(t, trouble.Err)
	return append(sheets, client...)
}

// onPaper reads a table back from the first sheet that prints it, known by the
// name that the style sheet has for it; an empty table when none does.
func onPaper(t testing.TB, p *calc.Plan, name string) content.Table {
	t.Helper()
	for _, s := range sheetsOf(t, p) {
		for _, leaf := range s.Leaves {
			if table, found := tableIn(t, string(leaf.HTML), name); found {
				return table
			}
		}
	}
	return content.Table{}
}

// markedUp finds a table with its note.
var markedUp = regexp.MustCompile(`(?s)<table class="made [^"]*of-([a-z0-9-]+)">.*?</table></div>\s*(<p class="note">.*?</p>)?`)

func tableIn(t testing.TB, page, name string) (content.Table, bool) {
	t.Helper()
	for _, m := range markedUp.FindAllStringSubmatch(page, -1) {
		if m[1] == name {
			note := html.UnescapeString(regexp.MustCompile(`<sup.*?</sup>|<[^>]*>`).ReplaceAllString(m[2], ""))
			whole, _, _ := strings.Cut(m[0], "</div>")
			table := readTable(t, whole)
			table.Note = note
			return table, true
		}
	}
	return content.Table{}, false
}

// markup is an element of a table as the XML library reads it.
type markup struct {
	XMLName xml.Name
	Class   string   `xml:"class,attr"`
	Label   string   `xml:"aria-label,attr"`
	Inside  []markup `xml:",any"`
	Text    string   `xml:",chardata"`
	Inner   string   `xml:",innerxml"`
}

func readTable(t testing.TB, text string) content.Table {
	t.Helper()
	var whole markup
	decoder := xml.NewDecoder(strings.NewReader(text))
	decoder.Entity = xml.HTMLEntity
	require.NoError(t, decoder.Decode(&whole))
	var table content.Table
	for _, part := range whole.Inside {
		var group content.Group
		for _, tr := range part.Inside {
			switch {
			case part.XMLName.Local == "thead" && tr.Class != "repeat":
				for _, cell := range tr.Inside {
					column := content.Column{Text: strings.TrimSpace(cell.Text)}
					for _, unit := range cell.Inside {
						column.Unit = unit.Text
					}
					table.Head = append(table.Head, column)
				}
			case part.XMLName.Local != "tbody":
			case strings.HasPrefix(tr.Class, "group"):
				group.Name = tr.Inside[0].Text
			default:
				group.Rows = append(group.Rows, readRow(tr))
			}
		}
		if group.Name != "" {
			table.Groups = append(table.Groups, group)
		} else {
			table.Rows = append(table.Rows, group.Rows...)
		}
	}
	return table
}

func readRow(tr markup) []content.Cell {
	var row []content.Cell
	for _, td := range tr.Inside {
		cell := content.Cell{Text: td.Text, Strong: strings.Contains(td.Class, "strong")}
		if td.XMLName.Local == "th" {
			cell.Kind = content.Head
		}
		for _, inside := range td.Inside {
			switch inside.Class {
			case "blank":
				cell = content.Cell{Kind: content.Blank, Text: strings.TrimPrefix(inside.Label, "blank: ")}
			case "tick":
				cell.Kind = content.Tick
			}
		}
		row = append(row, cell)
	}
	return row
}
