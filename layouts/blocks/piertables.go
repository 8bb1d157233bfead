package blocks

import (
	"fmt"

	"pierbook/calc"
	"pierbook/calc/ground"
	"pierbook/calc/measure"
	"pierbook/layouts"
)

// Tables with a row for each pier, grouped by beam line.

// pierRow makes the row of one pier; known is nil before the heights are.
type pierRow func(pier ground.Pier) []layouts.Cell

func byLine(p *calc.Plan, row pierRow) []layouts.Group {
	groups := make([]layouts.Group, len(p.Frame.Lines))
	for i, line := range p.Frame.Lines {
		groups[i].Name = "Line " + line.Name
	}
	for i, pier := range p.Frame.Piers {
		g := &groups[pier.Line]
		g.Rows = append(g.Rows, row(p.Ground.Piers[i]))
	}
	return groups
}

// groundCell shows a ground height and whether it was read.
func groundCell(c cells, pier ground.Pier) layouts.Cell {
	switch {
	case pier.Level == nil:
		return blank("ground at " + pier.Name)
	case pier.Level.Read:
		return c.length(pier.Level.Height)
	case pier.Level.Beyond:
		return text(pier.Level.Height.Print(c.style) + " estimated, beyond the readings")
	default:
		return text(fmt.Sprintf("%s estimated ± %s", pier.Level.Height.Print(c.style), pier.Level.Error.Print(c.style)))
	}
}

func pierTable(p *calc.Plan) layouts.Table {
	c := of(p)
	return layouts.Table{
		Head: []layouts.Column{words("Pier"), number("x"), number("y"), number("Ground"), number("Dig"), number("Stone"), number("Seat"), number("Post")},
		Size: layouts.Reading,
		Groups: byLine(p, func(pier ground.Pier) []layouts.Cell {
			row := []layouts.Cell{head(pier.Name), c.length(pier.X), c.length(pier.Y), groundCell(c, pier)}
			if h := pier.Hole; h != nil {
				return append(row, c.length(h.Dig), c.length(h.Stone), c.length(h.Seat), c.length(h.Post))
			}
			return append(row, blank("dig"), blank("stone"), blank("seat"), blank("post"))
		}),
		Note: "x from the hook end, y from side A, to the centre of the pier; heights over the bench mark's datum.",
	}
}

func holeTable(p *calc.Plan) layouts.Table {
	c := of(p)
	probes := p.Job.Ground.Probes
	return layouts.Table{
		Head: []layouts.Column{words("Pier"), big("Dig"), number("Least"), number("Most"), words("Bar found"), words("Dug"), words("Firm, rock, water")},
		Size: layouts.Working,
		Groups: byLine(p, func(pier ground.Pier) []layouts.Cell {
			found := ""
			if probe, ok := probes[pier.Name]; ok {
				found = probe.Found + " at " + probe.Depth.Print(c.style)
			}
			if h := pier.Hole; h != nil {
				return []layouts.Cell{head(pier.Name), c.length(h.Dig), c.length(h.Least), c.down(h.Most), text(found), blank("depth dug at " + pier.Name), blank("what was found at " + pier.Name)}
			}
			return []layouts.Cell{head(pier.Name), blank("depth wanted"), blank("least"), blank("most"), text(found), blank("depth dug at " + pier.Name), blank("what was found at " + pier.Name)}
		}),
	}
}

func stoneTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{
		Head: []layouts.Column{words("Pier"), big("Bed, tamped"), number("Layers"), number("Each, loose"), number("Top below ground"), number("Used by here"), words("Used")},
		Size: layouts.Working,
		Note: "“Used by here” is loose stone with waste from the first pier to this one: when your count runs ahead of it, the order will not last.",
	}
	beds := map[string]ground.PierStone{}
	if p.Ground.Stone != nil {
		for _, bed := range p.Ground.Stone.Piers {
			beds[bed.Name] = bed
		}
	}
	t.Groups = byLine(p, func(pier ground.Pier) []layouts.Cell {
		bed, known := beds[pier.Name]
		if !known {
			return []layouts.Cell{head(pier.Name), blank("bed"), blank("layers"), blank("each layer"), blank("top of the bed"), blank("stone by here"), blank("used at " + pier.Name)}
		}
		return []layouts.Cell{head(pier.Name), c.length(bed.Bed), count(bed.Layers), c.length(bed.Layer), c.length(pier.Hole.Cover()), c.quantity(bed.UsedSoFar), blank("used at " + pier.Name)}
	})
	return t
}

// postTable is the sum that works on paper: post = printed number + reading on
// the seat − today's reading on the bench mark.
func postTable(p *calc.Plan) layouts.Table {
	c := of(p)
	return layouts.Table{
		Head: []layouts.Column{words("Pier"), number("Expected post"), big("Printed number"), words("+ seat reading"), words("− bench mark"), words("= post"), words("Again")},
		Size: layouts.Working,
		Groups: byLine(p, func(pier ground.Pier) []layouts.Cell {
			expected, printed := blank("expected post"), blank("printed number")
			if pier.Hole != nil {
				expected, printed = c.length(pier.Hole.Post), c.length(printedNumber(p, pier))
			}
			return []layouts.Cell{head(pier.Name), expected, printed, blank("reading on the seat of " + pier.Name), blank("today's bench mark"), blank("post " + pier.Name), blank("worked again")}
		}),
	}
}

// printedNumber is the top of the post over the bench mark.
func printedNumber(p *calc.Plan, _ ground.Pier) measure.Length {
	return p.Ground.Floor.PostTops - p.Job.Ground.BenchMark.Height
}

func exceptionTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Pier"), words("Exception"), words("Reason")}}
	for _, pier := range p.Frame.Piers {
		e, ok := p.Job.Piers[pier.Name]
		if !ok {
			continue
		}
		what := ""
		if e.Bed != nil {
			what = "bed of at least " + e.Bed.Print(c.style)
		}
		if e.Deepest != nil {
			if what != "" {
				what += "; "
			}
			what += "dug no deeper than " + e.Deepest.Print(c.style)
		}
		t.Rows = append(t.Rows, []layouts.Cell{head(pier.Name), text(what), text(e.Reason)})
	}
	return t
}

func runningTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Line"), number("y, centre")}, Size: layouts.Working,
		Note: "Both from the frame corner at the hook end: hook the tape once and mark them all."}
	n := p.Frame.PerLine(0)
	for i := range n {
		t.Head = append(t.Head, number(fmt.Sprintf("x of %d", i+1)))
	}
	for i, line := range p.Frame.Lines {
		row := []layouts.Cell{head(line.Name), c.length(line.Y)}
		for _, pier := range p.Frame.Piers {
			if pier.Line == i {
				row = append(row, c.length(pier.X))
			}
		}
		t.Rows = append(t.Rows, row)
	}
	if n > 6 {
		return runningByPier(p)
	}
	return t
}

// runningByPier turns the table where a line has too many piers for its width.
func runningByPier(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Pier"), number("x"), number("y")}, Size: layouts.Working}
	t.Groups = byLine(p, func(pier ground.Pier) []layouts.Cell {
		return []layouts.Cell{head(pier.Name), c.length(pier.X), c.length(pier.Y)}
	})
	return t
}
