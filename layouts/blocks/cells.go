package blocks

import (
	"strings"

	"strconv"

	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/content"
)

// Small makers of columns and cells.

func words(text string) content.Column  { return content.Column{Text: text} }
func number(text string) content.Column { return content.Column{Text: text, Align: content.Right} }
func big(text string) content.Column {
	return content.Column{Text: text, Align: content.Right, Big: true}
}

func text(s string) content.Cell                    { return content.Cell{Text: s} }
func head(s string) content.Cell                    { return content.Cell{Text: s, Kind: content.Head} }
func blank(what string) content.Cell                { return content.Cell{Text: what, Kind: content.Blank} }
func tick() content.Cell                            { return content.Cell{Kind: content.Tick} }
func count(n int) content.Cell                      { return text(strconv.Itoa(n)) }
func remembered(s string, memory bool) content.Cell { return content.Cell{Text: s, Memory: memory} }

// cells prints a plan's quantities.
type cells struct{ style measure.Style }

func of(p *calc.Plan) cells { return cells{p.Style} }

func (c cells) length(l measure.Length) content.Cell { return text(l.Print(c.style)) }

func (c cells) down(l measure.Length) content.Cell {
	s := c.style
	s.Rounding = measure.Down
	return text(l.Print(s))
}

// upper begins a word with a capital, as at the head of a column.
func upper(word string) string { return strings.ToUpper(word[:1]) + word[1:] }

// rod prints a length of the level book as the rod reads, so that its sums can
// be followed on paper.
func (c cells) rod(l measure.Length) content.Cell { return c.quantity(measure.Reading(l)) }

func (c cells) quantity(q measure.Quantity) content.Cell {
	if q == nil {
		return text("")
	}
	return text(q.Print(c.style))
}
