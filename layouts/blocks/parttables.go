package blocks

import (
	"fmt"
	"html/template"
	"strings"

	"pierbook/calc"
	"pierbook/calc/order"
	"pierbook/calc/trade"
	"pierbook/content"
)

// partsOfStep makes the list of parts of each step.
func partsOfStep() map[string]maker {
	makers := map[string]maker{}
	for _, step := range trade.Steps() {
		makers[step.Name] = func(p *calc.Plan, c content.Call) template.HTML { return stepParts(p, step.Name).For(c) }
	}
	return makers
}

// stepParts lists what a step takes: pieces as they are cut, hardware, nails.
func stepParts(p *calc.Plan, step string) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Part"), number("Count"), words("Unit"), number("Length"), number("One weighs")}}
	heavy := false
	for _, part := range p.Order.Parts(step) {
		long, each := text(""), text("")
		if part.Long != nil {
			long = c.length(*part.Long)
		}
		if part.Each > 0 {
			each = lift(c, part)
			heavy = heavy || part.TwoPeople(c.style.System)
		}
		what := part.What
		if part.Names != "" {
			what += ": " + part.Names
		}
		t.Rows = append(t.Rows, []content.Cell{text(what), count(part.Count), text(part.Unit), long, each})
	}
	if heavy {
		t.Note = liftNote
	}
	if heaviest, ok := p.Order.Heaviest(step); ok && heaviest.TwoPeople(p.Job.Units) {
		t.Note += fmt.Sprintf(" The heaviest lift is the %s, %s: %d people.", strings.TrimSpace(heaviest.What), heaviest.Each.Print(p.Style), heaviest.Hands(p.Job.Units))
	}
	return t
}

const liftNote = "‡ lift with two people or more."

func lift(c cells, part order.Part) content.Cell {
	cell := c.quantity(part.Each)
	if part.TwoPeople(c.style.System) {
		cell.Text += " ‡"
		cell.Strong = true
	}
	return cell
}
