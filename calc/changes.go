package calc

import (
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"slices"

	"pierbook/calc/figure"
)

// Issue is an earlier issue of a binder, as its figures.json holds it.
type Issue struct {
	Revision string
	Progress string
	Program  string         // version of the program that made it; empty when it did not say
	Sheets   []figure.Sheet // empty when that issue kept no record of them
	Since    *figure.Since  // what had changed since the issue before that one
	texts    map[string]string
}

// ReadIssue reads the figures.json of an earlier issue.
func ReadIssue(file []byte) (Issue, error) {
	var saved struct {
		Schema   int
		Job      figure.Heading
		Progress string
		Program  string
		Sheets   []figure.Sheet
		Since    *figure.Since
		Figures  map[string]struct{ Text string }
	}
	if err := json.Unmarshal(file, &saved); err != nil {
		return Issue{}, fmt.Errorf("reading the last issue: %w", err)
	}
	if saved.Schema != 1 {
		return Issue{}, fmt.Errorf("reading the last issue: schema %d is not known", saved.Schema)
	}
	issue := Issue{Revision: saved.Job.Revision, Progress: saved.Progress, Program: saved.Program, Sheets: saved.Sheets, Since: saved.Since, texts: make(map[string]string, len(saved.Figures))}
	for key, f := range saved.Figures {
		issue.texts[key] = f.Text
	}
	return issue, nil
}

// MadeBy notes which version of the program makes this issue. It comes before
// [Plan.CompareWith].
func (p *Plan) MadeBy(version string) {
	p.Program = version
	for _, f := range p.lastFigures() {
		p.Figures.Replace(f)
	}
}

// OtherProgram returns the versions of the program that made the issue before
// and the one in which figures changed, and whether they are two. What changed
// may then come from the program, and not from the job.
func (p *Plan) OtherProgram() (before, by string, other bool) {
	if p.Since == nil || p.Since.Program == p.Since.By {
		return "", "", false
	}
	return cmp.Or(p.Since.Program, unnamed), cmp.Or(p.Since.By, unnamed), true
}

// unnamed stands for the version of an issue that did not say which made it.
const unnamed = "that did not say which"

// CompareWith notes what changed since the last issue. The same binder made once
// more is no new issue: it keeps what the last one told of the one before.
func (p *Plan) CompareWith(last Issue) {
	p.Last = &last
	if changes := p.changesFrom(last); len(changes) > 0 {
		p.Since = &figure.Since{Revision: last.Revision, Progress: last.Progress, Program: last.Program, By: p.Program, Changes: changes, Unrecorded: len(last.Sheets) == 0}
	} else {
		p.Since = last.Since
	}
	for _, f := range p.lastFigures() {
		p.Figures.Replace(f)
	}
}

// changesFrom lists what reads otherwise now, in the order of the figures, and
// then what there is no more.
func (p *Plan) changesFrom(last Issue) []figure.Change {
	var changes []figure.Change
	for _, f := range p.Figures.All() {
		if was, is := last.texts[f.Key], f.Text(p.Style); was != is && !slices.Contains(ofTheComparison, f.Key) {
			changes = append(changes, figure.Change{Key: f.Key, Means: f.Means, Was: was, Is: is})
		}
	}
	for _, key := range slices.Sorted(maps.Keys(last.texts)) {
		if _, known := p.Figures.Get(key); !known && last.texts[key] != "" {
			changes = append(changes, figure.Change{Key: key, Was: last.texts[key]})
		}
	}
	return changes
}

// ofTheComparison are figures that say what the comparison found. Compared like the
// others they would differ in every issue, and no issue would be the same again.
var ofTheComparison = []string{"has.changes", "last.revision", "last.progress", "program.version", "has.other_program", "last.program", "changes.program"}

// lastFigures say what the last issue was, and whether this one differs.
func (p *Plan) lastFigures() []figure.Figure {
	since := figure.Since{}
	if p.Since != nil {
		since = *p.Since
	}
	const read = "read from the figures of the last issue"
	before, by, other := p.OtherProgram()
	return []figure.Figure{
		{Key: "program.version", Means: "version of the program that made this issue", Value: wordOrNone(p.Program), Origin: figure.Computed, Formula: "the program names itself"},
		figure.Answer("has.other_program", "another version of the program made the last issue, and a figure reads otherwise", other, "version of this issue against that saved with the last one"),
		{Key: "last.program", Means: "version of the program that made the last issue", Value: wordOrNone(before), Origin: figure.Computed, Formula: read},
		{Key: "changes.program", Means: "version of the program that made the issue in which figures changed", Value: wordOrNone(by), Origin: figure.Computed, Formula: read},
		figure.Answer("has.changes", "a figure reads otherwise than in the last issue", p.Since != nil, "figures of this issue against those saved with the last one"),
		{Key: "last.revision", Means: "revision of the last issue", Value: wordOrNone(since.Revision), Origin: figure.Computed, Formula: read},
		{Key: "last.progress", Means: "how far the job had come in the last issue", Value: wordOrNone(since.Progress), Origin: figure.Computed, Formula: read},
	}
}

// SinceLast returns what changed since the last issue, with the sheets of it that
// are to be thrown away, in their order there, and after them the new ones. A
// sheet without a mark is not compared: it tells of the comparison itself and is
// new with each issue.
func (p *Plan) SinceLast(now []figure.Sheet) *figure.Since {
	if p.Since == nil || p.Since == p.Last.Since {
		return p.Since
	}
	since := *p.Since
	if !since.Unrecorded {
		since.Sheets = replaced(p.Last.Sheets, now)
	}
	return &since
}

func replaced(before, now []figure.Sheet) []figure.SheetChange {
	var list []figure.SheetChange
	for _, was := range before {
		at := slices.IndexFunc(now, func(s figure.Sheet) bool { return s.Name == was.Name })
		switch {
		case at < 0:
			list = append(list, figure.SheetChange{Title: was.Title, Was: was.Number})
		case now[at].Mark == "" || now[at].Mark != was.Mark:
			list = append(list, figure.SheetChange{Title: now[at].Title, Was: was.Number, Is: now[at].Number})
		}
	}
	for _, is := range now {
		if !slices.ContainsFunc(before, func(s figure.Sheet) bool { return s.Name == is.Name }) {
			list = append(list, figure.SheetChange{Title: is.Title, Is: is.Number})
		}
	}
	return list
}
