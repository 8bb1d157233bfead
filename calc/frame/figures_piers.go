package frame

import (
	"fmt"

	"pierbook/calc/measure"
)

func (l *ledger) lines() {
	f, beams := l.frame, l.job.Frame.Beams
	n := len(f.Lines)
	first, last := f.Lines[0].Y, f.Lines[n-1].Y
	l.given("frame.lines", "frame.beams.lines", "beam lines", measure.Count(n))
	l.given("frame.inset", "frame.beams.inset", "outer face of the outer beams in from the frame side", beams.Inset)
	l.given("frame.set_back", "frame.beams.set_back", "beam ends in from the frame ends", beams.SetBack)
	l.computed("lines.spacing", "distance of neighbouring beam lines by centre", (last-first).Part(1, n-1),
		"(last line − first line) / (lines − 1)", fmt.Sprintf("(%s − %s) / %d", l.say(last), l.say(first), n-1), "frame.lines", "line.A.y")
	across := f.Sections.Beam.Across()
	for i, line := range f.Lines {
		l.computed("line."+line.Name+".y", "centre of beam line "+line.Name+" from the frame side next to A", line.Y,
			"y = first + i (last − first) / (lines − 1), first = inset + beam width / 2, last = width − first",
			fmt.Sprintf("%s + %s / 2 + %d × (%s − %s) / %d", l.say(beams.Inset), l.say(across), i, l.say(last), l.say(first), n-1),
			"frame.width", "frame.inset", "beam.section", "beam.plies", "frame.lines")
	}
}

func (l *ledger) piers() {
	f, wish := l.frame, l.job.Frame.Piers
	perLine := f.PerLine(0)
	first, last := f.Piers[0].X, f.Piers[perLine-1].X
	if wish.PerLine > 0 {
		l.given("frame.per_line", "frame.piers.per_line", "piers under each beam line", measure.Count(perLine))
	} else {
		l.computed("frame.per_line", "piers under each beam line", measure.Count(perLine),
			"the fewest whose spacing is not above the greatest one", fmt.Sprintf("(%s − %s) / %s rounded up, + 1", l.say(last), l.say(first), l.say(wish.Spacing)),
			"frame.length", "frame.piers.spacing")
	}
	l.computed("frame.piers", "piers", measure.Count(len(f.Piers)), "lines × piers under each",
		fmt.Sprintf("%d × %d", len(f.Lines), perLine), "frame.lines", "frame.per_line")
	l.computed("piers.spacing", "distance of neighbouring piers along a line by centre", (last-first).Part(1, perLine-1),
		"(last − first) / (piers − 1)", fmt.Sprintf("(%s − %s) / %d", l.say(last), l.say(first), perLine-1), "frame.per_line")
	l.pierRectangle()
	for _, p := range f.Piers {
		l.pier(p, first, last, perLine)
	}
}

// pierRectangle enters the rectangle of the four outer pier centres.
func (l *ledger) pierRectangle() {
	c := l.frame.Corners()
	length, width := c[1].X-c[0].X, c[3].Y-c[0].Y
	x := func(i int) string { return "pier." + c[i].Name + ".x" }
	y := func(i int) string { return "pier." + c[i].Name + ".y" }
	l.computed("piers.length", "between the centres of the outer piers along the length", length,
		"x of the last pier − x of the first", l.say(c[1].X)+" − "+l.say(c[0].X), x(0), x(1))
	l.computed("piers.width", "between the centres of the outer piers across the width", width,
		"y of the last line − y of the first", l.say(c[3].Y)+" − "+l.say(c[0].Y), y(0), y(3))
	l.computed("piers.diagonal", "both diagonals between the centres of the outer piers", measure.Hypot(length, width),
		"√(length² + width²)", l.root(length, width), "piers.length", "piers.width")
}

func (l *ledger) pier(p Pier, first, last measure.Length, perLine int) {
	key := "pier." + p.Name
	l.computed(key+".x", "centre of pier "+p.Name+" along the beam from the frame end next to 1", p.X,
		"x = first + (n − 1) (last − first) / (piers − 1)",
		fmt.Sprintf("%s + %d × (%s − %s) / %d", l.say(first), p.Number-1, l.say(last), l.say(first), perLine-1),
		"frame.length", "frame.set_back", "frame.per_line", "post.section")
	l.computed(key+".y", "centre of pier "+p.Name+" across from the frame side next to A", p.Y, "y of its beam line", "", "line."+l.frame.Lines[p.Line].Name+".y")
	l.computed(key+".tributary", "floor that pier "+p.Name+" carries", p.TributaryLength.Times(p.TributaryWidth),
		"half of the bays beside it, and all beyond the outer piers, along and across",
		l.say(p.TributaryLength)+" × "+l.say(p.TributaryWidth), key+".x", key+".y", "frame.length", "frame.width")
	l.computed(key+".tributary_length", "length of beam that pier "+p.Name+" carries", p.TributaryLength,
		"half of the bays beside it along the line", "", key+".x", "frame.length")
	l.computed(key+".tributary_width", "width of floor that pier "+p.Name+" carries", p.TributaryWidth,
		"half of the bays beside its line", "", key+".y", "frame.width")
}
