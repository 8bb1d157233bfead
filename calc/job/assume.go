package job

import (
	"cmp"
	"fmt"
	"slices"

	"pierbook/calc/fault"
	"pierbook/calc/figure"
)

// defaults gives every key its default that no file gives, in the order of the
// table, and reports keys that do not belong or are missing.
func (r *reader) defaults() {
	keys := Keys()
	for i := range keys {
		key := &keys[i]
		if len(key.Stars) > 0 || !r.opened(key.Path) {
			continue
		}
		at, given := r.given[key.Path]
		belongs := key.When == nil || key.When(r.job)
		switch {
		case given && !belongs:
			r.wrong(key.Path, at, "this key is for "+key.Whose, "take it out, or change what it goes with")
		case !given && belongs:
			r.assume(key)
		}
	}
}

// opened says whether all optional tables around a path are in the files.
func (r *reader) opened(path string) bool {
	for i := lastDot(path); i >= 0; i = lastDot(path[:i]) {
		if optional[path[:i]] == nil {
			continue
		}
		if _, there := r.tables[path[:i]]; !there {
			return false
		}
	}
	return true
}

func (r *reader) assume(key *Key) {
	d, ok := key.defaultFor(r.job)
	if !ok {
		if key.Required && !r.spoilt(key.FromSays) && !r.spoilt(key.Path) {
			r.wrong(key.Path, r.around(key.Path), "is missing", key.Missing)
		}
		return
	}
	text := d.text(r.job.Units)
	var v value
	err := key.readScalar(&v, text)
	if err == nil {
		err = key.refuse(v, text)
	}
	if err != nil {
		r.unfit(key, text, err)
		return
	}
	key.put(r.job, v)
	r.entries[key.Path] = append(r.entries[key.Path], Entry{Path: key.Path, Text: text, Value: v.quantity(key), Means: key.Means, Origin: figure.Assumed, Source: d.source(r.job.Units), Memory: d.Memory})
}

// unfit reports a default that makes no sense where it was worked out from a value
// of the user's. One taken from a value that is at fault itself is no second fault.
func (r *reader) unfit(key *Key, text string, err error) {
	if r.bad[key.FromSays] || key.From == nil && !r.faults.Empty() {
		return
	}
	if key.From == nil {
		panic(fmt.Sprintf("job: default of %s: %v", key.Path, err))
	}
	path := key.Path
	if _, given := r.given[key.FromSays]; given {
		path = key.FromSays
	}
	r.wrong(path, r.at(path), fmt.Sprintf("%s, worked out from it, would be %s: %s", key.Path, text, err), "change it, or write "+key.Path+" yourself")
}

// spoilt says whether a wrong value stands at a path or around it, so that what
// is missing there is no fault of its own.
func (r *reader) spoilt(path string) bool {
	for path != "" {
		if r.bad[path] {
			return true
		}
		path = path[:max(0, lastDot(path))]
	}
	return false
}

// around returns the place of the nearest table around path that a file holds.
func (r *reader) around(path string) fault.Place {
	for i := lastDot(path); i >= 0; i = lastDot(path[:i]) {
		if at, there := r.tables[path[:i]]; there {
			return at
		}
	}
	return r.tables[""]
}

// at returns the place of a key, or of the table around it.
func (r *reader) at(path string) fault.Place {
	if at, given := r.given[path]; given {
		return at
	}
	if at, there := r.tables[path]; there {
		return at
	}
	return r.around(path)
}

// publish puts the entries in the order of the table of keys.
func (r *reader) publish() {
	j := r.job
	j.index = make(map[string]int)
	j.places, j.names, j.doubts = r.tables, r.names, r.doubts
	slices.SortStableFunc(j.doubts, func(a, b Doubt) int {
		return cmp.Or(cmp.Compare(a.At.File, b.At.File), cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column), cmp.Compare(a.Path, b.Path))
	})
	for _, key := range Keys() {
		for _, e := range r.entries[key.Path] {
			j.index[e.Path] = len(j.entries)
			j.entries = append(j.entries, e)
		}
	}
}
