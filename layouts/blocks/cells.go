package blocks

import (
	"strings"

	"strconv"

	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/layouts"
)

// Small makers of columns and cells.

func words(text string) layouts.Column  { return layouts.Column{Text: text} }
func number(text string) layouts.Column { return layouts.Column{Text: text, Align: layouts.Right} }
func big(text string) layouts.Column {
	return layouts.Column{Text: text, Align: layouts.Right, Big: true}
}

func text(s string) layouts.Cell                    { return layouts.Cell{Text: s} }
func head(s string) layouts.Cell                    { return layouts.Cell{Text: s, Kind: layouts.Head} }
func blank(what string) layouts.Cell                { return layouts.Cell{Text: what, Kind: layouts.Blank} }
func tick() layouts.Cell                            { return layouts.Cell{Kind: layouts.Tick} }
func count(n int) layouts.Cell                      { return text(strconv.Itoa(n)) }
func remembered(s string, memory bool) layouts.Cell { return layouts.Cell{Text: s, Memory: memory} }

// cells prints a plan's quantities.
type cells struct{ style measure.Style }

func of(p *calc.Plan) cells { return cells{p.Style} }

func (c cells) length(l measure.Length) layouts.Cell { return text(l.Print(c.style)) }

func (c cells) down(l measure.Length) layouts.Cell {
	s := c.style
	s.Rounding = measure.Down
	return text(l.Print(s))
}

// upper begins a word with a capital, as at the head of a column.
func upper(word string) string { return strings.ToUpper(word[:1]) + word[1:] }

// rod prints a length of the level book as the rod reads, so that its sums can
// be followed on paper.
func (c cells) rod(l measure.Length) layouts.Cell { return c.quantity(measure.Reading(l)) }

func (c cells) quantity(q measure.Quantity) layouts.Cell {
	if q == nil {
		return text("")
	}
	return text(q.Print(c.style))
}
