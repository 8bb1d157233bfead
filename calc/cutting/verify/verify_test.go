package verify_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/cutting"
	"pierbook/calc/cutting/verify"
	"pierbook/calc/measure"
)

func joists() cutting.Problem {
	return cutting.Problem{
		Kerf:   measure.Inch / 8,
		Stock:  []cutting.Stock{{Length: 12 * measure.Foot, Price: 898, Priced: true}, {Length: 16 * measure.Foot, Price: 1298, Priced: true}},
		OnHand: []cutting.Stick{{Length: 5 * measure.Foot, Count: 1, Name: "from the rack"}},
		Pieces: []cutting.Piece{{Length: 141 * measure.Inch, Count: 3, Names: []string{"J1", "J2", "J3"}}, {Length: 29 * measure.Inch, Count: 7}},
	}
}

// TestEveryLieIsCaught spoils a sound plan in one way at a time.
func TestEveryLieIsCaught(t *testing.T) {
	lies := map[string]func(r *cutting.Result){
		"piece left out":        func(r *cutting.Result) { r.Sticks[0].Cuts = r.Sticks[0].Cuts[:0] },
		"piece too short":       func(r *cutting.Result) { r.Sticks[0].Cuts[0].Length -= measure.Sixteenth },
		"name twice":            func(r *cutting.Result) { r.Sticks[0].Cuts[0].Name = "J2" },
		"stick too short":       func(r *cutting.Result) { r.Sticks[0].Length = 11 * measure.Foot },
		"mark without the kerf": func(r *cutting.Result) { last(r).Mark -= measure.Inch / 8 },
		"offcut too long":       func(r *cutting.Result) { r.Sticks[1].Left++ },
		"stick never on hand":   func(r *cutting.Result) { r.Sticks[0].Bought = false },
		"cost too low":          func(r *cutting.Result) { r.Cost-- },
		"one stick fewer":       func(r *cutting.Result) { r.Bought-- },
		"bound above cost":      func(r *cutting.Result) { r.Proofs[0].Bound++ },
		"proof that is none":    func(r *cutting.Result) { r.Proofs[0].Bound-- },
		"values too high": func(r *cutting.Result) {
			r.Proofs[0].Certificate.Values[0].Worth *= 2
			r.Proofs[0].Certificate.Bound *= 2
		},
	}
	for name, lie := range lies {
		t.Run(name, func(t *testing.T) {
			p := joists()
			r, err := cutting.Plan(p)
			require.NoError(t, err)
			require.NoError(t, verify.Plan(p, r))
			lie(&r)
			assert.Error(t, verify.Plan(p, r))
		})
	}
}

func last(r *cutting.Result) *cutting.Cut {
	for _, s := range r.Sticks {
		if n := len(s.Cuts); n > 1 {
			return &s.Cuts[n-1]
		}
	}
	panic("no stick with two pieces")
}

func TestSheetsThatCannotBeCut(t *testing.T) {
	p := cutting.SheetProblem{Length: 30, Width: 30, Parts: []cutting.SheetPart{
		{Name: "a", Length: 20, Width: 10}, {Name: "b", Length: 10, Width: 20}, {Name: "c", Length: 20, Width: 10}, {Name: "d", Length: 10, Width: 20},
	}}
	// A pinwheel: no cut from edge to edge misses every part.
	wheel := cutting.SheetResult{Sheets: []cutting.Sheet{{Placed: []cutting.Placed{
		{Name: "a", X: 0, Y: 0, Length: 20, Width: 10}, {Name: "b", X: 20, Y: 0, Length: 10, Width: 20},
		{Name: "c", X: 10, Y: 20, Length: 20, Width: 10}, {Name: "d", X: 0, Y: 10, Length: 10, Width: 20},
	}}}}
	assert.Error(t, verify.Sheets(p, wheel))
	r, err := cutting.PlanSheets(p)
	require.NoError(t, err)
	assert.NoError(t, verify.Sheets(p, r))
	assert.Len(t, r.Sheets, 2, "four parts of 200 on 900 need a second sheet when cut from edge to edge")
	assert.True(t, r.Proven)
}
