package figure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

func TestHolds(t *testing.T) {
	for _, row := range []struct {
		name  string
		value measure.Quantity
		want  bool
	}{
		{"not known yet", nil, false},
		{"nothing", measure.Length(0), false},
		{"a length", measure.Inch, true},
		{"a length below", -measure.Inch, true},
		{"count of none", measure.Count(0), false},
		{"no", measure.Word("no"), false},
		{"none", measure.Word("none"), false},
		{"unknown", measure.Word("unknown"), false},
		{"empty", measure.Word(""), false},
		{"yes", measure.Word("yes"), true},
	} {
		assert.Equal(t, row.want, figure.Figure{Value: row.value}.Holds(), row.name)
	}
}

func TestOneFigureForAKey(t *testing.T) {
	var r figure.Registry
	r.Add(figure.Figure{Key: "a", Value: measure.Count(1)}, figure.Figure{Key: "b"})
	assert.Panics(t, func() { r.Add(figure.Figure{Key: "a"}) })
	assert.Panics(t, func() { r.Replace(figure.Figure{Key: "c"}) })

	r.Replace(figure.Figure{Key: "a", Value: measure.Count(2)})
	assert.Equal(t, "2", r.Text("a", measure.Style{}))
	assert.Empty(t, r.Text("b", measure.Style{}), "no value yet")
	assert.Empty(t, r.Text("c", measure.Style{}), "no such figure")
	assert.Len(t, r.All(), 2)
}

func TestThingsBringTheirFigures(t *testing.T) {
	beds := figure.Set{Name: "beds", Key: "bed", Fields: []figure.Field{
		{Key: "deep", Means: "depth of %", Formula: "as dug", From: []string{"least", ".long"}, Rounding: measure.Up},
		{Key: "long", Means: "length of %", Formula: "as asked"},
	}}
	beds.Row("n1", "the first", 3*measure.Inch, figure.Said{Quantity: measure.Word("long"), Working: "a + b", Source: "a handbook", Memory: true, From: []string{"least"}})
	beds.Row("n2", "the second", nil, figure.Nothing)
	assert.Panics(t, func() { beds.Row("n3", "the third", nil) })
	var r figure.Registry
	r.Add(figure.Figure{Key: "least", Value: measure.Inch})
	r.AddSets(beds)
	assert.Panics(t, func() { r.AddSets(figure.Set{Name: "beds"}) })
	deep, _ := r.Get("bed.n1.deep")
	assert.Equal(t, figure.Figure{Key: "bed.n1.deep", Means: "depth of the first", Value: 3 * measure.Inch, Rounding: measure.Up, Origin: figure.Computed, Formula: "as dug", From: []string{"least", "bed.n1.long"}}, deep)
	long, _ := r.Get("bed.n1.long")
	assert.Equal(t, figure.Figure{Key: "bed.n1.long", Means: "length of the first", Value: measure.Word("long"), Origin: figure.Computed, Formula: "as asked", Working: "a + b", Source: "a handbook", Memory: true, From: []string{"least"}}, long)
	set, known := r.Set("beds")
	assert.True(t, known)
	assert.True(t, set.Has("deep") && !set.Has("least"))
	least, known := r.Of(set.Things[1], "least")
	assert.True(t, known && least.Key == "least", "a key of the job")
	own, known := r.Of(set.Things[1], "deep")
	assert.True(t, known && own.Value == nil)
}
