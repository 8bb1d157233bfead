package content

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/figure"
)

// fill writes the table, or nothing when no thing has a row.
func (t rows) fill(f *filler) {
	b := f.binder
	set, known := t.of(b)
	if !known {
		return
	}
	if t.asksFor(b, set) && len(set.Things) > 0 {
		t.write(f, set)
	} else {
		t.leftOutTexts(b)
	}
}

// leftOut sees that a table that this job leaves out asks for what there is.
func (t rows) leftOut(b *binder) {
	if set, known := t.of(b); known {
		t.asksFor(b, set)
		t.leftOutTexts(b)
	}
}

func (t rows) leftOutTexts(b *binder) {
	b.leftOut(t.caption)
	for _, n := range t.notes {
		b.leftOut(n.text)
	}
}

func (t rows) write(f *filler, set figure.Set) {
	b := f.binder
	table := t.table(f, set)
	if len(table.Rows) == 0 && len(table.Groups) == 0 {
		t.leftOutTexts(b)
		return
	}
	f.tables++
	number := strconv.Itoa(b.numbers[f.page.name]) + "." + strconv.Itoa(f.tables)
	f.write(string(table.For(Call{Block: "rows", Argument: t.name, Page: f.page.name, Number: number, Caption: f.markup(t.caption), Words: f.plain(t.caption)})))
	t.note(f)
}

// of returns the set that the rows are of, or reports that there is none.
func (t rows) of(b *binder) (figure.Set, bool) {
	set, known := b.figures.Set(t.set)
	if !known {
		var names []string
		for _, s := range b.figures.Sets() {
			names = append(names, s.Name)
		}
		b.wrong(t.at, fmt.Sprintf("there are no rows of %q", t.set), didYouMean(t.set, names, "write one of "+strings.Join(names, ", ")))
	}
	return set, known
}

func (t rows) note(f *filler) {
	begun := false
	for _, n := range t.notes {
		if !f.binder.holds(n.condition) {
			f.binder.leftOut(n.text)
			continue
		}
		if begun {
			f.write(" ")
		} else {
			f.write(`<p class="note">`)
		}
		begun = true
		f.fillAll(n.text)
	}
	if begun {
		f.write("</p>\n")
	}
}

// table makes the table of a set.
func (t rows) table(f *filler, set figure.Set) Table {
	made := Table{Size: t.size}
	var columns []column
	for _, c := range t.columns {
		if f.binder.holds(c.condition) {
			columns = append(columns, c)
			made.Head = append(made.Head, Column{Text: f.say(c.head, nil).Text, Align: c.kind.align, Big: c.kind.big})
		}
	}
	var groups []Group
	for i := range set.Things {
		thing := &set.Things[i]
		if !t.wants(f.binder, thing) {
			continue
		}
		row := make([]Cell, len(columns))
		for j, c := range columns {
			row[j] = f.cell(c, thing)
			if row[j].Kind == Blank && made.Head[j].Unit == "" {
				made.Head[j].Unit = f.say(c.unit, nil).Text
			}
		}
		name := f.say(t.group, thing).Text
		if n := len(groups); n == 0 || groups[n-1].Name != name {
			groups = append(groups, Group{Name: name})
		}
		g := &groups[len(groups)-1]
		g.Rows = append(g.Rows, row)
	}
	if t.alike && len(columns) > 0 {
		for i := range groups {
			groups[i].Rows = alike(groups[i].Rows)
		}
	}
	if len(t.group) == 0 && len(groups) == 1 {
		made.Rows = groups[0].Rows
	} else {
		made.Groups = groups
	}
	return made
}

// wants says whether a thing has a row.
func (t rows) wants(b *binder, thing *figure.Thing) bool {
	for _, c := range t.only {
		if !b.holdsOf(c, thing) {
			return false
		}
	}
	return true
}

// cell makes the cell of a column for a thing.
func (f *filler) cell(c column, thing *figure.Thing) Cell {
	if !f.binder.holdsOf(c.cellWhen, thing) {
		return Cell{}
	}
	cell := f.say(c.cell, thing)
	if c.kind.cell != Plain {
		cell.Kind = c.kind.cell
	}
	cell.Strong = c.strong.given() && f.binder.holdsOf(c.strong, thing)
	return cell
}

// say puts figures into a phrase. Where one has no value yet, there is a blank
// for it.
func (f *filler) say(p phrase, thing *figure.Thing) Cell {
	var cell Cell
	for _, part := range p {
		switch {
		case part.key == "":
			cell.Text += part.text
			continue
		case part.key == "name" && thing != nil:
			cell.Text += thing.Name
			continue
		}
		fig, known := f.binder.figureOf(part.key, thing)
		if known {
			f.printed = append(f.printed, fig.Key)
		}
		switch {
		case part.means:
			cell.Text += fig.Means
		case fig.Value == nil && known:
			return Cell{Kind: Blank, Text: fig.Means}
		case known:
			cell.Text += fig.Text(f.binder.style)
			cell.Assumed = cell.Assumed || fig.Origin == figure.Assumed
			cell.Memory = cell.Memory || fig.Memory
		}
	}
	cell.Text = strings.TrimSpace(cell.Text)
	f.leaf.Assumed, f.leaf.Memory = f.leaf.Assumed || cell.Assumed, f.leaf.Memory || cell.Memory
	return cell
}

// figureOf returns the figure that a thing has under a key, or else the job.
func (b *binder) figureOf(key string, thing *figure.Thing) (figure.Figure, bool) {
	if thing == nil {
		return b.figures.Get(key)
	}
	return b.figures.Of(*thing, key)
}

// holdsOf says whether a condition holds of a thing.
func (b *binder) holdsOf(c condition, thing *figure.Thing) bool {
	if !c.given() {
		return true
	}
	fig, _ := b.figureOf(c.key, thing)
	return c.met(fig, b.style)
}

// asksFor sees that the table asks for figures that there are, whether or not
// this job has rows for it, and says whether it does.
func (t rows) asksFor(b *binder, set figure.Set) bool {
	good := true
	see := func(key string, at span, own bool) {
		if key == "" || own && (key == "name" || b.hasOf(key, set)) {
			return
		}
		if _, ok := b.figures.Get(key); ok {
			return
		}
		good = false
		if !own {
			b.figure(key, at)
			return
		}
		known := append([]string{"name"}, b.keysOf(set)...)
		b.wrong(at, fmt.Sprintf("there is no figure %q of each of the %s", key, set.Name), didYouMean(key, known, "write one of "+strings.Join(known, ", ")+", or a key of the whole job"))
	}
	seePhrase := func(p phrase, own bool) {
		for _, part := range p {
			see(part.key, part.at, own)
		}
	}
	seePhrase(t.group, true)
	for _, c := range t.only {
		see(c.key, c.at, true)
	}
	for _, c := range t.columns {
		see(c.condition.key, c.condition.at, false)
		seePhrase(c.head, false)
		seePhrase(c.unit, false)
		seePhrase(c.cell, true)
		see(c.cellWhen.key, c.cellWhen.at, true)
		see(c.strong.key, c.strong.at, true)
	}
	return good
}

func (b *binder) hasOf(key string, set figure.Set) bool {
	if set.Has(key) || len(set.Things) == 0 {
		return set.Has(key)
	}
	_, ok := b.figures.Get(set.Things[0].Key + "." + key)
	return ok
}

// keysOf returns the keys that each thing of a set has.
func (b *binder) keysOf(set figure.Set) []string {
	keys := set.Keys()
	if len(set.Things) > 0 {
		for _, f := range b.figures.All() {
			if own, ok := strings.CutPrefix(f.Key, set.Things[0].Key+"."); ok && !slices.Contains(keys, own) {
				keys = append(keys, own)
			}
		}
	}
	return keys
}
