package figure_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Every way a figure comes about, and what is said of it: only what stands on a
// line of a file has a place, and what was explained above is only named.
func TestExplainEveryOrigin(t *testing.T) {
	line := fault.Place{File: "hut.yaml", Line: 5, Column: 1, Text: "ground:"}
	var r figure.Registry
	r.Add(
		figure.Figure{Key: "given", Value: measure.Count(1), Origin: figure.Given, At: line},
		figure.Figure{Key: "shop", Value: measure.Count(2), Origin: figure.Shop, At: line},
		figure.Figure{Key: "measured", Value: measure.Count(3), Origin: figure.Measured, At: line},
		figure.Figure{Key: "assumed", Value: measure.Count(4), Origin: figure.Assumed, At: line, Source: "a handbook", Memory: true},
		figure.Figure{Key: "left_out", Means: "nothing said", Origin: figure.Given},
		figure.Figure{Key: "sum", Value: measure.Count(10), Origin: figure.Computed, At: line, Formula: "all of them", Working: "1 + 2 + 3 + 4", From: []string{"given", "shop", "measured", "assumed", "left_out", "given", "no_such_key"}},
		figure.Figure{Key: "twice", Value: measure.Count(20), Origin: figure.Computed, Formula: "2 × sum", From: []string{"sum", "sum"}},
	)
	var b strings.Builder
	style := measure.Style{System: measure.Imperial}
	require.True(t, r.Explain(&b, "twice", style))
	assert.Equal(t, `twice = 20
  computed: 2 × sum
  sum = 10
    computed: all of them
    = 1 + 2 + 3 + 4
    given = 1
      given at hut.yaml:5:1: ground:
    shop = 2
      shop at hut.yaml:5:1: ground:
    measured = 3
      measured at hut.yaml:5:1: ground:
    assumed = 4
      assumed
      source: a handbook (from memory, unconfirmed)
    left_out = not known yet
      nothing said
      the job leaves it out
    given = 1 (above)
  sum = 10 (above)
`, b.String())
	assert.False(t, r.Explain(&b, "no_such_key", style))
}
