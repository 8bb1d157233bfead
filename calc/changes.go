package calc

import (
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
	issue := Issue{Revision: saved.Job.Revision, Progress: saved.Progress, Sheets: saved.Sheets, Since: saved.Since, texts: make(map[string]string, len(saved.Figures))}
	for key, f := range saved.Figures {
		issue.texts[key] = f.Text
	}
	return issue, nil
}

// CompareWith notes what changed since the last issue. The same binder made once
// more is no new issue: it keeps what the last one told of the one before.
func (p *Plan) CompareWith(last Issue) {
	p.Last = &last
	if changes := p.changesFrom(last); len(changes) > 0 {
		p.Since = &figure.Since{Revision: last.Revision, Progress: last.Progress, Changes: changes, Unrecorded: len(last.Sheets) == 0}
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

// ofTheComparison are the figures that tell of it and take no part in it.
var ofTheComparison = []string{"has.changes", "last.revision", "last.progress"}

// lastFigures say what the last issue was, and whether this one differs.
func (p *Plan) lastFigures() []figure.Figure {
	since := figure.Since{}
	if p.Since != nil {
		since = *p.Since
	}
	const read = "read from the figures of the last issue"
	return []figure.Figure{
		yes("has.changes", "a figure reads otherwise than in the last issue", p.Since != nil, "figures of this issue against those saved with the last one"),
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
