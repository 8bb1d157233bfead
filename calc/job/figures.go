package job

import (
	"slices"
	"strings"

	"pierbook/calc/figure"
)

// Figures returns a figure for every key of the job that holds a single
// value, under the path of the key, and one without a value for every key that
// the job leaves out, so that a page may ask for any of them.
func (j *Job) Figures() []figure.Figure {
	var figures []figure.Figure
	for _, e := range j.Entries() {
		if e.Value != nil {
			figures = append(figures, figure.Figure{Key: e.Path, Means: e.Means, Value: e.Value, Origin: e.Origin, At: e.At, Source: e.Source, Memory: e.Memory})
		}
	}
	for _, key := range Keys() {
		if _, given := j.Entry(key.Path); !given && !strings.Contains(key.Path, "*") {
			figures = append(figures, figure.Figure{Key: key.Path, Means: key.Means, Origin: figure.Given})
		}
	}
	return append(figures, j.aliases()...)
}

// aliases are shorter names for keys of the job that many pages ask for.
func (j *Job) aliases() []figure.Figure {
	var figures []figure.Figure
	for _, alias := range []struct{ key, path string }{
		{"job.name", "name"}, {"job.client", "client"}, {"job.address", "address"}, {"job.revision", "revision"}, {"job.issued", "issued"},
		{"job.starts", "crew.starts"}, {"job.crew_people", "crew.people"}, {"instrument.kind", "ground.instrument.kind"},
		{"soil.class", "site.soil.class"}, {"soil.bearing", "site.soil.bearing"},
		{"site.septic", "site.has.septic"}, {"site.power", "site.has.power"}, {"site.fill", "site.has.fill"},
	} {
		f := figure.Figure{Key: alias.key, Origin: figure.Given}
		if e, ok := j.Entry(alias.path); ok {
			f = figure.Figure{Key: alias.key, Means: e.Means, Value: e.Value, Origin: e.Origin, At: e.At, Source: e.Source, Memory: e.Memory, From: []string{alias.path}}
		} else if i := slices.IndexFunc(Keys(), func(k Key) bool { return k.Path == alias.path }); i >= 0 {
			f.Means = Keys()[i].Means
		}
		figures = append(figures, f)
	}
	return figures
}
