package blocks

import (
	"strings"

	"pierbook/calc"
	"pierbook/calc/ground"
	"pierbook/calc/measure"
	"pierbook/content"
)

// stepsShort is how many steps short of deep enough the table looks ahead.
const stepsShort = 3

// windowTable says beforehand what to do where something firm is met before the
// hole is deep enough: a row for each pier, a column for each inch, or 25 mm,
// short of it. Piers of which it says the same share a row.
func windowTable(p *calc.Plan) content.Table {
	step := measure.Inch
	if p.Job.Units == measure.Metric {
		step = 25 * measure.Millimetre
	}
	t := content.Table{Head: []content.Column{words("Pier"), number("Deep enough at")}}
	for n := 1; n <= stepsShort; n++ {
		t.Head = append(t.Head, words((measure.Length(n)*step).Print(p.Style)+" short"))
	}
	t.Head = append(t.Head, words("Or move it, at most"))
	if p.Ground.Floor == nil {
		return t
	}
	t.Rows = alike(windowRows(p, step))
	t.Note = "Bed: keep the floor, with a bed of so much. Floor +: lift the floor by so much, before any post is cut; every post changes. On rock: a bed thinner than the least, which an engineer must allow. Stop: nothing of this makes it good, or no hole may be so shallow. Move: along the line, on to the next pier or back; probe there first, and write the place into the job file."
	return t
}

func windowRows(p *calc.Plan, step measure.Length) []pierRowed {
	c := of(p)
	var list []pierRowed
	for _, b := range p.Ground.Beforehand(step, stepsShort) {
		if len(b.Rows) == 0 {
			continue
		}
		cells := []content.Cell{c.length(b.Shallowest)}
		for n := range stepsShort {
			then := "–" // no depth is left
			if n < len(b.Rows) {
				then = windowWords(c, b.Rows[n])
			}
			cells = append(cells, text(then))
		}
		list = append(list, pierRowed{b.Pier, append(cells, text(shiftWords(c, b.Move)))})
	}
	return list
}

// windowWords names the ordinary way first. A bed thinner than the least is an
// exception, on rock alone and for an engineer to allow.
func windowWords(c cells, row ground.MetAt) string {
	var ways []string
	if row.Bed != nil && !row.Thin {
		ways = append(ways, "bed "+row.Bed.Print(c.style))
	}
	if row.LiftFloor != nil && len(ways) == 0 {
		up := c.style
		up.Rounding = measure.Up
		ways = append(ways, "floor +"+row.LiftFloor.Print(up))
	}
	if row.Thin {
		ways = append(ways, "on rock "+row.Bed.Print(c.style))
	}
	if row.UnderRule || len(ways) == 0 {
		return "stop"
	}
	return strings.Join(ways, " or ")
}

// shiftWords says how far a pier may stand off its place along its line.
func shiftWords(c cells, m ground.Shift) string {
	var ways []string
	if m.On > 0 {
		ways = append(ways, m.On.Print(c.style)+" on")
	}
	if m.Back > 0 {
		ways = append(ways, m.Back.Print(c.style)+" back")
	}
	switch {
	case m.Joint:
		return "no: a joint is over it"
	case len(ways) == 0:
		return "no"
	}
	return strings.Join(ways, ", ")
}
