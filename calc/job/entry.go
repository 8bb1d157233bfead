package job

import (
	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Entry is one key of the job with what it holds and where that came from.
type Entry struct {
	Path   string           // frame.joists.spacing
	Text   string           // the value as the file has it, or the default as it would be written
	Value  measure.Quantity // the same as it prints, nil for lists and tables
	Means  string           // from the table of keys
	Origin figure.Origin
	At     fault.Place // for given and shop values
	Source string      // of a default
	Memory bool        // the default is from memory
}

// Entries returns every key that has a value, in the order of the table of keys.
func (j *Job) Entries() []Entry { return j.entries }

// Entry returns the entry at a path and whether there is one.
func (j *Job) Entry(path string) (Entry, bool) {
	i, ok := j.index[path]
	if !ok {
		return Entry{}, false
	}
	return j.entries[i], true
}

// Figure returns the figure of a value that stands in the job under a path, or is
// its default, with the pedigree that the job knows. A word left empty has no value.
func (j *Job) Figure(key, means, path string, value measure.Quantity) figure.Figure {
	f := figure.Figure{Key: key, Means: means, Value: value, Origin: figure.Given, At: j.At(path)}
	if e, ok := j.Entry(path); ok {
		f.Origin, f.Source, f.Memory = e.Origin, e.Source, e.Memory
	}
	if word, isWord := value.(measure.Word); isWord && word == "" {
		f.Value = nil
	}
	return f
}

// At returns where the value at path stands. When it is a default, or when the
// path has no entry of its own, it is the place of the nearest map around it
// that the file does hold, and in the end the file itself.
func (j *Job) At(path string) fault.Place {
	if j.places == nil {
		return fault.Place{}
	}
	for {
		if e, ok := j.Entry(path); ok && e.At.Known() {
			return e.At
		}
		if at, ok := j.places[path]; ok && (at.Known() || path == "") {
			return at
		}
		path = path[:max(0, lastDot(path))]
	}
}

// NameAt returns where the name at the end of a path stands, which the file is
// free to choose: the id of a question, a step, a pier. For any other path it is
// [Job.At].
func (j *Job) NameAt(path string) fault.Place {
	if at, ok := j.names[path]; ok {
		return at
	}
	return j.At(path)
}

func lastDot(path string) int {
	for i := len(path) - 1; i >= 0; i-- {
		if path[i] == '.' {
			return i
		}
	}
	return -1
}

// Basis tells where a value of the job comes from: the job file, or the source
// of its default.
func (j *Job) Basis(path string) string {
	if e, ok := j.Entry(path); ok && e.Source != "" {
		return e.Source
	}
	return "job file"
}

// Recalled tells values whose default, or its source, is from memory.
func (j *Job) Recalled(path string) bool {
	e, ok := j.Entry(path)
	return ok && e.Memory
}
