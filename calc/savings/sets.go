package savings

import (
	"strconv"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Set returns the changes that save, the greatest saving first, with what tables
// say of each.
func Set(list []Alternative, style measure.Style) figure.Set {
	set := figure.Set{Name: "savings", Key: "saving", Known: []string{"worst"}, Fields: []figure.Field{
		{Key: "write", Means: "what to write: %", Formula: "the key and its value"},
		{Key: "saves", Means: "what it saves: %", Formula: "as planned less as changed", From: []string{".money", ".timber", ".sheets", ".piers"}},
		{Key: "if", Means: "what it depends on: %", Formula: "on what the job does not know"},
	}}
	for i, a := range list {
		set.Row(strconv.Itoa(i+1), a.Saying, measure.Word(a.Path+": "+a.Write), measure.Word(a.Saving.Print(style)), measure.Word(a.Condition))
	}
	return set
}
