package figure

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
	"unicode/utf8"

	"pierbook/calc/measure"
)

// Explain writes where a figure comes from: the line of the file it stands on,
// the default and its source, or the rule with this job's numbers, and below it
// the figures these come from, down to what was given, assumed or read. A
// figure that was explained above is only named again.
func (r *Registry) Explain(w io.Writer, key string, style measure.Style) bool {
	f, ok := r.Get(key)
	if !ok {
		return false
	}
	e := explainer{registry: r, style: style, out: w, told: map[string]bool{}}
	e.figure(f, 0)
	return true
}

// ExplainThing writes all figures of one thing, a line each: of the pier A1, of the
// beam line B, of a stick or a step. A name may be given with or without the word
// for its kind, A1 or pier.A1. It returns false when nothing has that name.
func (r *Registry) ExplainThing(w io.Writer, name string, style measure.Style) bool {
	var keys []string
	for _, f := range r.figures {
		_, rest, _ := strings.Cut(f.Key, ".")
		own := strings.HasPrefix(f.Key, name+".") || strings.HasPrefix(rest, name+".")
		if !own {
			continue
		}
		keys = append(keys, f.Key)
	}
	r.List(w, keys, style)
	return len(keys) > 0
}

// List writes figures with what they are, a line each and none twice.
func (r *Registry) List(w io.Writer, keys []string, style measure.Style) {
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	told := map[string]bool{}
	for _, key := range keys {
		f, known := r.Get(key)
		if !known || told[key] {
			continue
		}
		told[key] = true
		text := "not known yet"
		if f.Value != nil {
			text = f.Text(style)
		}
		means := f.Means
		if utf8.RuneCountInString(text) > longestColumn {
			text, means = "", means+": "+text
		}
		fmt.Fprintf(table, "%s\t%s\t%s\n", f.Key, text, means)
	}
	table.Flush()
}

// longestColumn is the longest value that has a column; sentences stand last.
const longestColumn = 40

type explainer struct {
	registry *Registry
	style    measure.Style
	out      io.Writer
	told     map[string]bool
}

func (e *explainer) line(depth int, format string, values ...any) {
	fmt.Fprintf(e.out, "%s%s\n", strings.Repeat("  ", depth), fmt.Sprintf(format, values...))
}

func (e *explainer) figure(f Figure, depth int) {
	text := f.Text(e.style)
	if f.Value == nil {
		text = "not known yet"
	}
	if e.told[f.Key] {
		e.line(depth, "%s = %s (above)", f.Key, text)
		return
	}
	e.told[f.Key] = true
	e.line(depth, "%s = %s", f.Key, text)
	if f.Means != "" {
		e.line(depth+1, "%s", f.Means)
	}
	if f.Brief != "" {
		e.line(depth+1, "%s", f.Brief)
		return
	}
	e.origin(f, depth+1)
	for _, key := range f.From {
		if from, ok := e.registry.Get(key); ok {
			e.figure(from, depth+1)
		}
	}
}

// origin says where the value itself stands or how it was worked out. What is
// assumed stands on no line, whatever line lies nearest to where it could.
func (e *explainer) origin(f Figure, depth int) {
	switch {
	case f.At.Known() && (f.Origin == Given || f.Origin == Shop || f.Origin == Measured):
		e.line(depth, "%s at %s: %s", f.Origin, f.At, f.At.Said())
	case f.Origin == Computed && f.Formula != "":
		e.line(depth, "computed: %s", f.Formula)
	case f.Value == nil && (f.Origin == Given || f.Origin == Shop):
		e.line(depth, "the job leaves it out")
	default:
		e.line(depth, "%s", f.Origin)
	}
	if f.Working != "" {
		e.line(depth, "= %s", f.Working)
	}
	if f.Source != "" {
		memory := ""
		if f.Memory && !strings.Contains(f.Source, "from memory") {
			memory = " (from memory, unconfirmed)"
		}
		e.line(depth, "source: %s%s", f.Source, memory)
	}
}

// Keys returns all keys in the order the figures were added.
func (r *Registry) Keys() []string {
	keys := make([]string, len(r.figures))
	for i, f := range r.figures {
		keys[i] = f.Key
	}
	return keys
}
