package cutting_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/cutting"
	"pierbook/calc/measure"
)

func TestSawOrderOfASheet(t *testing.T) {
	const in = measure.Inch
	// Two skirts the length of the sheet, and below them two gussets side by side.
	s := cutting.Sheet{Placed: []cutting.Placed{
		{Name: "skirt 1", Length: 96 * in, Width: 14 * in},
		{Name: "skirt 2", Y: 15 * in, Length: 96 * in, Width: 14 * in},
		{Name: "gusset 1", Y: 30 * in, Length: 20 * in, Width: 12 * in},
		{Name: "gusset 2", X: 21 * in, Y: 30 * in, Length: 20 * in, Width: 10 * in},
	}}
	assert.Equal(t, []cutting.SheetCut{
		{Rip: true, At: 14 * in},
		{Rip: true, At: 29 * in},
		{Rip: true, At: 42 * in, Within: []cutting.SheetCut{
			{At: 20 * in},
			{At: 41 * in, Within: []cutting.SheetCut{{Rip: true, At: 40 * in}}},
		}},
	}, s.Saw(96*in, 48*in))
	whole := cutting.Sheet{Placed: []cutting.Placed{{Name: "floor", Length: 96 * in, Width: 48 * in}}}
	assert.Empty(t, whole.Saw(96*in, 48*in), "a whole sheet is not cut")
	corner := cutting.Sheet{Placed: []cutting.Placed{{Name: "hatch", Length: 30 * in, Width: 20 * in}}}
	assert.Equal(t, []cutting.SheetCut{{Rip: true, At: 20 * in, Within: []cutting.SheetCut{{At: 30 * in}}}}, corner.Saw(96*in, 48*in))
}

// freed cuts a sheet up as the saw is told to and counts the pieces that hold
// just one part, whose far sides are both cut or on the edge.
func freed(t require.TestingT, cuts []cutting.SheetCut, parts []cutting.Placed, right, far measure.Length) int {
	if len(cuts) == 0 {
		if len(parts) == 0 {
			return 0
		}
		require.Len(t, parts, 1, "nothing divides them")
		require.True(t, parts[0].X+parts[0].Length == right && parts[0].Y+parts[0].Width == far, "%s still hangs on waste", parts[0].Name)
		return 1
	}
	count := 0
	for _, cut := range cuts {
		var off, rest []cutting.Placed
		for _, p := range parts {
			side := p.X + p.Length
			if cut.Rip {
				side = p.Y + p.Width
			}
			if side <= cut.At {
				off = append(off, p)
				continue
			}
			near := p.X
			if cut.Rip {
				near = p.Y
			}
			require.GreaterOrEqual(t, near, cut.At, "the cut goes through %s", p.Name)
			rest = append(rest, p)
		}
		r, f := cut.At, far
		if cut.Rip {
			r, f = right, cut.At
		}
		count += freed(t, cut.Within, off, r, f)
		parts = rest
	}
	if len(parts) > 0 {
		count += freed(t, nil, parts, right, far)
	}
	return count
}

func TestSawFreesEveryPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := cutting.SheetProblem{Length: 96, Width: 48, Kerf: measure.Length(rapid.IntRange(0, 1).Draw(t, "kerf"))}
		for i := range rapid.IntRange(1, 9).Draw(t, "parts") {
			p.Parts = append(p.Parts, cutting.SheetPart{Name: fmt.Sprint("part ", i), Turns: rapid.Bool().Draw(t, "turns"),
				Length: measure.Length(rapid.IntRange(10, 96).Draw(t, "length")), Width: measure.Length(rapid.IntRange(10, 48).Draw(t, "width"))})
		}
		r, err := cutting.PlanSheets(p)
		require.NoError(t, err)
		count := 0
		for _, s := range r.Sheets {
			count += freed(t, s.Saw(p.Length, p.Width), s.Placed, p.Length, p.Width)
		}
		require.Equal(t, len(p.Parts), count)
	})
}
