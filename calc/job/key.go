package job

import (
	"slices"
	"strings"
	"sync"

	"pierbook/calc/measure"
)

// Key is one row of the table of keys. The table drives the reader, the
// entries, the schema and the blank form.
type Key struct {
	Path     string // frame.joists.spacing; a star stands for a name
	Kind     Kind
	Choices  []string // words that may stand here, in place of a value of the kind unless that is Word
	Required bool     // within the table around it, when that may be left out
	Means    string
	Default  Default // zero when there is none
	From     func(*Job) Default
	FromSays string // what From takes the default from, for the schema and the form
	Missing  string // what to write when a required value is missing
	Stars    []string
	When     func(*Job) bool // nil when the key always belongs
	Whose    string          // what the key belongs to, when it does not always: "boards"

	Letters         int            // most letters of a text, so that none fills a binder
	Least, Most     int            // range of a count, when Most is not 0
	AtLeast, AtMost measure.Length // range of a length, when not 0
	Range           *Range         // where a value makes sense for this trade; nil when any does

	put func(j *Job, v value)
}

// Default is what a value is when no file gives it.
type Default struct {
	Imperial, Metric string // as it would be written in the job; empty when there is none
	Source           string // document and clause, or "common practice, no source"
	MetricSource     string // of the metric default, when it has another
	Memory           bool   // from memory, unconfirmed
}

func (d Default) text(system measure.System) string {
	if system == measure.Metric {
		return d.Metric
	}
	return d.Imperial
}

func (d Default) source(system measure.System) string {
	if system == measure.Metric && d.MetricSource != "" {
		return d.MetricSource
	}
	return d.Source
}

const practice = "common practice, no source"

// same is a default that is written alike in both systems.
func same(text, source string) Default { return Default{Imperial: text, Metric: text, Source: source} }

func either(imperial, metric, source string) Default {
	return Default{Imperial: imperial, Metric: metric, Source: source}
}

// metricPractice marks a default whose metric value is common practice only.
func metricPractice(d Default) Default { d.MetricSource = practice; return d }

func memory(d Default) Default { d.Memory = true; return d }

// Keys returns the table of keys in the order in which they are explained,
// read and printed.
var Keys = sync.OnceValue(func() []Key {
	return withRanges(slices.Concat(jobKeys(), platformKeys(), patchKeys(), openingKeys(), buildingKeys(), wallKeys(), siteKeys(), designKeys(), timberKeys("timber", func(j *Job) *Timber { return &j.Timber }, ""),
		frameKeys(), blockKeys(), groundKeys(), cutKeys(), measuredKeys(), sheetKeys(), yardKeys(), crewKeys()))
})

// defaultFor returns the default of k for the job as far as it is read, and
// whether there is one.
func (k *Key) defaultFor(j *Job) (Default, bool) {
	d := k.Default
	if k.From != nil {
		d = k.From(j)
	}
	return d, d.text(j.Units) != ""
}

// branch is one name of the paths of the table, with what may follow it.
type branch struct {
	key   *Key
	names []string // in the order of the table
	next  map[string]*branch
	star  *branch
	kind  string // of the names that star stands for: "pier"
}

var tree = sync.OnceValue(func() *branch {
	root := &branch{}
	keys := Keys()
	for i := range keys {
		at, star := root, 0
		for name := range strings.SplitSeq(keys[i].Path, ".") {
			if name == "*" {
				at = at.starred(keys[i].Stars[star])
				star++
			} else {
				at = at.named(name)
			}
		}
		at.key = &keys[i]
	}
	return root
})

func (b *branch) named(name string) *branch {
	if b.next == nil {
		b.next = make(map[string]*branch)
	}
	if b.next[name] == nil {
		b.next[name] = &branch{}
		b.names = append(b.names, name)
	}
	return b.next[name]
}

func (b *branch) starred(kind string) *branch {
	if b.star == nil {
		b.star, b.kind = &branch{}, kind
	}
	return b.star
}
