package blocks

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"pierbook/calc"
	"pierbook/calc/check"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
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

// ratioText prints a ratio with as many digits as tell it from one.
func ratioText(r measure.Ratio) string { return r.Print(measure.Style{}) }

// ratioGrid shows the ratios of checks that are made at many places: a row for
// each place, a column for each kind.
func ratioGrid(p *calc.Plan, what string, places []string, families ...string) content.Table {
	t := content.Table{Head: []content.Column{words(what)}, Size: content.Fine}
	ratios := map[string]check.Check{}
	var kinds []string
	for _, c := range p.Strength.Checks {
		family, place, kind, many := c.Repeated()
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
		ratios[place+" "+column] = c
	}
	slices.Sort(kinds)
	for _, kind := range kinds {
		t.Head = append(t.Head, number(strings.ReplaceAll(kind, "_", " ")))
	}
	for _, place := range places {
		row := []content.Cell{head(place)}
		for _, kind := range kinds {
			c, made := ratios[place+" "+kind]
			cell := text("")
			if made {
				cell = content.Cell{Text: ratioText(c.Ratio), Strong: c.Fails()}
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

// workings shows the working of each check that rules, line by line.
func workings(p *calc.Plan, _ content.Call) template.HTML {
	var b strings.Builder
	b.WriteString(`<div class="workings">`)
	for _, check := range p.Strength.Ruling() {
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
		fmt.Fprintf(&b, "<p class=\"line\"><b>%s / %s = %s, %s</b></p></div>\n", escape(printed(p, check.Demand)), escape(printed(p, check.Capacity)), ratioText(check.Ratio), escape(check.Verdict()))
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
