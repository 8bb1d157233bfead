package figure

import "pierbook/calc/measure"

// Answer returns a figure that pages ask with {when}, the rule of its answer and the
// figures that it is answered from.
func Answer(key, means string, holds bool, rule string, from ...string) Figure {
	word := measure.Word("no")
	if holds {
		word = "yes"
	}
	return Figure{Key: key, Means: means, Value: word, Origin: Computed, Formula: rule, Working: string(word), From: from}
}
