package cutting_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/cutting"
	"pierbook/calc/cutting/verify"
	"pierbook/calc/measure"
)

const foot = measure.Foot

func sheet(parts ...cutting.SheetPart) cutting.SheetProblem {
	return cutting.SheetProblem{Length: 8 * foot, Width: 4 * foot, Kerf: measure.Inch / 8, Parts: parts}
}

func TestSheetsOfKnownCount(t *testing.T) {
	turning := cutting.SheetPart{Name: "skirt", Length: 4 * foot, Width: 2 * foot, Turns: true}
	upright := cutting.SheetPart{Name: "closer", Length: 2 * foot, Width: 4 * foot}
	half := 4*foot - measure.Inch/16 // two of these and a kerf make 8 ft
	tests := []struct {
		name  string
		parts []cutting.SheetPart
		want  int
	}{
		{"a whole sheet", []cutting.SheetPart{{Name: "floor", Length: 8 * foot, Width: 4 * foot}}, 1},
		{"two halves lose a kerf", []cutting.SheetPart{turning, turning, turning, turning}, 2},
		{"halves less half a kerf", []cutting.SheetPart{{Name: "a", Length: half, Width: 4 * foot}, {Name: "b", Length: half, Width: 4 * foot}}, 1},
		{"grain keeps a part upright", []cutting.SheetPart{upright, upright, upright, upright}, 2},
		{"nothing", nil, 0},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := sheet(test.parts...)
			r, err := cutting.PlanSheets(p)
			require.NoError(t, err)
			require.NoError(t, verify.Sheets(p, r))
			assert.Len(t, r.Sheets, test.want)
			assert.True(t, r.Proven)
		})
	}
	_, err := cutting.PlanSheets(sheet(cutting.SheetPart{Name: "too wide", Length: foot, Width: 5 * foot}))
	assert.Error(t, err, "a part that may not turn")
}

func TestSheetsNeverBelowBoundAndAlwaysCuttable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := cutting.SheetProblem{Length: 96, Width: 48, Kerf: measure.Length(rapid.IntRange(0, 1).Draw(t, "kerf"))}
		for i := range rapid.IntRange(1, 18).Draw(t, "parts") {
			p.Parts = append(p.Parts, cutting.SheetPart{
				Name: fmt.Sprint("part ", i), Turns: rapid.Bool().Draw(t, "turns"),
				Length: measure.Length(rapid.IntRange(10, 90).Draw(t, "length")), Width: measure.Length(rapid.IntRange(10, 48).Draw(t, "width")),
			})
		}
		if len(p.Parts) > 9 && len(p.Parts) <= cutting.Dozen {
			p.Parts = p.Parts[:9] // keeps the test quick
		}
		r, err := cutting.PlanSheets(p)
		require.NoError(t, err)
		require.NoError(t, verify.Sheets(p, r))
		require.LessOrEqual(t, r.Bound, len(r.Sheets))
		if len(p.Parts) <= cutting.Dozen {
			require.True(t, r.Proven)
		}
	})
}

func BenchmarkSheetsOfADozenParts(b *testing.B) {
	b.ReportAllocs()
	p := cutting.SheetProblem{Length: 96, Width: 48, Kerf: 1}
	for i := range cutting.Dozen {
		p.Parts = append(p.Parts, cutting.SheetPart{Name: fmt.Sprint(i), Length: measure.Length(17 + 3*i%19), Width: measure.Length(11 + 5*i%17), Turns: true})
	}
	for b.Loop() {
		_, err := cutting.PlanSheets(p)
		require.NoError(b, err)
	}
}
