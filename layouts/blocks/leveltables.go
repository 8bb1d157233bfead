package blocks

import (
	"fmt"

	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/calc/setout"
	"pierbook/content"
)

// Tables of what is read and measured.

// levelTable is the level book, reduced line by line, or blanks for one.
func levelTable(p *calc.Plan) content.Table {
	c := of(p)
	line := p.Figures.Text("instrument.line", p.Style)
	t := content.Table{
		Head: []content.Column{words("Point"), number("Backsight"), number("Reading"), number(upper(line)), number("Height"), number("Share"), number("Used")},
		Note: upper(line) + " = height of the point + backsight; height = " + line + " − reading; share of the misclosure by set-ups.",
	}
	book := p.Book
	if book == nil {
		for _, i := range []int{1, 2, 4} { // the columns to write in
			t.Head[i] = rodNumber(p, t.Head[i].Text)
		}
		t.Groups = []content.Group{{Name: "Set-up 1", Rows: blankLevels(p)}}
		return t
	}
	if net := book.Network; net != nil {
		t.Head[5] = number("Correction")
		t.Note = fmt.Sprintf("%s = height of the point + backsight; height = %s − reading; one correction for each set-up, by least squares over all sights, %d of them more than needed. They show a standard error of %s in one reading.",
			upper(line), line, net.Redundancy, measure.Small(net.Residual).Print(p.Style))
	}
	for _, s := range book.SetUps {
		g := content.Group{Name: fmt.Sprintf("Set-up %d", s.Number)}
		g.Rows = append(g.Rows, []content.Cell{head(pointName(s.From)), c.rod(s.Backsight.Reading), text(""), c.rod(s.Instrument), c.rod(s.FromHeight), text(""), text("")})
		for _, shot := range s.Shots {
			share := text("")
			if shot.Correction != 0 {
				share = c.rod(shot.Correction)
			}
			g.Rows = append(g.Rows, []content.Cell{head(pointName(shot.Point)), text(""), c.rod(shot.Reading), text(""), c.rod(shot.Height), share, c.rod(shot.Height + shot.Correction)})
		}
		t.Groups = append(t.Groups, g)
	}
	return t
}

// routeTable shows the points that were read from more than one set-up: what
// each makes of them, the mean that is used, and how well it is known.
func routeTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Point"), words("From set-up"), number("Corrected height"), number("Used"), number("Standard error")}}
	book := p.Book
	if book == nil || book.Network == nil {
		return t
	}
	for _, point := range book.Points {
		if len(point.From) < 2 {
			continue
		}
		row := []content.Cell{head(point.Name), text(""), text(""), c.rod(point.Height), c.quantity(measure.Small(point.Error))}
		for _, at := range point.From {
			row[1], row[2] = text(fmt.Sprint(book.SetUps[at.SetUp].Number)), c.rod(book.Shot(at).Reduced())
			t.Rows = append(t.Rows, row)
			row = []content.Cell{text(""), text(""), text(""), text(""), text("")}
		}
		for _, setUp := range point.Behind {
			row[1], row[2] = text(fmt.Sprintf("%d, backsight", book.SetUps[setUp].Number)), c.rod(book.SetUps[setUp].FromHeight+book.Network.Corrections[setUp])
			t.Rows = append(t.Rows, row)
			row = []content.Cell{text(""), text(""), text(""), text(""), text("")}
		}
	}
	return t
}

// blankLevels leaves a row for the bench mark, each pier and the closing.
func blankLevels(p *calc.Plan) [][]content.Cell {
	row := func(name string, first bool) []content.Cell {
		back, reading := text(""), blank("reading on "+name)
		if first {
			back, reading = blank("backsight on "+name), text("")
		}
		return []content.Cell{head(name), back, reading, text(""), blank("height of " + name), text(""), text("")}
	}
	rows := [][]content.Cell{row("bench mark", true)}
	for _, pier := range p.Frame.Piers {
		rows = append(rows, row(pier.Name, false))
	}
	return append(rows, row("bench mark again", false))
}

func pointName(name string) string {
	if name == "bench_mark" {
		return "bench mark"
	}
	return name
}

// diagonalTable is the worksheet of the four sides and two diagonals: wanted,
// measured, difference, twice, for the strings, the piers and the beams. What
// the job knows of the strings and of the beams stands in it.
func diagonalTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("From – to"), big("Wanted"), lengthWords(p, "First time"), lengthWords(p, "Off by"), lengthWords(p, "Second time"), lengthWords(p, "Off by")}, Size: content.Working}
	for _, r := range []setout.Rectangle{p.SetOut.Frame, p.SetOut.Piers, p.SetOut.Beams} {
		g := content.Group{Name: r.Title}
		wanted := [6]measure.Length{r.Length, r.Width, r.Length, r.Width, r.Diagonal(), r.Diagonal()}
		for i, want := range wanted {
			name := setout.SideName(r, i)
			row := []content.Cell{head(name), c.length(want), blank("first measuring of " + name), blank("off by"), blank("second measuring of " + name), blank("off by")}
			for _, check := range p.SetOut.Checks() {
				if r != check.Rectangle {
					continue
				}
				at, measured := 2, check.Adjustment.Measured[i]
				if check == p.SetOut.Sides && r == p.SetOut.Frame {
					at = 4 // the frame's faces, measured again on the beams
				}
				row[at], row[at+1] = c.length(measured), c.length(measured-want)
			}
			g.Rows = append(g.Rows, row)
		}
		t.Groups = append(t.Groups, g)
	}
	return t
}

// rackingTable says for strings how far both end strings go on the far boards.
// A string that slides along itself would cross the others where it did.
func rackingTable(p *calc.Plan) content.Table {
	c := of(p)
	r := p.SetOut.Frame
	t := content.Table{Head: []content.Column{number("Diagonals differ by"), big("Both end strings, on the far boards"), number("Far corners go"), number("Long one reads now"), number("Short one")}, Size: content.Working,
		Note: fmt.Sprintf("The strings of %s and %s stay. %s longer: both end strings towards %s. %s longer: both towards %s. Then measure again.",
			setout.SideName(r, 0), setout.SideName(r, 2), setout.SideName(r, 4), r.Corners[3], setout.SideName(r, 5), r.Corners[2])}
	for _, row := range p.SetOut.Racking {
		t.Rows = append(t.Rows, []content.Cell{c.length(row.Difference), c.length(row.FarBoard), c.length(row.Slide), c.length(row.Long), c.length(row.Short)})
	}
	return t
}

// beamRackingTable says for beams how far the last line slides along itself.
func beamRackingTable(p *calc.Plan) content.Table {
	c := of(p)
	r, last := p.SetOut.Beams, p.Frame.Lines[len(p.Frame.Lines)-1].Name
	t := content.Table{Head: []content.Column{number("Diagonals differ by"), big("Slide line " + last), number("Long one reads now"), number("Short one")}, Size: content.Working,
		Note: fmt.Sprintf("Line A stays. %s longer: slide line %s towards %s. %s longer: towards %s. Then measure again.",
			setout.SideName(r, 4), last, r.Corners[3], setout.SideName(r, 5), r.Corners[2])}
	for _, row := range p.SetOut.BeamRacking {
		t.Rows = append(t.Rows, []content.Cell{c.length(row.Difference), c.length(row.Slide), c.length(row.Long), c.length(row.Short)})
	}
	return t
}
