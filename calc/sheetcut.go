package calc

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pierbook/calc/cutting"
	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/order"
)

// SheetPlan is how the parts of one kind of sheet are cut from it.
type SheetPlan struct {
	Name   string // of the sheet
	Good   job.SheetGood
	Kinds  []string // of parts: "skirt", "gusset"
	Parts  int
	Result cutting.SheetResult
}

// sheetPlans lays the parts of the job on sheets, one plan for each kind of sheet,
// by name. The reader of the job has seen to it that every part goes on its sheet.
func sheetPlans(j *job.Job) []SheetPlan {
	problems := map[string]*cutting.SheetProblem{}
	plans := map[string]*SheetPlan{}
	for _, kind := range slices.Sorted(maps.Keys(j.SheetParts)) {
		part := j.SheetParts[kind]
		name, good, known := j.Sheet(part)
		if !known {
			continue
		}
		if plans[name] == nil {
			plans[name] = &SheetPlan{Name: name, Good: good}
			problems[name] = &cutting.SheetProblem{Length: good.Length, Width: good.Width, Kerf: j.Yard.Kerf}
		}
		plans[name].Kinds = append(plans[name].Kinds, kind)
		for n := range part.Count {
			label := kind
			if part.Count > 1 {
				label = fmt.Sprintf("%s %d", kind, n+1)
			}
			problems[name].Parts = append(problems[name].Parts, cutting.SheetPart{Name: label, Length: part.Length, Width: part.Width, Turns: part.Free})
		}
	}
	var list []SheetPlan
	for _, name := range slices.Sorted(maps.Keys(plans)) {
		plan := plans[name]
		result, err := cutting.PlanSheets(*problems[name])
		if err != nil {
			continue // a part that goes on no sheet is a fault of the job file
		}
		plan.Parts, plan.Result = len(problems[name].Parts), result
		list = append(list, *plan)
	}
	return list
}

// Alike returns the sheets in groups that are cut alike and follow one another,
// each by its number.
func (s SheetPlan) Alike() [][]int {
	var groups [][]int
	for i, sheet := range s.Result.Sheets {
		if n := len(groups); n > 0 && sameCuts(s.Result.Sheets[groups[n-1][0]], sheet) {
			groups[n-1] = append(groups[n-1], i)
			continue
		}
		groups = append(groups, []int{i})
	}
	return groups
}

// sameCuts says whether two sheets are cut in the same places.
func sameCuts(a, b cutting.Sheet) bool {
	return slices.EqualFunc(a.Placed, b.Placed, func(p, q cutting.Placed) bool {
		p.Name, q.Name = "", ""
		return p == q
	})
}

// Names names sheets that are cut alike: "plywood no. 1 to 3".
func (s SheetPlan) Names(like []int) string {
	name := fmt.Sprintf("%s no. %d", s.Name, like[0]+1)
	if len(like) > 1 {
		name += fmt.Sprintf(" to %d", like[len(like)-1]+1)
	}
	return name
}

// Used returns the share of the sheets that goes into parts.
func (s SheetPlan) Used() measure.Percent {
	var parts, sheets float64
	for _, sheet := range s.Result.Sheets {
		sheets += float64(s.Good.Length.Times(s.Good.Width))
		for _, p := range sheet.Placed {
			parts += float64(p.Length.Times(p.Width))
		}
	}
	if sheets == 0 {
		return 0
	}
	return measure.Percent(parts / sheets)
}

// Proof says in words how good the plan is.
func (s SheetPlan) Proof() string {
	n, bound := len(s.Result.Sheets), s.Result.Bound
	switch {
	case !s.Result.Proven:
		return fmt.Sprintf("%d sheets; no plan needs fewer than %d, so that at most %d might be saved", n, bound, n-bound)
	case n == 1:
		return "one sheet, and none is fewer"
	}
	return fmt.Sprintf("proven: no way of straight cuts from edge to edge does with fewer than %d", n)
}

// sheetFigures are what the plans of the sheets come to.
func (p *Plan) sheetFigures() []figure.Figure {
	var figures []figure.Figure
	for _, s := range p.Sheets {
		key := "sheet." + s.Name
		figures = append(figures, p.assumedSheet(key, s)...)
		from := []string{"yard.kerf"}
		for _, kind := range s.Kinds {
			from = append(from, "sheet_parts."+kind+".count", "sheet_parts."+kind+".length", "sheet_parts."+kind+".width")
		}
		figures = append(figures,
			figure.Figure{Key: key + ".count", Means: "sheets of " + s.Name + " to buy for " + strings.Join(s.Kinds, ", "), Value: measure.Count(len(s.Result.Sheets)), Origin: figure.Computed,
				Formula: "fewest sheets by straight cuts from edge to edge", Working: fmt.Sprintf("%d parts: %s", s.Parts, s.Proof()), From: from},
			figure.Figure{Key: key + ".bound", Means: "no plan does with fewer sheets of " + s.Name + " than", Value: measure.Count(s.Result.Bound), Origin: figure.Computed,
				Formula: "every way of joining the parts gone through, or the larger of the bounds", Working: s.Proof(), From: from},
			figure.Figure{Key: key + ".used", Means: "share of the sheets of " + s.Name + " that goes into parts", Value: s.Used(), Origin: figure.Computed,
				Formula: "Σ parts / Σ sheets", Working: s.Used().Print(p.Style), From: []string{key + ".count"}})
	}
	return figures
}

// assumedSheet tells of a sheet that the yard does not list, so that it stands
// among the assumptions.
func (p *Plan) assumedSheet(key string, s SheetPlan) []figure.Figure {
	if _, listed := p.Job.Yard.Sheets[s.Name]; listed {
		return nil
	}
	assumed := func(what string, value measure.Quantity) figure.Figure {
		return figure.Figure{Key: key + "." + what, Means: what + " of a sheet of " + s.Name, Value: value, Origin: figure.Assumed, Source: "the usual sheet; common practice, no source"}
	}
	return []figure.Figure{assumed("length", s.Good.Length), assumed("width", s.Good.Width), assumed("thickness", measure.Exact(s.Good.Thickness))}
}

// sheetOrder is what the plans of the sheets buy.
func (p *Plan) sheetOrder() []order.Sheets {
	var list []order.Sheets
	for _, s := range p.Sheets {
		list = append(list, order.Sheets{Name: s.Name, Use: strings.Join(s.Kinds, ", "), Good: s.Good, Count: len(s.Result.Sheets)})
	}
	return list
}
