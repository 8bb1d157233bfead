package blocks

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/calc/order"
	"pierbook/calc/trade"
	"pierbook/content"
)

// Tables of what to buy, to bring and to check at delivery.

func orderTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("What and for what"), number("Buy"), words("Unit"), number("Each"), number("Weight"), number("Price"), number("Cost")}}
	var notes []string
	for _, lines := range p.Order.ByGroup() {
		g := content.Group{Name: string(lines[0].Group)}
		for _, l := range lines {
			g.Rows = append(g.Rows, []content.Cell{remembered(whatOf(l), l.Memory), count(l.Count), text(l.Units()), liftCell(c, l), c.quantity(l.Mass()), priceCell(p, l.Price), costCell(p, l)})
			if note := l.Use + ": " + l.Note; l.Note != "" && !slices.Contains(notes, note) {
				notes = append(notes, note)
			}
		}
		t.Groups = append(t.Groups, g)
	}
	t.Groups = append(t.Groups, content.Group{Name: "In all", Rows: orderTotals(p)})
	if !slices.ContainsFunc(p.Order.Lines, func(l order.Line) bool { return l.Group == order.Stone }) {
		notes = append(notes, "Stone is not in these sums: the holes are not known yet.")
	}
	notes = append(notes, "Timber is weighed as dry as the job's density; fresh from treatment it may weigh half as much again.", liftNote)
	t.Note = strings.Join(notes, " ")
	return t
}

// orderTotals says what all lines come to, and what is not in the sum.
func orderTotals(p *calc.Plan) [][]content.Cell {
	o := p.Order
	row := func(what string, weight, cost content.Cell) []content.Cell {
		return []content.Cell{text(what), text(""), text(""), text(""), weight, text(""), cost}
	}
	strong := func(s string) content.Cell { return content.Cell{Text: s, Strong: true} }
	everything := fmt.Sprintf("%d lines", len(o.Lines))
	if o.Loads() > 0 {
		everything += fmt.Sprintf(", %d loads of %s", o.Loads(), o.Payload.Print(p.Style))
	}
	known := len(o.Lines) - o.Blank
	switch {
	case known == 0:
		return [][]content.Cell{row(everything+"; no price is known", strong(o.Weight.Print(p.Style)), blank("cost"))}
	case o.Blank == 0:
		return [][]content.Cell{row(everything+", all with a price", strong(o.Weight.Print(p.Style)), strong(money(p, o.Cost)))}
	}
	return [][]content.Cell{
		row(everything, strong(o.Weight.Print(p.Style)), text("")),
		row(fmt.Sprintf("%d lines with a price; what the other %d cost comes on top", known, o.Blank), text(""), strong(money(p, o.Cost))),
	}
}

func whatOf(l order.Line) string {
	s := l.What
	if l.Use != "" {
		s += "; for " + l.Use
	}
	if l.Pieces > 0 {
		s += fmt.Sprintf("; %d needed, %d spare", l.Pieces, l.Spare)
	}
	return s
}

func liftCell(c cells, l order.Line) content.Cell {
	cell := c.quantity(l.Each)
	if l.TwoPeople(c.style.System) {
		cell.Text += " ‡"
	}
	return cell
}

func priceCell(p *calc.Plan, price *measure.Money) content.Cell {
	if price == nil {
		return blank("price")
	}
	return text(money(p, *price))
}

func costCell(p *calc.Plan, l order.Line) content.Cell {
	cost, known := l.Cost()
	if !known {
		return blank("cost")
	}
	return text(money(p, cost))
}

func money(p *calc.Plan, m measure.Money) string { return m.Print(p.Style) }

func deliveryTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Came"), words("What"), number("Count"), words("Length"), words("Mark or tag"), words("Straight, sound")}, Size: content.Working}
	for _, l := range p.Order.Lines {
		if l.Group == order.Carriage {
			continue
		}
		long, sound := text(""), text("")
		if l.Long != nil {
			long = tick()
		}
		if l.Group == order.Timber || l.Group == order.Surface || l.Group == order.Hardware {
			sound = tick()
		}
		t.Rows = append(t.Rows, []content.Cell{tick(), text(l.What), text(fmt.Sprintf("%d %s", l.Count, l.Units())), long, tick(), sound})
	}
	return t
}

// tripTable lists the loads of the vehicle.
func tripTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{number("Load"), words("What"), number("Weight"), number("Longest"), words("Driven")}}
	long, over := false, false
	trips := p.Order.Trips
	for i := 0; i < len(trips); {
		trip, last := trips[i], i
		for last+1 < len(trips) && slices.Equal(trips[last+1].Goods, trip.Goods) {
			last++
		}
		name := strconv.Itoa(i + 1)
		if last > i {
			name += " to " + strconv.Itoa(last+1)
		}
		longest := text("")
		if trip.Longest > 0 {
			longest = c.length(trip.Longest)
		}
		long, over = long || trip.Longest > trade.LongStick.In(p.Job.Units), over || trip.Over
		t.Rows = append(t.Rows, []content.Cell{text(name), text(goodsOf(trip)), c.quantity(trip.Weight), longest, tick()})
		i = last + 1
	}
	t.Note = fmt.Sprintf("Loads go by weight, %s each, people in the vehicle not counted in; the placard in the door decides.", p.Order.Payload.Print(p.Style))
	if long {
		t.Note += " Long sticks reach past the bed: tie a flag to their ends, keep to the law on overhang, or have them delivered."
	}
	if over {
		t.Note += " One piece is heavier than a load: have it delivered."
	}
	return t
}

// goodsOf lists what goes on a load: "7 pier block; 2 post cap".
func goodsOf(trip order.Trip) string {
	goods := make([]string, len(trip.Goods))
	for k, g := range trip.Goods {
		goods[k] = g.What
		if g.Count > 0 {
			goods[k] = fmt.Sprintf("%d\u00a0× %s", g.Count, g.What)
		}
	}
	return strings.Join(goods, "; ")
}

func toolTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Tool"), words("For"), words("Own"), words("Hire")}}
	for _, tool := range p.Order.Tools {
		hire := tick()
		if tool.Hire {
			hire.Text = "usual"
		}
		t.Rows = append(t.Rows, []content.Cell{text(tool.What), text(tool.For), tick(), hire})
	}
	return t
}
