package order

import (
	"fmt"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Figures returns the figures of the list: for each line how many, what one
// lift and the whole weigh and what it costs, and the totals.
func (o *Order) Figures(style measure.Style) []figure.Figure {
	var figures []figure.Figure
	var weights, costs []string
	for _, l := range o.gone {
		figures = append(figures, l.figures(style)...)
	}
	for _, l := range o.Lines {
		figures = append(figures, l.figures(style)...)
		weights, costs = append(weights, l.Key+".weight"), append(costs, l.Key+".cost")
	}
	figures = append(append(figures, o.totals(style, weights, costs)...), o.liftFigures()...)
	return append(figures, o.noteFigures()...)
}

func (l Line) figures(style measure.Style) []figure.Figure {
	computed := func(suffix, means string, value measure.Quantity, formula, working string, from ...string) figure.Figure {
		return figure.Figure{Key: l.Key + suffix, Means: means, Value: value, Origin: figure.Computed, Formula: formula, Working: working, From: from}
	}
	count := computed("", l.What+": "+l.Unit+" to buy", measure.Count(l.Count), l.Formula, l.Working, l.From...)
	count.Source, count.Memory = l.Source, l.Memory
	cost := computed(".cost", l.What+": cost", nil, "count × price of one", "", l.Key)
	if amount, known := l.Cost(); known {
		cost.Value, cost.Working = amount, fmt.Sprintf("%d × %s", l.Count, l.Price.Print(style))
	}
	return []figure.Figure{count,
		computed(".each", l.What+": weight of one", l.Each, l.Weighed, ""),
		computed(".weight", l.What+": weight in all", l.Mass(), "count × weight of one", fmt.Sprintf("%d × %s", l.Count, l.Each.Print(style)), l.Key, l.Key+".each"),
		cost}
}

func (o *Order) totals(style measure.Style, weights, costs []string) []figure.Figure {
	cost := figure.Figure{Key: "order.cost", Means: "cost of the lines with a known price", Origin: figure.Computed, Formula: "Σ count × price, lines without a price left out", From: costs,
		Working: fmt.Sprintf("%d of %d lines have a price", len(o.Lines)-o.Blank, len(o.Lines))}
	if o.Blank < len(o.Lines) {
		cost.Value = o.Cost
	}
	loads := figure.Figure{Key: "order.loads", Means: "loads of the vehicle for everything", Origin: figure.Computed, Formula: "each piece into the first load that still carries it, the longest and heaviest first; stone by itself", From: []string{"order.weight", "yard.payload"}}
	if o.Loads() > 0 {
		loads.Value = measure.Count(o.Loads())
		loads.Working = fmt.Sprintf("%s at %s a load", o.Weight.Print(style), o.Payload.Print(style))
	}
	return []figure.Figure{
		{Key: "order.weight", Means: "weight of everything to be brought", Value: o.Weight, Origin: figure.Computed, Formula: "Σ weight of each line", From: weights,
			Working: fmt.Sprintf("%d lines", len(o.Lines))},
		cost, loads,
		{Key: "order.lines", Means: "lines on the list", Value: measure.Count(len(o.Lines)), Origin: figure.Computed, Formula: "count of the lines"},
		{Key: "order.blank", Means: "lines whose price is not known", Value: measure.Count(o.Blank), Origin: figure.Computed, Formula: "count of the lines without a price"},
	}
}

// liftFigures name the heaviest lift of the steps with heavy ones.
func (o *Order) liftFigures() []figure.Figure {
	var figures []figure.Figure
	for _, step := range []string{"blocks", "posts", "beams", "joists", "surface"} {
		weight := figure.Figure{Key: "lift." + step, Means: "heaviest lift of the step " + step, Origin: figure.Computed, Formula: "weight of the heaviest single piece"}
		people := figure.Figure{Key: "lift." + step + ".people", Means: "people for the heaviest lift of the step " + step, Origin: figure.Computed, Formula: "weight / what one person lifts, rounded up",
			From: []string{"lift." + step, trade.LiftAlone.Key()}}
		if p, ok := o.Heaviest(step); ok {
			weight.Value, people.Value = p.Each, measure.Count(p.Hands(o.style.System))
			weight.Means += ": " + p.What
			weight.Working = p.What
			if p.Long != nil {
				weight.Working += ", " + p.Long.Print(o.style)
			}
			people.Working = fmt.Sprintf("%s / %s", p.Each.Print(o.style), trade.LiftAlone.In(o.style.System).Print(o.style))
		}
		figures = append(figures, weight, people)
	}
	return figures
}

// PageFigures returns what the step sheets say of fasteners and cloth: the row
// of the fastening schedule for each part, and the laps.
func (o *Order) PageFigures(j *job.Job) []figure.Figure {
	var figures []figure.Figure
	for _, part := range []string{"joists", "rims", "beams", "caps", "strap-nails", "brace-screws", "blocking", "surface", "set-out"} {
		f := figure.Figure{Key: "fastening." + part, Means: "fastening of " + part, Origin: figure.Assumed}
		var words, sources []string
		for _, row := range o.schedule {
			if row.part == part {
				words = append(words, row.words)
				sources = append(sources, row.source)
				f.Memory = f.Memory || row.memory
			}
		}
		if f.Source = "our own rule: no row of the fastening schedule applies to this frame"; len(words) > 0 {
			f.Value, f.Source = measure.Word(strings.Join(words, ", and ")), strings.Join(sources, "; ")
		}
		figures = append(figures, f)
	}
	r, style := j.Yard.Roll, j.Style()
	strips := figure.Figure{Key: "cloth.strips", Means: "strips of ground cloth", Value: measure.Count(o.Cloth.Strips), Origin: figure.Computed, From: []string{"frame.width", "yard.cloth.width", "yard.cloth.lap"},
		Formula: "(width − lap) / (roll − lap), rounded up"}
	strips.Working = fmt.Sprintf("(%s − %s) / (%s − %s)", j.Platform.Width.Print(style), r.Lap.Print(style), r.Width.Print(style), r.Lap.Print(style))
	return append(figures, strips,
		figure.Figure{Key: "cloth.lap", Means: "lap of the ground cloth", Value: r.Lap, Rounding: measure.Up, Origin: figure.Computed, From: []string{"yard.cloth.lap"}, Formula: "as the yard's file says"},
		figure.Figure{Key: "cloth.joints", Means: "joints across strips of ground cloth", Value: measure.Count(o.Cloth.Joints), Origin: figure.Computed, From: []string{"cloth.strips", "yard.cloth.length"}, Formula: "a joint wherever a roll ends within a strip"},
	)
}
