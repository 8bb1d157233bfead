package content

import (
	"fmt"
	"slices"
	"strings"
)

// Set is a name under which sides are printed together for the people who work
// by them. A sheet has one number in all of them.
type Set string

// The sets. A day's set holds the sheets of the steps of that day; that of the
// changes, the sheets that an issue replaces. Neither stands in a page.
const (
	SetAll      Set = "all"
	SetCrew     Set = "crew"
	SetSaw      Set = "saw-and-yard"
	SetOffice   Set = "office"
	SetDrawings Set = "drawings"
	SetChanges  Set = "changes"
	setDay          = "day-"
)

// DaySet is the set of one day of the work, counted from 1.
func DaySet(day int) Set { return Set(fmt.Sprintf("%s%d", setDay, day)) }

// pageSets says in which sets a page's sides are; a side whose page break names
// sets of its own is in those instead.
var pageSets = map[string][]Set{
	"cover":               {SetCrew, SetOffice, SetChanges},
	"pocket":              {SetOffice},
	"ask":                 {SetOffice},
	"assumptions":         {SetOffice},
	"materials":           {SetSaw},
	"cuts":                {SetSaw},
	"mark-piers":          {SetCrew, SetDrawings},
	"beams":               {SetCrew, SetDrawings},
	"joists":              {SetCrew, SetDrawings},
	"instrument-check":    {SetOffice},
	"level-book":          {crewAlone},
	"sides-and-diagonals": {SetOffice},
	"post-table":          {SetOffice},
}

// Marks that stand for sets until the days and the number of piers are known.
const (
	crewOfMany Set = "crew-of-many" // the crew's where the job has more than a few piers, else the office's
	crewAlone  Set = "crew-alone"   // the same, but in the set of no day
)

// fewPiers is up to how many piers the crew goes without the sides that
// [crewOfMany] marks: the fronts of so small a job say all that its tables do.
const fewPiers = 6

// kindSets serves the pages that the table above does not name, a shop's own
// among them.
var kindSets = map[Kind][]Set{
	kindStep: {SetCrew}, kindWorksheet: {SetCrew},
	kindOrder: {SetSaw}, kindCut: {SetSaw}, kindPlan: {SetDrawings},
}

// setsOfPage returns the sets of a page's sides.
func setsOfPage(p *page) []Set {
	if sets, named := pageSets[p.name]; named {
		return sets
	}
	if sets, known := kindSets[p.kind]; known {
		return sets
	}
	return []Set{SetOffice}
}

// sidesMayName are the sets that a page break may give to the side it begins.
var sidesMayName = []Set{SetCrew, crewOfMany, crewAlone, SetSaw, SetOffice, SetDrawings, SetChanges}

// setsNamed reads the sets after a page break.
func (r *recorder) setsNamed(s span) []Set {
	var sets []Set
	for !s.empty() {
		word, rest := s.word()
		if name := Set(word.text()); slices.Contains(sidesMayName, name) {
			sets = append(sets, name)
		} else {
			var known []string
			for _, set := range sidesMayName {
				known = append(known, string(set))
			}
			r.wrong(word, fmt.Sprintf("%q is not a set of sheets", word.text()), didYouMean(word.text(), known, "write one or more of "+strings.Join(known, ", ")))
		}
		s = rest
	}
	return sets
}

// Deal puts each side into its sets once the job is known: how many piers it
// has, and the names of the steps that are worked at, day by day.
func Deal(sheets []Sheet, piers int, days [][]string) {
	for i := range sheets {
		for k := range sheets[i].Leaves {
			leaf := &sheets[i].Leaves[k]
			var sets []Set
			for _, set := range leaf.Sets {
				for _, dealt := range dealt(set, sheets[i].Name, piers, days) {
					if !slices.Contains(sets, dealt) {
						sets = append(sets, dealt)
					}
				}
			}
			leaf.Sets = sets
		}
	}
}

// dealt returns the sets that one stands for on a page.
func dealt(set Set, page string, piers int, days [][]string) []Set {
	switch {
	case (set == crewOfMany || set == crewAlone) && piers <= fewPiers:
		return []Set{SetOffice}
	case set == crewAlone:
		return []Set{SetCrew}
	case set == crewOfMany, set == SetCrew:
		return append([]Set{SetCrew}, daysOf(page, days)...)
	}
	return []Set{set}
}

func daysOf(step string, days [][]string) []Set {
	var sets []Set
	for day, steps := range days {
		if slices.Contains(steps, step) {
			sets = append(sets, DaySet(day+1))
		}
	}
	return sets
}

// InSet says whether any side of the sheet is in the set.
func (s Sheet) InSet(set Set) bool {
	return slices.ContainsFunc(s.Leaves, func(l Leaf) bool { return l.InSet(set) })
}

// InSet says whether the side is in the set.
func (l Leaf) InSet(set Set) bool { return set == SetAll || slices.Contains(l.Sets, set) }

// Changed puts the sheets that replace others into the set of the changes.
func Changed(sheets []Sheet, numbers []int) {
	for i := range sheets {
		if !slices.Contains(numbers, sheets[i].Number) {
			continue
		}
		for k := range sheets[i].Leaves {
			if leaf := &sheets[i].Leaves[k]; !leaf.InSet(SetChanges) {
				leaf.Sets = append(leaf.Sets, SetChanges)
			}
		}
	}
}
