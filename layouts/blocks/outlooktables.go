package blocks

import (
	"fmt"
	"strconv"
	"strings"

	"pierbook/calc"
	"pierbook/calc/earthwork"
	"pierbook/calc/heights"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
	"pierbook/calc/trade"
	"pierbook/content"
)

// Tables that turn readings into decisions.

// priceTable says what the floor height costs at each of its break points.
func priceTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{number("Floor"), number("Dig, all holes"), number("Stone, all beds"), number("Posts, all"), words("Every step from here adds")}}
	points := p.Heights.Price()
	for i, point := range points {
		more := ""
		if i+1 < len(points) {
			more = stepMore(p, point, points[i+1])
		}
		t.Rows = append(t.Rows, []content.Cell{c.length(point.Floor), c.length(point.Dig), c.length(point.Stone), c.length(point.Posts), text(more)})
	}
	return t
}

// stepMore says what a step of floor adds between two break points.
func stepMore(p *calc.Plan, a, b heights.PricePoint) string {
	step := trade.FloorStep.In(p.Job.Units)
	dig, stone, posts := heights.Per(step, a, b)
	return fmt.Sprintf("%s more: dig %s, stone %s, posts %s", step.Print(p.Style), dig.Print(p.Style), stone.Print(p.Style), posts.Print(p.Style))
}

// nextTable names the piers to read next, and what that may change.
func nextTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Read this pier"), number("Estimate may be off by"), number("Floor may move by"), number("Its hole may move by"), rodWords(p, "Reading")}}
	for i, n := range p.Heights.ReadNext() {
		if i == 4 {
			break
		}
		t.Rows = append(t.Rows, []content.Cell{head(n.Pier), c.length(n.Error), c.quantity(measure.Small(n.Moves)), c.quantity(measure.Small(n.Digs)), blank("reading at " + n.Pier)})
	}
	return t
}

// hardlyEver is a chance that is not worth a row.
const hardlyEver = measure.Percent(0.001)

// chanceTable says how likely a post comes out too short where the ground is estimated.
func chanceTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Pier"), number("Too short as planned"), number("Too short with all means"), number("Floor safe nine times in ten")}}
	high, sure := false, 0
	for _, chance := range p.Heights.ShortChances() {
		if chance.AsPlanned < hardlyEver {
			sure++
			continue
		}
		safe := c.length(chance.Safe)
		if chance.Safe > p.Heights.Floor.Highest {
			safe, high = text(chance.Safe.Print(p.Style)+" ‡"), true
		}
		t.Rows = append(t.Rows, []content.Cell{head(chance.Pier), c.quantity(chance.AsPlanned), c.quantity(chance.AtAll), safe})
	}
	if sure > 0 && len(t.Rows) > 0 {
		t.Note = "At the estimated piers not named here the chance is under one in a thousand. "
	}
	if high {
		t.Note += fmt.Sprintf("‡ over %s, the highest floor that the other piers allow: no floor makes this pier safe. Read it.", p.Heights.Floor.Highest.Print(p.Style))
	}
	return t
}

// freedomTable says what laying the platform otherwise would save, as long as
// nothing stands that it would move.
func freedomTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("If the place allows it"), number("Lowest floor"), number("Lower by")}}
	if p.Heights.Seats != nil || len(p.Job.Measured.PostsCut) > 0 || p.Heights.AsBuilt != nil {
		return t
	}
	for i, move := range p.Heights.Freedom(p.Job, p.Frame) {
		if i == 6 || move.Saves <= 0 {
			break
		}
		t.Rows = append(t.Rows, []content.Cell{head(move.What), c.length(move.Lowest), c.length(move.Saves)})
	}
	return t
}

// standTable names the best place for the instrument.
func standTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Stand here"), number("x"), number("y"), number("Worst pier"), number("May be off by"), number("Piers differ by")}}
	for i, s := range levelling.Stands(p.Job, p.Frame) {
		if i == 3 {
			break
		}
		t.Rows = append(t.Rows, []content.Cell{head(s.Where), c.length(s.X), c.length(s.Y), text(s.Worst.Pier), c.quantity(measure.Small(s.Worst.Error)), c.quantity(measure.Small(s.Spread))})
	}
	return t
}

// standErrorTable is what the class of the tool lets each pier be off by from the
// best place: a row for each beam line, and a row for each pier where a line has
// more of them than stand side by side.
func standErrorTable(p *calc.Plan) content.Table {
	c := of(p)
	stands := levelling.Stands(p.Job, p.Frame)
	if len(stands) == 0 {
		return content.Table{}
	}
	if perLine := p.Frame.PerLine(0); perLine <= sideBySide {
		t := content.Table{Head: []content.Column{words("Pier")}}
		for n := 1; n <= perLine; n++ {
			t.Head = append(t.Head, number(strconv.Itoa(n)))
		}
		for i, e := range stands[0].Piers {
			if i%perLine == 0 {
				t.Rows = append(t.Rows, []content.Cell{head(e.Pier[:1])})
			}
			last := len(t.Rows) - 1
			t.Rows[last] = append(t.Rows[last], c.quantity(measure.Small(e.Error)))
		}
		return t
	}
	t := content.Table{Head: []content.Column{words("Pier"), number("Sight"), number("May be off by")}}
	for _, e := range stands[0].Piers {
		t.Rows = append(t.Rows, []content.Cell{head(e.Pier), c.length(e.Distance), c.quantity(measure.Small(e.Error))})
	}
	return t
}

// sideBySide is how many lengths stand in one row on paper.
const sideBySide = 10

// dropTable is the height of the floor over the ground beside each side.
func dropTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Side"), number("Ground"), number("Drop"), words("Guard")}}
	for _, d := range p.Heights.Drops {
		guard := "no"
		if d.Drop > terrain.GuardDrop {
			guard = "ask: over " + measure.Length(terrain.GuardDrop).Print(p.Style)
		}
		how := ""
		switch {
		case d.Read:
		case d.Beyond:
			how = ", far from any reading: read it"
		default:
			how = ", estimated"
		}
		t.Rows = append(t.Rows, []content.Cell{head(d.Side), text(d.Ground.Print(p.Style) + how), c.length(d.Drop), text(guard)})
	}
	return t
}

// tapedTable says how much too long a tape along the slope reads.
func tapedTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Line"), number("Level"), number("Rises by"), number("On the ground too long by")}}
	for _, l := range p.Ground.TapedLines(p.Frame) {
		t.Rows = append(t.Rows, []content.Cell{head(l.From + "-" + l.To), c.length(l.Level), c.length(l.Rise), c.length(l.TooLong)})
	}
	return t
}

// oddsTable is the order of stone at even odds and at nine in ten.
func oddsTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Order"), number("Loose, with waste"), number("As sold"), number("Units"), number("Weight"), number("Loads"), number("Enough")}}
	odds := p.Earthwork.Odds
	if odds == nil {
		return t
	}
	for _, row := range []struct {
		name  string
		order earthwork.StoneOrder
	}{{"even odds", odds.Even}, {"nine times in ten", odds.NineInTen}} {
		t.Rows = append(t.Rows, []content.Cell{head(row.name), c.quantity(row.order.WithWaste), c.quantity(row.order.Order), c.quantity(row.order.Units), c.quantity(row.order.Mass), c.quantity(row.order.Trips), c.quantity(row.order.Chance)})
	}
	t.Note = fmt.Sprintf("From %d beds known by the bar, %s deep on average, two in three within %s of that, for %d more. What the plan orders is enough %s of the time.",
		odds.Probed, odds.Mean.Print(p.Style), odds.Scatter.Print(p.Style), odds.Unknown, odds.Enough.Print(p.Style))
	if odds.OneMoreSaves > 0 {
		t.Note += fmt.Sprintf(" One more hole probed, if it is like the others, takes %s off what is needed nine times in ten.", odds.OneMoreSaves.Print(p.Style))
	}
	return t
}

// humpTable lists ground that comes too near the frame between the piers.
func humpTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Under"), number("x"), number("y"), number("Gap"), number("Take off")}}
	for _, h := range p.Heights.Humps {
		t.Rows = append(t.Rows, []content.Cell{head(h.Under), c.length(h.X), c.length(h.Y), c.length(h.Gap), c.length(h.Lower)})
	}
	return t
}

// arithmeticTable is the three checks of the level book.
func arithmeticTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Check"), number("One way"), number("The other"), words("Agree")}}
	book := p.Book
	if book == nil {
		return t
	}
	a := book.Checks
	for _, row := range []struct {
		name        string
		left, right measure.Length
	}{
		{"backsights less foresights = last less first height", a.Backsights - a.Foresights, a.Difference},
		{"rises less falls = last less first height", a.Rises - a.Falls, a.Difference},
		{"all sights and heights = " + p.Figures.Text("instrument.line", p.Style) + " times heights taken", a.FullLeft, a.FullRight},
	} {
		agree := "yes"
		if row.left != row.right {
			agree = "NO"
		}
		t.Rows = append(t.Rows, []content.Cell{head(row.name), c.rod(row.left), c.rod(row.right), text(agree)})
	}
	var notes []string
	for _, run := range book.Runs {
		note := "The book does not close: read the bench mark again at the end."
		if run.Closed {
			setUps := "1 set-up"
			if run.Count > 1 {
				setUps = fmt.Sprintf("%d set-ups", run.Count)
			}
			note = fmt.Sprintf("Misclosure %s over %s; allowed %s.", run.Misclosure.Print(p.Style), setUps, run.Allowed.Print(p.Style))
		}
		if first := book.SetUps[run.SetUps[0]].Number; len(book.Runs) > 1 {
			note = fmt.Sprintf("From set-up %d: %s", first, note)
		}
		notes = append(notes, note)
	}
	t.Note = strings.Join(notes, " ")
	return t
}
