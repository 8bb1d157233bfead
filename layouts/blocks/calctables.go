package blocks

import (
	"fmt"
	"html/template"
	"strings"

	"pierbook/calc"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
	"pierbook/calc/strength"
	"pierbook/content"
	"pierbook/layouts"
)

// Tables of the calculation sheets.

// assumptionTable lists every value that the job did not give, with its source.
func assumptionTable(p *calc.Plan) layouts.Table {
	t := layouts.Table{Head: []layouts.Column{words("Key"), words("What"), words("Taken as"), words("From")}, Size: layouts.Fine}
	shop := layouts.Group{Name: "From the shop's and the yard's files"}
	assumed := layouts.Group{Name: "Assumed: not given by the job"}
	for _, e := range p.Job.Entries() {
		switch e.Origin {
		case figure.Assumed:
			assumed.Rows = append(assumed.Rows, []layouts.Cell{head(e.Path), text(e.Means), text(e.Text), remembered(e.Source, e.Memory)})
		case figure.Shop:
			shop.Rows = append(shop.Rows, []layouts.Cell{head(e.Path), text(e.Means), text(e.Text), text(fmt.Sprintf("%s, line %d", fileName(e.At.File), e.At.Line))})
		}
	}
	for _, f := range p.Figures.All() {
		if _, fromJob := p.Job.Entry(f.Key); f.Origin == figure.Assumed && !fromJob && f.Value != nil {
			assumed.Rows = append(assumed.Rows, []layouts.Cell{head(f.Key), text(f.Means), text(f.Text(p.Style)), remembered(f.Source, f.Memory)})
		}
	}
	for _, g := range []layouts.Group{assumed, shop} {
		if len(g.Rows) > 0 {
			t.Groups = append(t.Groups, g)
		}
	}
	return t
}

// fileName is the last part of a file's name: a binder names no folders.
func fileName(path string) string { return path[strings.LastIndexByte(path, '/')+1:] }

func loadTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Load"), number("Amount"), number("Whole"), words("From")}}
	for _, l := range p.Strength.Loads {
		whole := text("")
		if l.Total != 0 {
			whole = c.quantity(l.Total)
		}
		t.Rows = append(t.Rows, []layouts.Cell{head(l.What), c.quantity(l.Amount), whole, remembered(l.Source, l.Memory)})
	}
	return t
}

// checkTable lists every check, failing ones first.
func checkTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Check"), number("Demand"), number("Capacity"), number("Ratio"), words("Verdict"), words("Clause")}, Size: layouts.Fine}
	for _, check := range p.Strength.Checks {
		ratio := text(fmt.Sprintf("%.2f", float64(check.Ratio)))
		ratio.Strong = check.Fails()
		t.Rows = append(t.Rows, []layouts.Cell{head(check.What), c.quantity(check.Demand), c.quantity(check.Capacity), ratio, text(verdict(check)), remembered(check.Clause, check.Memory)})
	}
	return t
}

func verdict(c strength.Check) string {
	switch {
	case c.Fails():
		return "FAILS"
	case c.Needs != "":
		return "by others: " + c.Needs
	default:
		return "passes"
	}
}

// workings shows the working of each check, line by line.
func workings(p *calc.Plan, c content.Call) template.HTML {
	var b strings.Builder
	for _, check := range p.Strength.Checks {
		if len(check.Working) == 0 || strings.HasPrefix(check.ID, "pier.") && !mostLoaded(p, check) {
			continue
		}
		mark := ""
		if check.Memory {
			mark = `<sup class="mark" title="from memory, unconfirmed">m</sup>`
		}
		fmt.Fprintf(&b, "<div class=\"working kept\"><h4>%s%s</h4>\n<p class=\"note\">%s</p>\n", escape(check.What), mark, escape(check.Clause))
		for _, line := range check.Working {
			fmt.Fprintf(&b, "<p class=\"line\">%s</p>\n", escape(line))
		}
		fmt.Fprintf(&b, "<p class=\"line\"><b>%s / %s = %.2f, %s</b></p></div>\n", escape(printed(p, check.Demand)), escape(printed(p, check.Capacity)), float64(check.Ratio), escape(verdict(check)))
	}
	return template.HTML(b.String())
}

// mostLoaded says whether a pier's check is of the pier whose load path is shown;
// the other piers stand in the table.
func mostLoaded(p *calc.Plan, check strength.Check) bool {
	return strings.HasPrefix(check.ID, "pier."+p.Strength.WorstPier+".") || check.Fails()
}

func escape(s string) string { return template.HTMLEscapeString(s) }

func printed(p *calc.Plan, q measure.Quantity) string {
	if q == nil {
		return ""
	}
	return q.Print(p.Style)
}

// pathTable follows the load of the worst pier down to the soil.
func pathTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Part"), number("Comes on"), number("Goes down"), words("Working")}}
	for _, step := range p.Strength.Path {
		t.Rows = append(t.Rows, []layouts.Cell{head(step.Part), c.quantity(step.Adds), c.quantity(step.Sum), text(step.Working)})
	}
	return t
}

func equilibriumTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Loads"), number("Applied"), number("Reactions"), number("Difference")}}
	for _, b := range p.Strength.Balance {
		t.Rows = append(t.Rows, []layouts.Cell{head(b.Case), c.quantity(b.Applied), c.quantity(b.Reactions), c.quantity(b.Applied - b.Reactions)})
	}
	return t
}

func pierLoadTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Pier"), number("Own weight"), number("Building"), number("Floor load"), number("Snow"), number("Most"), words("Loads together")}, Size: layouts.Fine}
	for _, l := range p.Strength.Piers {
		t.Rows = append(t.Rows, []layouts.Cell{head(l.Name), c.quantity(l.Dead), c.quantity(l.Building), c.quantity(l.Live), c.quantity(l.Snow), c.quantity(l.Most), text(l.Combination)})
	}
	return t
}
