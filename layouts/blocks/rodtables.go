package blocks

import (
	"fmt"
	"slices"

	"pierbook/calc"
	"pierbook/calc/ground"
	"pierbook/calc/measure"
	"pierbook/content"
)

// Tables of rod readings that are taken once a height is known. What is expected
// is given over or under the day's reading on the bench mark, since the
// instrument stands elsewhere every day.

// seatReadingTable asks for the two readings in every seat. The expected reading
// is the bench mark's less the height of the seat over it.
func seatReadingTable(p *calc.Plan) content.Table {
	t := content.Table{Size: content.Working,
		Head: []content.Column{words("Pier"), untilKnown(p, number("Expected, from the bench mark"), rodUnit(p)), untilKnown(p, number("Stop under"), rodUnit(p)), untilKnown(p, number("Stop over"), rodUnit(p)), rodWords(p, "First reading"), rodWords(p, "Second reading")}}
	t.Groups = byLine(p, func(pier ground.Pier) []content.Cell {
		row := []content.Cell{head(pier.Name), blank("expected reading"), blank("least reading"), blank("greatest reading"), blank("reading in the seat of " + pier.Name), blank("second reading in the seat of " + pier.Name)}
		if hole := plannedHole(pier); hole != nil && p.Ground.Floor != nil { // holes as dug may leave no floor
			posts, top := p.Job.Frame.Posts, lineOf(p, pier).Number // as the row on paper counts
			row[1] = fromBenchMark(p, p.Job.Ground.BenchMark.Height-hole.Seat)
			row[2], row[3] = fromBenchMark(p, posts.Shortest-top), fromBenchMark(p, posts.Longest-top)
		}
		if reading, read := p.Job.Measured.Seats[pier.Name]; read {
			row[4] = of(p).quantity(measure.Reading(reading))
		}
		return row
	})
	t.Note = fmt.Sprintf("Add the number with its sign to today's reading on the bench mark. A seat within %s of what is expected serves, and its post takes up the rest. Under the one stop the post would be too short, over the other too long.", p.Figures.Text("trade.seat_accept", p.Style))
	return t
}

// floorReadingTable asks for a reading on the finished floor over every pier.
func floorReadingTable(p *calc.Plan) content.Table {
	t := content.Table{Size: content.Working, Head: []content.Column{words("Over pier"), number("Expected, from the bench mark"), number("Do"), number("Stop"), rodWords(p, "Reading"), rodWords(p, "Off by")}}
	if p.Ground.Floor == nil || p.Ground.AsBuilt != nil {
		return t // without a height nothing is expected; once read, it stands in another table
	}
	expected := fromBenchMark(p, p.Job.Ground.BenchMark.Height-p.Ground.Floor.Height)
	do, accept := text(p.Figures.Text("trade.floor_do", p.Style)), text(p.Figures.Text("trade.floor_accept", p.Style))
	t.Groups = byLine(p, func(pier ground.Pier) []content.Cell {
		return []content.Cell{head(pier.Name), expected, do, accept, blank("reading over " + pier.Name), blank("off by")}
	})
	t.Note = "Add the number with its sign to today's reading on the bench mark. “Do” and “stop” are for the highest less the lowest of the whole floor."
	return t
}

// careReadingTable is copied for every spring: differences from the readings as
// built count, so it has room for those.
func careReadingTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Size: content.Working, Head: []content.Column{words("Over pier"), rodNumber(p, "As built, from the bench mark"), rodWords(p, "Reading"), rodWords(p, "Less the bench mark"), rodWords(p, "Changed by"), number("Stop")}}
	stop := text(p.Figures.Text("trade.relevel_at", c.style))
	t.Groups = byLine(p, func(pier ground.Pier) []content.Cell {
		built := blank("as built over " + pier.Name)
		if a := p.Ground.AsBuilt; a != nil {
			if i := slices.IndexFunc(a.Points, func(point ground.FloorPoint) bool { return point.Name == pier.Name }); i >= 0 {
				built = fromBenchMark(p, p.Job.Ground.BenchMark.Height-a.Points[i].Height)
			}
		}
		return []content.Cell{head(pier.Name), built, blank("reading over " + pier.Name), blank("less the bench mark"), blank("changed by"), stop}
	})
	return t
}

// plannedHole is the hole before anything was measured on the pier, nil before
// the heights are known.
func plannedHole(pier ground.Pier) *ground.Hole {
	if pier.Planned != nil {
		return pier.Planned
	}
	return pier.Hole
}

func rodUnit(p *calc.Plan) string    { return p.Figures.Text("unit.rod", p.Style) }
func lengthUnit(p *calc.Plan) string { return p.Figures.Text("unit.length", p.Style) }

// rodWords heads a column of blanks with the unit of the rod.
func rodWords(p *calc.Plan, text string) content.Column {
	return content.Column{Text: text, Unit: rodUnit(p)}
}

// rodNumber is the same for a column of numbers.
func rodNumber(p *calc.Plan, text string) content.Column {
	c := rodWords(p, text)
	c.Align = content.Right
	return c
}

// lengthWords heads a column of blanks with the unit of lengths.
func lengthWords(p *calc.Plan, text string) content.Column {
	return content.Column{Text: text, Unit: lengthUnit(p)}
}

// untilKnown puts the unit over a column that is left blank as long as the
// heights are not known. Numbers carry their own.
func untilKnown(p *calc.Plan, c content.Column, unit string) content.Column {
	if slices.ContainsFunc(p.Ground.Piers, func(pier ground.Pier) bool { return pier.Hole == nil }) {
		c.Unit = unit
	}
	return c
}

// fromBenchMark prints how much a reading differs from the one on the bench mark.
func fromBenchMark(p *calc.Plan, l measure.Length) content.Cell {
	sign := "+"
	if l < 0 {
		sign = ""
	}
	return text(sign + onRod(p, l))
}

// onRod prints a length that is added to readings: as the job prints where the
// rod reads so, and else as the rod reads, with a further decimal of tenths.
func onRod(p *calc.Plan, l measure.Length) string {
	switch {
	case rodInUnits(p):
		return l.Print(p.Style)
	case p.Job.Ground.Instrument.Reads == "tenths":
		return signed(fmt.Sprintf("%.3f\u00a0ft", l.Inches()/12))
	default:
		return measure.Reading(l).Print(p.Style)
	}
}

// rodInUnits says whether the rod reads in the units that the binder prints.
func rodInUnits(p *calc.Plan) bool {
	if p.Job.Units == measure.Metric {
		return p.Job.Ground.Instrument.Reads == "millimetres"
	}
	return p.Job.Ground.Instrument.Reads == "feet_inches"
}
