package main

import (
	"bytes"
	"fmt"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"pierbook/calc"
	"pierbook/calc/crew"
	"pierbook/content"
	"pierbook/layouts"
	"pierbook/layouts/blocks"
)

// everyDay asks for the set of each day of the work.
const everyDay content.Set = "day"

// setNames are the sets that a person may ask for, with their titles.
var setNames = []struct {
	set   content.Set
	title string
}{
	{content.SetAll, "All sheets"},
	{content.SetCrew, "Crew"},
	{everyDay, "Day"},
	{content.SetSaw, "Saw and yard"},
	{content.SetOffice, "Office"},
	{content.SetDrawings, "Drawings"},
	{content.SetChanges, "Changes"},
}

var oneDay = regexp.MustCompile(`^day-[1-9][0-9]*$`)

// setAsked reads the name of a set as a person types it: in capitals, with
// blanks for hyphens, or one word of it.
func setAsked(typed string) (content.Set, bool) {
	name := strings.Join(strings.FieldsFunc(strings.ToLower(typed), func(c rune) bool { return c == ' ' || c == '-' || c == '_' }), "-")
	for _, known := range setNames {
		if name != "" && (name == string(known.set) || name != "and" && slices.Contains(strings.Split(string(known.set), "-"), name)) {
			return known.set, true
		}
	}
	return content.Set(name), oneDay.MatchString(name)
}

// listOfSets names the sets for help and faults.
func listOfSets() string {
	var names []string
	for _, known := range setNames {
		names = append(names, string(known.set))
	}
	return strings.Join(names, ", ")
}

// deal puts the sides of a job's sheets into their sets, and returns the sets
// that hold any.
func deal(p *calc.Plan, sheets []content.Sheet) []layouts.PrintSet {
	days := make([][]string, len(p.Weekend.Days))
	for i, day := range p.Weekend.Days {
		for _, part := range day.Parts {
			days[i] = append(days[i], part.Step)
		}
	}
	content.Deal(sheets, len(p.Frame.Piers), days)
	if since := p.SinceLast(blocks.Issued(sheets)); since != nil {
		var changed []int
		for _, change := range since.Sheets {
			changed = append(changed, change.Is)
		}
		if since.Unrecorded {
			for _, s := range sheets {
				changed = append(changed, s.Number)
			}
		}
		content.Changed(sheets, changed)
	}
	var sets []layouts.PrintSet
	offer := func(name content.Set, title string) {
		if slices.ContainsFunc(sheets, func(s content.Sheet) bool { return s.InSet(name) }) {
			sets = append(sets, layouts.PrintSet{Name: name, Title: title})
		}
	}
	for _, known := range setNames {
		switch {
		case known.set == everyDay:
			for i := range days {
				name := crew.DayName(p.Job.Crew.Starts, i)
				if !strings.HasPrefix(name, known.title) {
					name = known.title + ", " + name
				}
				offer(content.DaySet(i+1), name)
			}
		case known.set != content.SetChanges || p.Since != nil:
			offer(known.set, known.title)
		}
	}
	return sets
}

// noSet says that a job's binder has nothing of a set.
type noSet struct {
	job     string
	asked   content.Set
	offered []layouts.PrintSet
}

func (n noSet) Error() string {
	if n.asked == content.SetChanges {
		return fmt.Sprintf("%s has no earlier issue, so nothing of it has changed\n  make the whole binder first; the set of the changes comes with the second issue", n.job)
	}
	var names []string
	for _, set := range n.offered {
		names = append(names, string(set.Name))
	}
	return fmt.Sprintf("%s has no set %q\n  its sets are %s", n.job, n.asked, strings.Join(names, ", "))
}

// chosen returns the sets among those offered that were asked for.
func chosen(job string, asked content.Set, offered []layouts.PrintSet) ([]content.Set, error) {
	var names []content.Set
	for _, set := range offered {
		if set.Name == asked || asked == everyDay && oneDay.MatchString(string(set.Name)) {
			names = append(names, set.Name)
		}
	}
	if len(names) == 0 {
		return nil, noSet{job, asked, offered}
	}
	return names, nil
}

// setFile is the file of a set.
func setFile(set content.Set) string {
	if set == content.SetAll {
		return binderFile
	}
	return setPrefix + string(set) + ".html"
}

// carryOver keeps files of an earlier run beside those of this one, while both
// tell of the same issue: a set made by itself takes nothing away.
func carryOver(out, folder string, files map[string][]byte) error {
	before, err := readPlain(filepath.Join(out, folder, figuresFile), mostFigures)
	if err != nil || !bytes.Equal(before, files[figuresFile]) {
		return nil // no issue, or another one: its files would contradict these
	}
	found, err := filepath.Glob(filepath.Join(quoted(out), quoted(folder), "*"))
	if err != nil {
		return err
	}
	for _, file := range found {
		name := filepath.Base(file)
		if _, made := files[name]; made || !isOwnFile(name) {
			continue
		}
		if text, err := readPlain(file, mostKept); err == nil {
			files[name] = text
		}
	}
	return nil
}

// mostKept is the largest file that is carried over: binders are smaller.
const mostKept = 64 << 20

// quoted writes a path so that no sign in it stands for others.
func quoted(name string) string {
	return regexp.MustCompile(`[*?\[\]]`).ReplaceAllString(path.Clean(filepath.ToSlash(name)), `[$0]`)
}

// pagesAmong names the files that a person opens: of the whole binder its
// index, of sets each.
func pagesAmong(files map[string][]byte, set content.Set) []string {
	if set == "" {
		return []string{binderFile}
	}
	var names []string
	for name := range files {
		if strings.HasSuffix(name, ".html") {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}
