package order

import (
	"fmt"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Figures returns the figures of the list.
func (o *Order) Figures(style measure.Style) []figure.Figure {
	var figures []figure.Figure
	var keys []string
	for _, l := range o.Lines {
		keys = append(keys, l.Key)
		figures = append(figures, figure.Figure{Key: l.Key, Means: l.What + ", " + l.Unit + " to buy", Value: measure.Count(l.Count), Origin: figure.Computed,
			Source: l.Source, Memory: l.Memory, Formula: l.Source, Working: fmt.Sprintf("%d %s of %s each", l.Count, l.Unit, l.Each.Print(style))})
	}
	cost := figure.Figure{Key: "order.cost", Means: "cost of the lines with a known price", Origin: figure.Computed, Formula: "Σ count × price", From: keys,
		Working: fmt.Sprintf("%d of %d lines have a price", len(o.Lines)-o.Blank, len(o.Lines))}
	if o.Blank < len(o.Lines) {
		cost.Value = o.Cost
	}
	loads := figure.Figure{Key: "order.loads", Means: "loads of the vehicle for everything", Origin: figure.Computed, Formula: "weight / payload, rounded up", From: []string{"order.weight"}}
	if o.Loads > 0 {
		loads.Value = measure.Count(o.Loads)
		loads.Working = o.Weight.Print(style) + " / " + o.Payload.Print(style)
	}
	return append(figures,
		figure.Figure{Key: "order.weight", Means: "weight of everything to be brought", Value: o.Weight, Origin: figure.Computed, Formula: "Σ count × weight of one", From: keys,
			Working: fmt.Sprintf("%d lines", len(o.Lines))},
		cost, loads,
		figure.Figure{Key: "order.lines", Means: "lines on the list", Value: measure.Count(len(o.Lines)), Origin: figure.Computed, Formula: "count"},
		figure.Figure{Key: "order.blank", Means: "lines whose price is not known", Value: measure.Count(o.Blank), Origin: figure.Computed, Formula: "count"},
	)
}

// PageFigures returns what the step sheets say of fasteners and cloth: the row
// of the fastening schedule for each part, and the laps.
func (o *Order) PageFigures(j *job.Job) []figure.Figure {
	var figures []figure.Figure
	for _, part := range []string{"joists", "rims", "beams", "caps", "blocking", "surface"} {
		f := figure.Figure{Key: "fastening." + part, Means: "fastening of " + part, Origin: figure.Assumed}
		var words, sources []string
		for _, row := range o.joints {
			if row.part == part {
				words = append(words, row.nail.short()+", "+row.what)
				sources = append(sources, row.source)
				f.Memory = f.Memory || row.memory
			}
		}
		if len(words) > 0 {
			f.Value, f.Source = measure.Word(strings.Join(words, "; ")), strings.Join(sources, "; ")
		}
		figures = append(figures, f)
	}
	return append(figures,
		figure.Figure{Key: "cloth.lap", Means: "lap of the ground cloth", Value: j.Yard.Roll.Lap, Rounding: measure.Up, Origin: figure.Computed, From: []string{"yard.cloth.lap"}, Formula: "as the yard's file says"},
		figure.Figure{Key: "cloth.strips", Means: "strips of ground cloth", Value: measure.Count(o.Strips), Origin: figure.Computed, From: []string{"frame.width", "yard.cloth.width", "yard.cloth.lap"}, Formula: "(width − lap) / (roll − lap), rounded up"},
	)
}
