package job

import (
	"strconv"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Oddities lists the values of the job that were taken although they are out of
// the usual, so that whoever reads the assumptions looks at them first.
func (j *Job) Oddities() figure.Set {
	set := figure.Set{Name: "oddities", Key: "odd", Fields: []figure.Field{
		{Key: "where", Means: "place of the odd value %", Formula: "the value's line in the file"},
		{Key: "saying", Means: "what is odd about the value %", Formula: "outside its usual range in the table of keys, or beside another value"},
	}}
	for i, d := range j.Doubts() {
		where := d.At.File
		if d.At.Line > 0 {
			where += ":" + strconv.Itoa(d.At.Line)
		}
		set.Row(strconv.Itoa(i+1), d.Path, measure.Word(where), measure.Word(d.Saying))
	}
	return set
}
