package calc

import (
	"encoding/json"
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Change is a figure that reads otherwise than in the last issue.
type Change struct {
	Key, Means, Was, Is string
}

// Issue is an earlier issue of a binder, as its figures.json holds it.
type Issue struct {
	Revision string
	Progress string
	texts    map[string]string
}

// ReadIssue reads the figures.json of an earlier issue.
func ReadIssue(file []byte) (Issue, error) {
	var saved struct {
		Schema   int
		Job      figure.Heading
		Progress string
		Figures  map[string]struct{ Text string }
	}
	if err := json.Unmarshal(file, &saved); err != nil {
		return Issue{}, fmt.Errorf("reading the last issue: %w", err)
	}
	if saved.Schema != 1 {
		return Issue{}, fmt.Errorf("reading the last issue: schema %d is not known", saved.Schema)
	}
	issue := Issue{Revision: saved.Job.Revision, Progress: saved.Progress, texts: make(map[string]string, len(saved.Figures))}
	for key, f := range saved.Figures {
		issue.texts[key] = f.Text
	}
	return issue, nil
}

// CompareWith notes what changed since the last issue.
func (p *Plan) CompareWith(last Issue) {
	p.Last = &last
	for _, f := range p.Figures.All() {
		was, known := last.texts[f.Key]
		if is := f.Text(p.Style); known && was != is {
			p.Changes = append(p.Changes, Change{Key: f.Key, Means: f.Means, Was: was, Is: is})
		}
	}
	p.Figures.Replace(yes("has.changes", "an earlier issue is there to compare with", len(p.Changes) > 0))
}

// Changed says whether a figure reads otherwise than in the last issue.
func (p *Plan) Changed(key string) (was measure.Word, changed bool) {
	for _, c := range p.Changes {
		if c.Key == key {
			return measure.Word(c.Was), true
		}
	}
	return "", false
}
