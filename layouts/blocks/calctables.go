package blocks

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"pierbook/calc"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
	"pierbook/calc/strength"
	"pierbook/content"
)

// Tables of the calculation sheets.

// assumptionTable lists every value that the job did not give, with its source.
func assumptionTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Key"), words("What"), words("Taken as"), words("From")}, Size: content.Fine}
	shop := content.Group{Name: "From the shop's and the yard's files"}
	assumed := content.Group{Name: "Assumed: not given by the job"}
	for _, e := range p.Job.Entries() {
		switch e.Origin {
		case figure.Assumed:
			assumed.Rows = append(assumed.Rows, []content.Cell{head(e.Path), text(e.Means), text(e.Text), remembered(e.Source, e.Memory)})
		case figure.Shop:
			shop.Rows = append(shop.Rows, []content.Cell{head(e.Path), text(e.Means), text(e.Text), text(fmt.Sprintf("%s, line %d", fileName(e.At.File), e.At.Line))})
		}
	}
	for _, f := range p.Figures.All() {
		_, fromJob := p.Job.Entry(f.Key)
		if len(f.From) == 1 && !fromJob {
			_, fromJob = p.Job.Entry(f.From[0]) // a shorter name for a key of the job
		}
		if f.Origin == figure.Assumed && !fromJob && f.Value != nil {
			assumed.Rows = append(assumed.Rows, []content.Cell{head(f.Key), text(f.Means), text(f.Text(p.Style)), remembered(f.Source, f.Memory)})
		}
	}
	for _, g := range []content.Group{assumed, shop} {
		if len(g.Rows) > 0 {
			t.Groups = append(t.Groups, g)
		}
	}
	return t
}

// fileName is the last part of a file's name: a binder names no folders.
func fileName(path string) string { return path[strings.LastIndexByte(path, '/')+1:] }

func loadTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Load"), number("Amount"), number("Whole"), words("From")}}
	for _, l := range p.Strength.Loads {
		whole := text("")
		if l.Total != 0 {
			whole = c.quantity(l.Total)
		}
		t.Rows = append(t.Rows, []content.Cell{head(l.What), c.quantity(l.Amount), whole, remembered(l.Source, l.Memory)})
	}
	return t
}

// checkTable lists the checks that rule, failing ones first: of checks that are
// made at every pier or on every line the worst one; the others stand in the
// grids of ratios.
func checkTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Check"), number("Demand"), number("Capacity"), number("Ratio"), words("Verdict"), words("Clause")}, Size: content.Fine}
	for _, check := range ruling(p) {
		ratio := text(ratioText(check.Ratio))
		ratio.Strong = check.Fails()
		t.Rows = append(t.Rows, []content.Cell{head(check.What), c.quantity(check.Demand), c.quantity(check.Capacity), ratio, text(verdict(check)), remembered(check.Clause, check.Memory)})
	}
	return t
}

// ratioText prints a ratio with as many digits as tell it from one.
func ratioText(r measure.Ratio) string { return r.Print(measure.Style{}) }

// repeated splits the id of a check that is made at many places, such as
// pier.B3.soil, into its family, place and kind.
func repeated(id string) (family, place, kind string, ok bool) {
	parts := strings.SplitN(id, ".", 3)
	if len(parts) == 3 && (parts[0] == "pier" || parts[0] == "post" || parts[0] == "beam") {
		return parts[0], parts[1], parts[2], true
	}
	return "", "", "", false
}

// ruling returns failing checks and, of every kind, the worst. The checks come
// sorted, so the first of a kind is its worst.
func ruling(p *calc.Plan) []strength.Check {
	var list []strength.Check
	seen := map[string]bool{}
	for _, check := range p.Strength.Checks {
		family, _, kind, many := repeated(check.ID)
		if many && seen[family+kind] && !check.Fails() {
			continue
		}
		seen[family+kind] = true
		list = append(list, check)
	}
	return list
}

// ratioGrid shows the ratios of checks that are made at many places: a row for
// each place, a column for each kind.
func ratioGrid(p *calc.Plan, what string, places []string, families ...string) content.Table {
	t := content.Table{Head: []content.Column{words(what)}, Size: content.Fine}
	ratios := map[string]strength.Check{}
	var kinds []string
	for _, check := range p.Strength.Checks {
		family, place, kind, many := repeated(check.ID)
		if !many || !slices.Contains(families, family) {
			continue
		}
		column := kind
		if family == "post" {
			column = "post " + kind
		}
		if !slices.Contains(kinds, column) {
			kinds = append(kinds, column)
		}
		ratios[place+" "+column] = check
	}
	slices.Sort(kinds)
	for _, kind := range kinds {
		t.Head = append(t.Head, number(strings.ReplaceAll(kind, "_", " ")))
	}
	for _, place := range places {
		row := []content.Cell{head(place)}
		for _, kind := range kinds {
			check, made := ratios[place+" "+kind]
			cell := text("")
			if made {
				cell = content.Cell{Text: ratioText(check.Ratio), Strong: check.Fails()}
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, row)
	}
	if len(kinds) == 0 {
		t.Rows = nil
	}
	return t
}

func pierCheckTable(p *calc.Plan) content.Table {
	var places []string
	for _, pier := range p.Frame.Piers {
		places = append(places, pier.Name)
	}
	return ratioGrid(p, "Pier", places, "pier", "post")
}

func beamCheckTable(p *calc.Plan) content.Table {
	var places []string
	for _, line := range p.Frame.Lines {
		places = append(places, line.Name)
	}
	return ratioGrid(p, "Line", places, "beam")
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

// workings shows the working of each check that rules, line by line.
func workings(p *calc.Plan, _ content.Call) template.HTML {
	var b strings.Builder
	b.WriteString(`<div class="workings">`)
	for _, check := range ruling(p) {
		if len(check.Working) == 0 {
			continue
		}
		mark := ""
		if check.Memory {
			mark = `<sup class="mark" title="from memory, unconfirmed">m</sup>`
		}
		fmt.Fprintf(&b, "<div class=\"working kept\"><h4>%s%s</h4>\n<p class=\"clause\">%s</p>\n", escape(check.What), mark, escape(check.Clause))
		for _, line := range check.Working {
			fmt.Fprintf(&b, "<p class=\"line\">%s</p>\n", escape(line))
		}
		fmt.Fprintf(&b, "<p class=\"line\"><b>%s / %s = %s, %s</b></p></div>\n", escape(printed(p, check.Demand)), escape(printed(p, check.Capacity)), ratioText(check.Ratio), escape(verdict(check)))
	}
	b.WriteString("</div>\n")
	return template.HTML(b.String())
}

func escape(s string) string { return template.HTMLEscapeString(s) }

func printed(p *calc.Plan, q measure.Quantity) string {
	if q == nil {
		return ""
	}
	return q.Print(p.Style)
}

// pathTable follows the load of the worst pier down to the soil.
func pathTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Part"), number("Comes on"), number("Goes down"), words("Working")}}
	for _, step := range p.Strength.Path {
		t.Rows = append(t.Rows, []content.Cell{head(step.Part), c.quantity(step.Adds), c.quantity(step.Sum), text(step.Working)})
	}
	return t
}

func equilibriumTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Loads"), number("Applied"), number("Reactions"), number("Difference")}}
	for _, b := range p.Strength.Balance {
		t.Rows = append(t.Rows, []content.Cell{head(b.Case), c.quantity(b.Applied), c.quantity(b.Reactions), c.quantity(b.Difference())})
	}
	return t
}

func pierLoadTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Pier"), number("Own weight"), number("Building"), number("Floor load"), number("Snow"), number("Most"), words("Loads together")}, Size: content.Fine}
	for _, l := range p.Strength.Piers {
		t.Rows = append(t.Rows, []content.Cell{head(l.Name), c.quantity(l.Dead), c.quantity(l.Building), c.quantity(l.Live), c.quantity(l.Snow), c.quantity(l.Most), text(l.Combination)})
	}
	return t
}
