package blocks

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc"
	"pierbook/calc/ground"
	"pierbook/calc/measure"
	"pierbook/content"
)

// Tables with a row for each pier, grouped by beam line.

// pierRow makes the row of one pier; known is nil before the heights are.
type pierRow func(pier ground.Pier) []content.Cell

func byLine(p *calc.Plan, row pierRow) []content.Group {
	groups := make([]content.Group, len(p.Frame.Lines))
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
func groundCell(c cells, pier ground.Pier) content.Cell {
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

func pierTable(p *calc.Plan) content.Table {
	c := of(p)
	known := func(text string) content.Column { return untilKnown(p, number(text), lengthUnit(p)) }
	return content.Table{
		Head: []content.Column{words("Pier"), number("x"), number("y"), known("Ground"), known("Dig"), known("Stone"), known("Seat"), known("Post")},
		Size: content.Reading,
		Groups: byLine(p, func(pier ground.Pier) []content.Cell {
			row := []content.Cell{head(pier.Name), c.length(pier.X), c.length(pier.Y), groundCell(c, pier)}
			if h := pier.Hole; h != nil {
				return append(row, c.length(h.Dig), c.length(h.Stone), c.length(h.Seat), c.length(h.Post))
			}
			return append(row, blank("dig"), blank("stone"), blank("seat"), blank("post"))
		}),
		Note: "x from the hook end, y from side A, to the centre of the pier; heights over the bench mark's datum.",
	}
}

// holeTable is the sheet of the holes: what is wanted, and what was dug once the
// job has it.
func holeTable(p *calc.Plan) content.Table {
	return content.Table{
		Head:   []content.Column{words("Pier"), untilKnown(p, big("Dig"), lengthUnit(p)), untilKnown(p, number("Least"), lengthUnit(p)), untilKnown(p, number("Most"), lengthUnit(p)), words("Bar found"), lengthWords(p, "Dug"), words("Firm, rock, water")},
		Size:   content.Working,
		Groups: byLine(p, func(pier ground.Pier) []content.Cell { return holeRow(p, pier) }),
	}
}

func holeRow(p *calc.Plan, pier ground.Pier) []content.Cell {
	c := of(p)
	row := []content.Cell{head(pier.Name), blank("depth wanted"), blank("least"), blank("most"), text(""), blank("depth dug at " + pier.Name), blank("what was found at " + pier.Name)}
	if h := pier.Hole; h != nil {
		row[1], row[2], row[3] = c.length(h.Dig), c.length(h.Least), c.down(h.Most)
	}
	if probe, probed := p.Job.Ground.Probes[pier.Name]; probed {
		row[4] = text(probe.Found + " at " + probe.Depth.Print(c.style))
	}
	if dug, done := p.Job.Measured.Holes[pier.Name]; done {
		row[5], row[6] = c.length(dug.Depth), text(dug.Found)
		if pier.Planned != nil {
			row[1] = c.length(pier.Planned.Dig)
		}
	}
	return row
}

func stoneTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{
		Head: []content.Column{words("Pier"), untilKnown(p, big("Bed, tamped"), lengthUnit(p)), number("Layers"), untilKnown(p, number("Each, loose"), lengthUnit(p)), untilKnown(p, number("Top below ground"), lengthUnit(p)), untilKnown(p, number("Used by here"), tippedUnit(p)), {Text: "Used", Unit: tippedUnit(p)}},
		Size: content.Working,
		Note: "“Used by here” is loose stone with waste from the first pier to this one: when your count runs ahead of it, the order will not last.",
	}
	beds := map[string]ground.PierStone{}
	if p.Ground.Stone != nil {
		t.Note += " The order is " + tipped(p, p.Ground.Stone.Order).Text + "."
		for _, bed := range p.Ground.Stone.Piers {
			beds[bed.Name] = bed
		}
	}
	t.Groups = byLine(p, func(pier ground.Pier) []content.Cell {
		bed, known := beds[pier.Name]
		if !known {
			return []content.Cell{head(pier.Name), blank("bed"), blank("layers"), blank("each layer"), blank("top of the bed"), blank("stone by here"), blank("used at " + pier.Name)}
		}
		return []content.Cell{head(pier.Name), c.length(bed.Bed), count(bed.Layers), c.length(bed.Layer), c.length(pier.Hole.Cover()), tipped(p, bed.UsedSoFar), blank("used at " + pier.Name)}
	})
	return t
}

// tipped prints a running total of stone in one unit from the first pier to the
// last: cubic feet, which a bucket measures, or cubic metres.
func tipped(p *calc.Plan, v measure.Volume) content.Cell {
	if p.Job.Units == measure.Metric {
		return text(v.Print(p.Style))
	}
	return text(fmt.Sprintf("%.1f\u00a0ft³", float64(v/measure.CubicFoot)))
}

func tippedUnit(p *calc.Plan) string {
	if p.Job.Units == measure.Metric {
		return "m³"
	}
	return "ft³"
}

// postTable is the sum that works on paper: post = printed number + reading on
// the seat − today's reading on the bench mark. The readings of the day stand in
// it once the job has them, and a post that is cut is not asked for again.
func postTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{
		Head: []content.Column{words("Pier"), untilKnown(p, number("Expected post"), lengthUnit(p)), untilKnown(p, big("Printed number"), rodUnit(p)), rodWords(p, "+ seat reading"), rodWords(p, "− bench mark"), rodWords(p, "= post"), words("Again")},
		Size: content.Working,
		Groups: byLine(p, func(pier ground.Pier) []content.Cell {
			expected, printed := blank("expected post"), blank("printed number")
			if pier.Hole != nil {
				expected, printed = c.length(plannedHole(pier).Post), postNumber(p, pier)
			}
			row := []content.Cell{head(pier.Name), expected, printed, blank("reading on the seat of " + pier.Name), blank("today's bench mark"), blank("post " + pier.Name), blank("worked again")}
			return readPost(p, c, pier, row)
		}),
	}
	t.Note = sumOnTape(p)
	return t
}

// readPost puts what was read and cut at a pier into its row.
func readPost(p *calc.Plan, c cells, pier ground.Pier, row []content.Cell) []content.Cell {
	if p.Ground.Posts == nil {
		return row
	}
	post := p.Ground.Posts[slices.IndexFunc(p.Ground.Posts, func(post ground.Post) bool { return post.Name == pier.Name })]
	if reading, read := p.Job.Measured.Seats[pier.Name]; read && p.Ground.Seats != nil {
		row[3], row[4] = c.quantity(measure.Reading(reading)), c.quantity(measure.Reading(p.Ground.Seats.BenchMark))
		row[5] = c.length(post.Wanted)
	}
	if post.State != ground.Estimate && post.State != ground.ToCut {
		row[6] = text(postWords(p, post))
	}
	return row
}

// lineOf returns what the posts of a pier's own line have in common: with beams
// measured, each line has a number of its own.
func lineOf(p *calc.Plan, pier ground.Pier) ground.LinePosts {
	placed, _ := p.Frame.Pier(pier.Name)
	return p.Ground.Lines[placed.Line]
}

// postNumber prints the number of a pier's row as the rod reads, since it is
// added to its readings.
func postNumber(p *calc.Plan, pier ground.Pier) content.Cell {
	line := lineOf(p, pier)
	if rodInUnits(p) {
		return text(line.Number.Print(p.Style))
	}
	return text(onRod(p, line.Printed))
}

// sumOnTape says how the sum of a row becomes a mark on the tape where the rod
// reads in other units than the binder prints.
func sumOnTape(p *calc.Plan) string {
	switch reads := p.Job.Ground.Instrument.Reads; {
	case reads == "tenths":
		return tenthsToInches(of(p))
	case rodInUnits(p):
		return ""
	case reads == "millimetres":
		return "The sum is in millimetres, as the rod reads. Mark it with a tape in millimetres, or divide it by 25.4 for inches."
	default:
		return "The sum is in feet and inches, as the rod reads. Mark it with a tape in inches, or take 25.4 mm for each inch."
	}
}

func signed(number string) string { return strings.Replace(number, "-", "−", 1) }

// tenthsToInches turns a sum in feet and hundredths into what a tape shows.
func tenthsToInches(c cells) string {
	var parts []string
	for tenth := 1; tenth < 10; tenth++ {
		parts = append(parts, fmt.Sprintf("0.%d ft is %s", tenth, measure.Foot.Part(tenth, 10).Print(c.style)))
	}
	return "The rod reads tenths, the tape inches: " + strings.Join(parts, ", ") + ". Each 0.01 ft more is " + measure.Foot.Part(1, 100).Print(c.style) + "."
}

func exceptionTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Pier"), words("Exception"), words("Reason")}}
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
		t.Rows = append(t.Rows, []content.Cell{head(pier.Name), text(what), text(e.Reason)})
	}
	return t
}

func runningTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Line"), number("y, centre")}, Size: content.Working,
		Note: "Both from the frame corner at the hook end: hook the tape once and mark them all."}
	n := p.Frame.PerLine(0)
	for i := range n {
		t.Head = append(t.Head, number(fmt.Sprintf("x of %d", i+1)))
	}
	for i, line := range p.Frame.Lines {
		row := []content.Cell{head(line.Name), c.length(line.Y)}
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
func runningByPier(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Pier"), number("x"), number("y")}, Size: content.Working}
	t.Groups = byLine(p, func(pier ground.Pier) []content.Cell {
		return []content.Cell{head(pier.Name), c.length(pier.X), c.length(pier.Y)}
	})
	return t
}
