package blocks

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"pierbook/calc"
	"pierbook/calc/crew"
	"pierbook/calc/cutting"
	"pierbook/calc/measure"
	"pierbook/calc/order"
	"pierbook/content"
	"pierbook/layouts"
)

// Tables of what to buy, to bring and to cut, and of the hours.

func orderTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("What"), number("Buy"), words("Unit"), number("Each"), number("Weight"), number("Price"), number("Cost")}}
	for _, lines := range p.Order.ByGroup() {
		g := layouts.Group{Name: string(lines[0].Group)}
		for _, l := range lines {
			g.Rows = append(g.Rows, []layouts.Cell{remembered(whatOf(l), l.Memory), count(l.Count), text(l.Unit), liftCell(c, l), c.quantity(l.Mass()), priceCell(p, l.Price), costCell(p, l)})
		}
		t.Groups = append(t.Groups, g)
	}
	total := fmt.Sprintf("Weight of everything: %s.", p.Order.Weight.Print(p.Style))
	if p.Order.Blank < len(p.Order.Lines) {
		total += fmt.Sprintf(" Cost of the lines with a price: %s; %d of %d lines have none.", money(p, p.Order.Cost), p.Order.Blank, len(p.Order.Lines))
	}
	if p.Order.Loads() > 0 {
		total += fmt.Sprintf(" Loads at %s: %d.", p.Order.Payload.Print(p.Style), p.Order.Loads())
	}
	t.Note = total + " ‡ lift with two people."
	return t
}

func whatOf(l order.Line) string {
	s := l.What
	if l.Pieces > 0 {
		s += fmt.Sprintf(": %d, and %d spare", l.Pieces, l.Spare)
	}
	return s
}

func liftCell(c cells, l order.Line) layouts.Cell {
	cell := c.quantity(l.Each)
	if l.TwoPeople() && l.Group != order.Stone {
		cell.Text += " ‡"
	}
	return cell
}

func priceCell(p *calc.Plan, price *measure.Money) layouts.Cell {
	if price == nil {
		return blank("price")
	}
	return text(money(p, *price))
}

func costCell(p *calc.Plan, l order.Line) layouts.Cell {
	cost, known := l.Cost()
	if !known {
		return blank("cost")
	}
	return text(money(p, cost))
}

func money(p *calc.Plan, m measure.Money) string {
	return m.Print(p.Style)
}

func deliveryTable(p *calc.Plan) layouts.Table {
	t := layouts.Table{Head: []layouts.Column{words("Came"), words("What"), number("Count"), words("Length"), words("Mark or tag"), words("Straight, sound")}, Size: layouts.Working}
	for _, l := range p.Order.Lines {
		long := text("")
		if l.Long != nil {
			long = tick()
		}
		t.Rows = append(t.Rows, []layouts.Cell{tick(), text(l.What), count(l.Count), long, tick(), tick()})
	}
	return t
}

func toolTable(p *calc.Plan) layouts.Table {
	t := layouts.Table{Head: []layouts.Column{words("Tool"), words("For"), words("Own"), words("Hire")}}
	for _, tool := range p.Order.Tools {
		t.Rows = append(t.Rows, []layouts.Cell{text(tool.What), text(tool.For), tick(), tick()})
	}
	return t
}

// stickTable says which stick yields which pieces.
func stickTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Stick"), number("Length"), words("Pieces, hook end first"), number("Left over"), words("Cut")}}
	var notes []string
	for _, cut := range p.Cuts {
		g := layouts.Group{Name: cut.Section.Size + ", for " + cut.Use()}
		for _, like := range cut.Alike() {
			s := like[0]
			pieces := make([]string, len(like))
			for i, one := range like {
				pieces[i] = pieceList(p, one, i == 0)
			}
			g.Rows = append(g.Rows, []layouts.Cell{head(cut.StickNames(like)), c.length(s.Length), text(strings.Join(pieces, "; ")), c.down(s.Left), tick()})
		}
		if len(g.Rows) > 0 {
			t.Groups = append(t.Groups, g)
		}
		notes = append(notes, cut.Section.Size+": "+cut.Proof(p.Style))
	}
	t.Note = strings.Join(notes, " ")
	return t
}

// pieceList names the pieces of a stick, with their lengths where they are not
// the same as on the stick before.
func pieceList(p *calc.Plan, s cutting.CutStick, lengths bool) string {
	parts := make([]string, 0, len(s.Cuts))
	for _, piece := range s.Cuts {
		name := piece.Name
		if lengths {
			name += "\u00a0" + piece.Length.Print(p.Style)
		}
		parts = append(parts, name)
	}
	return strings.Join(parts, ", ")
}

// partsOfStep makes the list of parts of each step.
func partsOfStep() map[string]maker {
	makers := map[string]maker{}
	for _, step := range crew.Steps() {
		makers[step.Name] = func(p *calc.Plan, c content.Call) template.HTML { return stepParts(p, step.Name).For(c) }
	}
	return makers
}

// stepUses names what the lines of the order are for, step by step.
var stepUses = map[string][]string{
	"stone":        {"stone"},
	"blocks":       {"blocks"},
	"posts":        {"posts"},
	"beams":        {"beams", "caps"},
	"ground-cloth": {"cloth"},
	"joists":       {"joists", "rims", "blocking"},
	"surface":      {"surface"},
}

func stepParts(p *calc.Plan, step string) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Part"), number("Count"), words("Unit"), number("Each")}}
	if step == "set-out" {
		b := p.SetOut.Boards
		t.Rows = append(t.Rows,
			[]layouts.Cell{text("batter boards, " + b.BoardLong.Print(p.Style)), count(b.Boards), text("pieces"), text("")},
			[]layouts.Cell{text("stakes"), count(b.Stakes), text("pieces"), text("")},
			[]layouts.Cell{text("string"), c.length(b.StringTotal), text("in all"), text("")})
	}
	for _, l := range p.Order.Lines {
		if slices.ContainsFunc(stepUses[step], func(use string) bool {
			return strings.Contains(l.Part, use) || l.Part == "" && strings.Contains(l.Use, use)
		}) {
			t.Rows = append(t.Rows, []layouts.Cell{text(l.What), count(l.Count), text(l.Unit), liftCell(c, l)})
		}
	}
	if len(t.Rows) > 0 {
		t.Note = "‡ lift with two people."
	}
	return t
}

func hourTable(p *calc.Plan) layouts.Table {
	t := layouts.Table{Head: []layouts.Column{words("Step"), number("Hours of one person"), words("Overnight"), words("Taken")}}
	for _, s := range p.Weekend.Steps {
		taken := blank("hours taken")
		if s.Actual > 0 {
			taken = text(s.Actual.Print(p.Style))
		}
		t.Rows = append(t.Rows, []layouts.Cell{head(s.Title), text(s.Hours.Print()), text(s.Overnight), taken})
	}
	return t
}
