package yard

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pierbook/calc/cutting"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// SheetPlan is how the parts of one kind of sheet are cut from it.
type SheetPlan struct {
	Name   string // of the sheet
	Good   job.SheetGood
	Kinds  []string // of parts: "skirt", "gusset"
	Parts  int
	Result cutting.SheetResult
}

// PlanSheets lays the parts of the job on sheets, one plan for each kind of sheet,
// by name. The reader of the job has seen to it that every part goes on its sheet.
func PlanSheets(j *job.Job) []SheetPlan {
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

// sameCuts leaves the names aside: sheets whose parts differ in name alone are cut
// in one go.
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

// Use says what the parts are: "skirt, gusset".
func (s SheetPlan) Use() string { return strings.Join(s.Kinds, ", ") }
