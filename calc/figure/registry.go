package figure

import (
	"fmt"

	"pierbook/calc/measure"
)

// Registry holds the figures of one job in the order they were worked out.
// The zero Registry is empty and ready for use.
type Registry struct {
	figures []Figure
	index   map[string]int
	sets    []Set
}

// Add puts figures into the registry. Two figures with one key are a
// programming mistake and panic.
func (r *Registry) Add(figures ...Figure) {
	if r.index == nil {
		r.index = make(map[string]int)
	}
	for _, f := range figures {
		if _, twice := r.index[f.Key]; twice {
			panic(fmt.Sprintf("figure: %s added twice", f.Key))
		}
		r.index[f.Key] = len(r.figures)
		r.figures = append(r.figures, f)
	}
}

// Get returns the figure with the key and whether there is one.
func (r *Registry) Get(key string) (Figure, bool) {
	i, ok := r.index[key]
	if !ok {
		return Figure{}, false
	}
	return r.figures[i], true
}

// All returns the figures in the order they were added. The caller must not
// change the slice.
func (r *Registry) All() []Figure { return r.figures }

// Text returns how the figure with the key prints, or "" when there is none or
// it has no value yet.
func (r *Registry) Text(key string, style measure.Style) string {
	f, _ := r.Get(key)
	return f.Text(style)
}

// Replace puts another figure in the place of the one with its key. It panics
// when there is none.
func (r *Registry) Replace(f Figure) {
	i, ok := r.index[f.Key]
	if !ok {
		panic(fmt.Sprintf("figure: no %s to replace", f.Key))
	}
	r.figures[i] = f
}

// Relabel names the files that figures stand in by another name each.
func (r *Registry) Relabel(name func(file string) string) {
	for i := range r.figures {
		if at := &r.figures[i].At; at.File != "" {
			at.File = name(at.File)
		}
	}
}
