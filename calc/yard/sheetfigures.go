package yard

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// SheetFigures are what the plans of the sheets come to.
func SheetFigures(plans []SheetPlan, j *job.Job) []figure.Figure {
	var figures []figure.Figure
	for _, s := range plans {
		key := "sheet." + s.Name
		figures = append(figures, assumedSheet(key, s, j)...)
		from := []string{"yard.kerf"}
		for _, kind := range s.Kinds {
			from = append(from, "sheet_parts."+kind+".count", "sheet_parts."+kind+".length", "sheet_parts."+kind+".width")
		}
		figures = append(figures,
			figure.Figure{Key: key + ".count", Means: "sheets of " + s.Name + " to buy for " + s.Use(), Value: measure.Count(len(s.Result.Sheets)), Origin: figure.Computed,
				Formula: "fewest sheets by straight cuts from edge to edge", Working: fmt.Sprintf("%d parts: %s", s.Parts, s.Proof()), From: from},
			figure.Figure{Key: key + ".bound", Means: "no plan does with fewer sheets of " + s.Name + " than", Value: measure.Count(s.Result.Bound), Origin: figure.Computed,
				Formula: "every way of joining the parts gone through, or the larger of the bounds", Working: s.Proof(), From: from},
			figure.Figure{Key: key + ".used", Means: "share of the sheets of " + s.Name + " that goes into parts", Value: s.Used(), Origin: figure.Computed,
				Formula: "Σ parts / Σ sheets", Working: s.Used().Print(j.Style()), From: []string{key + ".count"}})
	}
	return figures
}

// assumedSheet tells of a sheet that the yard does not list, so that it stands
// among the assumptions.
func assumedSheet(key string, s SheetPlan, j *job.Job) []figure.Figure {
	if _, listed := j.Yard.Sheets[s.Name]; listed {
		return nil
	}
	assumed := func(what string, value measure.Quantity) figure.Figure {
		return figure.Figure{Key: key + "." + what, Means: what + " of a sheet of " + s.Name, Value: value, Origin: figure.Assumed, Source: "the usual sheet; common practice, no source"}
	}
	return []figure.Figure{assumed("length", s.Good.Length), assumed("width", s.Good.Width), assumed("thickness", measure.Exact(s.Good.Thickness))}
}
