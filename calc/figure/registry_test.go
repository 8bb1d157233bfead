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
