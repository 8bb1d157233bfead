package figure

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/measure"
)

// Set is things of one kind in the order in which tables list them: the piers,
// the sticks to cut, the lines of the order. Each thing has figures under a key
// of its own, so that a page asks of every row what it may ask of the job.
type Set struct {
	Name   string   // what a page asks for: "piers"
	Key    string   // before the name of each thing: "pier" of pier.A1.dig; empty where the names are whole keys
	Fields []Field  // the figures that each thing brings along
	Known  []string // the last parts of the keys of figures of each that were registered before
	Things []Thing
}

// Field is a figure that each thing of a set has.
type Field struct {
	Key      string   // after the thing's own: "dig"
	Means    string   // with % where the thing's name belongs: "depth of the hole at %"
	Formula  string   // the rule
	From     []string // keys of figures; one that begins with a dot is the thing's own
	Rounding measure.Rounding
}

// Thing is one thing of a set.
type Thing struct {
	Key    string // of its figures: "pier.A1"
	Name   string // as the sheets call it
	values []measure.Quantity
}

// Nothing is the value of what a thing does not have: it prints as nothing, where
// a figure without a value prints as a blank to fill in.
const Nothing = measure.Word("")

// Said is a value with more to say of it than its field does.
type Said struct {
	measure.Quantity
	Working, Source string
	Memory          bool
	From            []string // in the place of the field's
}

// Row adds a thing: the part of its key that names it, its name, and a value for
// each field in their order. Another number of values is a programming mistake
// and panics.
func (s *Set) Row(key, name string, values ...measure.Quantity) {
	if len(values) != len(s.Fields) {
		panic(fmt.Sprintf("figure: a row of %d values in the set %s of %d fields", len(values), s.Name, len(s.Fields)))
	}
	s.Things = append(s.Things, Thing{Key: strings.TrimPrefix(s.Key+"."+key, "."), Name: name, values: values})
}

// Has says whether each thing has a figure with that last part of its key.
func (s *Set) Has(key string) bool { return slices.Contains(s.Keys(), key) }

// Keys returns the last parts of the keys of the figures that each thing has, as
// far as the set knows them.
func (s *Set) Keys() []string {
	keys := slices.Clone(s.Known)
	for _, f := range s.Fields {
		keys = append(keys, f.Key)
	}
	return keys
}

// Figures returns the figures of all things, thing by thing.
func (s *Set) Figures() []Figure {
	figures := make([]Figure, 0, len(s.Things)*len(s.Fields))
	for _, t := range s.Things {
		for i, field := range s.Fields {
			f := Figure{Key: t.Key + "." + field.Key, Means: strings.Replace(field.Means, "%", t.Name, 1), Value: t.values[i],
				Rounding: field.Rounding, Origin: Computed, Formula: field.Formula, From: t.own(field.From)}
			if said, more := f.Value.(Said); more {
				f.Value, f.Working, f.Source, f.Memory = said.Quantity, said.Working, said.Source, said.Memory
				if said.From != nil {
					f.From = said.From
				}
			}
			figures = append(figures, f)
		}
	}
	return figures
}

// own puts the thing's key before those that are its own.
func (t Thing) own(from []string) []string {
	for i, key := range from {
		if key[0] == '.' {
			from = slices.Clone(from)
			for ; i < len(from); i++ {
				if from[i][0] == '.' {
					from[i] = t.Key + from[i]
				}
			}
		}
	}
	return from
}

// AddSets puts sets with their figures into the registry. Two sets with one name
// are a programming mistake and panic.
func (r *Registry) AddSets(sets ...Set) {
	for _, s := range sets {
		if _, twice := r.Set(s.Name); twice {
			panic(fmt.Sprintf("figure: the set %s added twice", s.Name))
		}
		r.Add(s.Figures()...)
		r.sets = append(r.sets, s)
	}
}

// Set returns the set with the name and whether there is one.
func (r *Registry) Set(name string) (Set, bool) {
	i := slices.IndexFunc(r.sets, func(s Set) bool { return s.Name == name })
	if i < 0 {
		return Set{}, false
	}
	return r.sets[i], true
}

// Sets returns all sets in the order they were added. The caller must not change
// the slice.
func (r *Registry) Sets() []Set { return r.sets }

// Of returns a thing's own figure by the last part of its key, or else the figure
// of the whole job with that key.
func (r *Registry) Of(t Thing, key string) (Figure, bool) {
	if f, own := r.Get(t.Key + "." + key); own {
		return f, true
	}
	return r.Get(key)
}

// Yes is the word for what holds or not, as conditions of pages read it.
func Yes(holds bool) measure.Word {
	if holds {
		return "yes"
	}
	return "no"
}
