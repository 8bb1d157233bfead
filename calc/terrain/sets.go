package terrain

import (
	"pierbook/calc/figure"
	"pierbook/calc/frame"
)

// TapedSet says how much too long a tape along the slope reads.
func (g *Ground) TapedSet(f *frame.Frame) figure.Set {
	set := figure.Set{Name: "taped-lines", Key: "taped", Fields: []figure.Field{
		{Key: "level", Means: "level distance %", Formula: "by the plan"},
		{Key: "rise", Means: "rise of %", Formula: "difference of the ground at its ends"},
		{Key: "too_long", Means: "what the ground reads too long, %", Formula: "√(level² + rise²) − level", From: []string{".level", ".rise"}},
	}}
	for _, l := range g.TapedLines(f) {
		name := l.From + "-" + l.To
		set.Row(name, name, l.Level, l.Rise, l.TooLong)
	}
	return set
}
