package fault

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Names written in part: by initials, beginning or number, where one choice fits.
func TestNearestKnowsAbbreviations(t *testing.T) {
	species := []string{"douglas_fir_larch", "hem_fir", "spruce_pine_fir", "southern_pine"}
	for name, want := range map[string]string{"SPF": "spruce_pine_fir", "spf": "spruce_pine_fir", "douglas fir": "douglas_fir_larch", "Hem-Fir": "hem_fir", "s": "", "fir": ""} {
		assert.Equal(t, want, Nearest(name, species), name)
	}
	grades := []string{"Select Structural", "No.1", "No.2", "No.3"}
	assert.Equal(t, "No.2", Nearest("2", grades))
	assert.Equal(t, "No.2", Nearest("#2", grades))
	assert.Equal(t, "Select Structural", Nearest("SS", grades))
}

// The same slip in twenty readings is told once, with its places; three are told
// one by one.
func TestTheSameFaultManyTimesIsToldOnce(t *testing.T) {
	told := func(n int) string {
		var l List
		for i := range n {
			l.Add(Fault{At: Place{File: "job.yaml", Line: 10 + i, Column: 5, Text: "A1: 49", Length: 2}, Path: fmt.Sprintf("measured.seats.A%d", i+1),
				Wrong: fmt.Sprintf("%q has no unit", fmt.Sprint(40+i)), Remedy: "write it with its unit"})
		}
		l.Add(Fault{At: Place{File: "job.yaml", Line: 1, Column: 1, Text: "x"}, Wrong: "another fault"})
		var out strings.Builder
		l.Print(&out)
		return out.String()
	}
	assert.Equal(t, 3, strings.Count(told(3), "has no unit"))
	many := told(20)
	assert.Equal(t, 1, strings.Count(many, "has no unit"))
	assert.Contains(t, many, `the same at 19 more places: 11:5 ("41"), 12:5 ("42")`)
	assert.Contains(t, many, "and 7 more")
	assert.Contains(t, many, "another fault")
}

// A reading among many is told alone, with its name.
func TestSaidIsTheReadingAlone(t *testing.T) {
	p := Place{File: "job.yaml", Line: 3, Column: 22, Text: `  - [bench_mark: 4', A1: 4' 9 1/2", A2: 5']`, Length: 2}
	assert.Equal(t, `A1: 4' 9 1/2"`, p.Said())
}
