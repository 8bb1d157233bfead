package verify_test

import (
	"math"
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
		"no certificate":        func(r *cutting.Result) { r.Proofs[0].Certificate = nil },
		"no certificate, by count": func(r *cutting.Result) {
			r.Proofs[0].Certificate, r.Proofs[0].Reached = nil, cutting.ByCount
		},
		"no certificate, by search": func(r *cutting.Result) {
			r.Proofs[0].Certificate, r.Proofs[0].Reached = nil, cutting.ByClosedSearch
		},
		"no proofs at all":     func(r *cutting.Result) { r.Proofs = nil },
		"reached by nothing":   func(r *cutting.Result) { r.Proofs[0].Reached = 0 },
		"sticks by duals":      func(r *cutting.Result) { r.Proofs[1].Reached = cutting.ByDuals },
		"scale of nothing":     func(r *cutting.Result) { r.Proofs[0].Certificate.Scale = 0 },
		"scale below nothing":  func(r *cutting.Result) { r.Proofs[0].Certificate.Scale *= -1 },
		"coin of nothing":      func(r *cutting.Result) { r.Proofs[0].Certificate.Coin = 0 },
		"coin below nothing":   func(r *cutting.Result) { r.Proofs[0].Certificate.Coin *= -1 },
		"coin too large":       func(r *cutting.Result) { r.Proofs[0].Certificate.Coin *= 1_000 },
		"value past counting":  func(r *cutting.Result) { r.Proofs[0].Certificate.Values[0].Worth = math.MaxInt64 / 2 },
		"value told twice":     func(r *cutting.Result) { c := r.Proofs[0].Certificate; c.Values = append(c.Values, c.Values[0]) },
		"pattern number":       func(r *cutting.Result) { last(r); r.Sticks[len(r.Sticks)-1].Pattern++ },
		"two ways, one number": func(r *cutting.Result) { r.Sticks[len(r.Sticks)-1].Pattern = 1 },
		"price of a stick":     func(r *cutting.Result) { r.Sticks[len(r.Sticks)-2].Price-- },
		"name on a bought one": func(r *cutting.Result) { r.Sticks[0].Name = "from the rack" },
		"trim never made":      func(r *cutting.Result) { r.Sticks[0].Trim = measure.Inch },
		"cost by length":       func(r *cutting.Result) { r.ByLength = true },
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

// TestAWorsePlanIsNotProven takes each stick bought in a dearer length than need
// be and calls the plan best, however the claim is said to be reached.
func TestAWorsePlanIsNotProven(t *testing.T) {
	p := joists()
	dear := p
	dear.Stock = p.Stock[1:]
	worse, err := cutting.Plan(dear)
	require.NoError(t, err)
	best, err := cutting.Plan(p)
	require.NoError(t, err)
	require.Greater(t, worse.Cost, best.Cost)
	for _, certificate := range []*cutting.Certificate{nil, best.Proofs[0].Certificate, worse.Proofs[0].Certificate} {
		worse.Proofs[0].Certificate = certificate
		worse.Proofs[0].Reached = cutting.ByDuals
		assert.Error(t, verify.Plan(p, worse))
	}
	cost, sticks, ok := verify.Cheapest(p)
	assert.True(t, ok)
	assert.Equal(t, best.Cost, cost, "the second method tells of a search that is said to be closed")
	assert.Equal(t, best.Bought, sticks)
}

// TestSticksThatTheYardDoesNotHave buys one more than there are.
func TestSticksThatTheYardDoesNotHave(t *testing.T) {
	p := joists()
	r, err := cutting.Plan(p)
	require.NoError(t, err)
	bought := map[measure.Length]int{}
	for _, s := range r.Purchases() {
		bought[s.Length] = s.Count
	}
	for i, s := range p.Stock {
		p.Stock[i].Sticks = bought[s.Length]
	}
	require.NoError(t, verify.Plan(p, r))
	p.Stock[0].Sticks--
	assert.ErrorContains(t, verify.Plan(p, r), "the yard has 2")
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
