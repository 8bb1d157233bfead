package calc

import (
	"fmt"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/heights"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

// wordFigures are words that pages use: units of the blanks, names of corners.
func (p *Plan) wordFigures() []figure.Figure {
	unit, rod := "ft, in", "ft, in"
	if p.Job.Units == measure.Metric {
		unit = "mm"
	}
	switch p.Job.Ground.Instrument.Reads {
	case "tenths":
		rod = "ft and hundredths"
	case "millimetres":
		rod = "mm"
	}
	word := func(key, means, value, rule string, from ...string) figure.Figure {
		return figure.Figure{Key: key, Means: means, Value: measure.Word(value), Origin: figure.Computed, Formula: rule, Working: value, From: from}
	}
	corners := p.Frame.Corners()
	tipped := measure.Tipped(0).Print(p.Style)
	tipped = tipped[strings.LastIndex(tipped, "\u00a0")+len("\u00a0"):]
	lines, perLine := "frame.lines", "frame.per_line"
	return []figure.Figure{
		word("job.progress", "how far the job has come", string(p.Job.Progress()), "by what the job file holds: the last of which anything was read: ground, holes, seats, posts, frame, finished floor"),
		word("unit.length", "unit of lengths in blanks", unit, "by the system of units", "units"),
		word("unit.rod", "unit of rod readings in blanks", rod, "as the rod reads", "ground.instrument.reads"),
		word("unit.tipped", "unit of loose stone that is counted", tipped, "by the system of units", "units"),
		word("unit.rod_differs", "units of the rod, where the tape has others", p.rodDiffers(), "as the rod reads, against the system of units", "ground.instrument.reads", "units"),
		word("instrument.line", "what heights are counted from in one set-up", levelling.HeightLine[p.Job.Ground.Instrument.Kind][0], "by the kind of instrument", "ground.instrument.kind"),
		word("instrument.heading", "the same at the head of a column", upper(levelling.HeightLine[p.Job.Ground.Instrument.Kind][0]), "by the kind of instrument", "ground.instrument.kind"),
		word("instrument.base", "what must not move during one set-up", levelling.HeightLine[p.Job.Ground.Instrument.Kind][1], "by the kind of instrument", "ground.instrument.kind"),
		word("corner.1", "pier at the hook corner", corners[0].Name, "first pier of the first line"),
		word("corner.2", "corner pier at the far end of the first line", corners[1].Name, "last pier of the first line", perLine),
		word("corner.3", "corner pier diagonally opposite the hook corner", corners[2].Name, "last pier of the last line", lines, perLine),
		word("corner.4", "corner pier at the hook end of the last line", corners[3].Name, "first pier of the last line", lines),
		word("line.last", "the last beam line", p.Frame.Lines[len(p.Frame.Lines)-1].Name, "letters from A, without I and O", lines),
	}
}

// rodDiffers names how the rod reads where that is not as lengths print.
func (p *Plan) rodDiffers() string {
	reads := p.Job.Ground.Instrument.Reads
	if reads == "tenths" || (reads == "millimetres") != (p.Job.Units == measure.Metric) {
		return reads
	}
	return "no"
}

// tenthFigures turn feet and hundredths on the rod into what a tape shows.
func (p *Plan) tenthFigures() []figure.Figure {
	tenths := figure.Figure{Key: "tape.tenths", Means: "tenths of a foot on the tape", Origin: figure.Computed, Formula: "1 ft × n ÷ 10", From: []string{"unit.rod_differs"}}
	if p.Job.Ground.Instrument.Reads == "tenths" {
		var parts []string
		for tenth := 1; tenth < 10; tenth++ {
			parts = append(parts, fmt.Sprintf("0.%d ft is %s", tenth, measure.Foot.Part(tenth, 10).Print(p.Style)))
		}
		tenths.Value = measure.Word(strings.Join(parts, ", "))
	}
	figures := []figure.Figure{tenths, {Key: "tape.hundredth", Means: "a hundredth of a foot on the tape", Value: measure.Foot.Part(1, 100), Origin: figure.Computed, Formula: "1 ft ÷ 100"}}
	for n := range 3 {
		step := measure.Length(n+1) * heights.WindowStep(p.Job.Units)
		figures = append(figures, figure.Figure{Key: fmt.Sprintf("window.step_%d", n+1), Means: "how far short of deep enough the hole ends, in the tables of what to do then", Value: step, Origin: figure.Computed, Formula: "n × 1 in, or n × 25 mm"})
	}
	return figures
}

// upper begins a word with a capital, as at the head of a column.
func upper(word string) string { return strings.ToUpper(word[:1]) + word[1:] }
