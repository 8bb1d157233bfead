package cutting

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestSheetBoundNeverPassesTheFewestSheets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var parts []rectangle
		area := 0.0
		for range rapid.IntRange(1, 7).Draw(t, "parts") {
			r := rectangle{length: int64(rapid.IntRange(5, 90).Draw(t, "length")), width: int64(rapid.IntRange(5, 45).Draw(t, "width"))}
			r.Turns = rapid.Bool().Draw(t, "turns")
			parts = append(parts, r)
			area += float64(r.length * r.width)
		}
		bound := sheetBound(parts, 90, 45)
		require.LessOrEqual(t, bound, len(exactSheets(parts, 90, 45)))
		require.GreaterOrEqual(t, float64(bound), area/(90*45)-1e-6, "weaker than the area alone")
	})
}

// Parts just over half as wide as the sheet lie one across, so that their lengths
// alone decide: worked out by hand.
func TestSheetBoundWhereTheAreaIsNotEnough(t *testing.T) {
	tests := []struct {
		name          string
		count         int
		length, width int64
		want          int
	}{
		{"one across, two along", 20, 40, 26, 10},
		{"two across, one along", 20, 60, 20, 10},
		{"one to a sheet", 7, 51, 26, 7},
		{"three across, one along", 21, 55, 16, 7},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			var parts []rectangle
			for range test.count {
				parts = append(parts, rectangle{length: test.length, width: test.width})
			}
			assert.Equal(t, test.want, sheetBound(parts, 100, 50))
			assert.Len(t, quickSheets(parts, 100, 50), test.want)
		})
	}
}
