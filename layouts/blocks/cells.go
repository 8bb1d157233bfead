package blocks

import (
	"strconv"

	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/content"
)

// Small makers of columns and cells.

func words(text string) content.Column  { return content.Column{Text: text} }
func number(text string) content.Column { return content.Column{Text: text, Align: content.Right} }

func text(s string) content.Cell                    { return content.Cell{Text: s} }
func head(s string) content.Cell                    { return content.Cell{Text: s, Kind: content.Head} }
func tick() content.Cell                            { return content.Cell{Kind: content.Tick} }
func count(n int) content.Cell                      { return text(strconv.Itoa(n)) }
func remembered(s string, memory bool) content.Cell { return content.Cell{Text: s, Memory: memory} }

// cells prints a plan's quantities.
type cells struct{ style measure.Style }

func of(p *calc.Plan) cells { return cells{p.Style} }

func (c cells) length(l measure.Length) content.Cell { return text(l.Print(c.style)) }

func (c cells) quantity(q measure.Quantity) content.Cell {
	if q == nil {
		return text("")
	}
	return text(q.Print(c.style))
}
