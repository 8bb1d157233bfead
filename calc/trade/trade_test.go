package trade_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// TestEveryNameIsARowOfItsKind reads keys.go and asks each name in both systems.
func TestEveryNameIsARowOfItsKind(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "keys.go", nil, 0)
	require.NoError(t, err)
	asked := 0
	ast.Inspect(file, func(n ast.Node) bool {
		spec, ok := n.(*ast.ValueSpec)
		if !ok {
			return true
		}
		key, err := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
		require.NoError(t, err)
		kind := spec.Type.(*ast.Ident).Name
		asked++
		assert.NotPanics(t, func() {
			for _, system := range []measure.System{measure.Imperial, measure.Metric} {
				switch kind {
				case "Length":
					assert.Positive(t, trade.Length(key).In(system), key)
				case "Mass":
					assert.Positive(t, float64(trade.Mass(key).In(system)), key)
				default:
					t.Errorf("%s is a %s", key, kind)
				}
			}
		}, key)
		return true
	})
	assert.NotZero(t, asked)
}

// The two systems say nearly the same: a metric size is the round one near the
// other, never a slip of a row.
func TestBothSystemsSayNearlyTheSame(t *testing.T) {
	imperial, metric := trade.Figures(measure.Imperial), trade.Figures(measure.Metric)
	for i, f := range imperial {
		a, unit := f.Value.Base()
		b, other := metric[i].Value.Base()
		require.Equal(t, unit, other, f.Key)
		if f.Key == "trade.tape_start" {
			continue // a foot, or 100 mm: whichever mark the tape has
		}
		assert.InEpsilon(t, a, b, 0.4, f.Key)
		assert.NotEmpty(t, f.Source, f.Key)
	}
}

// IBC 2012 Table 1806.2 (reprint): presumptive bearing, friction and cohesion by
// class. Clay and silt have cohesion in the place of friction.
func TestSoilsAreAsPublished(t *testing.T) {
	for class, want := range map[string][3]float64{"bedrock": {12000, 0.70, 0}, "sedimentary_rock": {4000, 0.35, 0}, "sandy_gravel": {3000, 0.35, 0}, "gravel": {3000, 0.35, 0},
		"sand": {2000, 0.25, 0}, "silty_sand": {2000, 0.25, 0}, "clayey_sand": {2000, 0.25, 0}, "silty_gravel": {2000, 0.25, 0}, "clayey_gravel": {2000, 0.25, 0},
		"clay": {1500, 0, 130}, "sandy_clay": {1500, 0, 130}, "silt": {1500, 0, 130}} {
		s, known := trade.FindSoil(class)
		require.True(t, known, class)
		assert.InDelta(t, want[0], float64(s.Presumed/measure.PoundPerSquareFt), 1e-6, class)
		assert.InDelta(t, want[1], float64(s.Friction), 1e-9, class)
		assert.InDelta(t, want[2], float64(s.Cohesion/measure.PoundPerSquareFt), 1e-6, class)
		metric, err := measure.ParseStress(s.Bearing.Metric)
		require.NoError(t, err)
		assert.LessOrEqual(t, float64(metric), float64(s.Presumed), "%s: the metric one is rounded down", class)
	}
	for _, class := range []string{"organic", "peat", "fill"} {
		s, known := trade.FindSoil(class)
		assert.True(t, known)
		assert.False(t, s.HasPresumed(), class)
	}
}

// IRC 2021 Table R503.2.1.1(1): the span ratings that single-floor panels of a
// thickness are stamped with.
func TestRatingsFollowTheThickness(t *testing.T) {
	for text, want := range map[string][]int{"19/32 in": {16, 20}, "5/8 in": {16, 20}, "23/32 in": {24}, "3/4 in": {24}, "7/8 in": {32}, "1 3/32 in": {48}, "1 1/8 in": {48}} {
		thickness, err := measure.ParseLength(text)
		require.NoError(t, err)
		panel, known := trade.FindPanel(thickness)
		require.True(t, known, text)
		assert.Equal(t, want, panel.Ratings, text)
	}
	for _, thin := range []string{"3/8 in", "15/32 in", "1/2 in"} {
		thickness, err := measure.ParseLength(thin)
		require.NoError(t, err)
		_, known := trade.FindPanel(thickness)
		assert.False(t, known, thin)
		assert.Less(t, thickness, trade.ThinnestPanel(), thin)
	}
}

// The density of a row is that of its gravity at 15 per cent moisture: NDS
// Supplement section 3.1.3 form.
func TestDensityFollowsTheGravity(t *testing.T) {
	for _, s := range trade.AllSpecies() {
		given, err := measure.ParseDensity(s.Density.Imperial)
		require.NoError(t, err)
		assert.InDelta(t, float64(given/measure.PoundPerCubicFoot), float64(s.DensityAt(15)/measure.PoundPerCubicFoot), 0.06, s.ID)
		metric, err := measure.ParseDensity(s.Density.Metric)
		require.NoError(t, err)
		assert.InEpsilon(t, float64(given), float64(metric), 0.002, s.ID)
	}
}

func TestASlipInATableIsTold(t *testing.T) {
	for _, row := range []struct{ table, from, to, told string }{
		{"species", "hem_fir | Hem-Fir | 0.43", "hem_fir | Hem-Fir", "cells under"},
		{"species", "hem_fir | Hem-Fir | 0.43", "hem_fir | Hem-Fir | heavy", "gravity"},
		{"joints", "| 8d-ring |", "| 9d-ring |", "no 9d-ring"},
		{"nails", "| 3 in | 0.148 in | no |", "| 3 in | 0.148 in | maybe |", "yes or no"},
		{"steps", "| no: fix the beams", "| fix the beams", "neither yes nor no"},
	} {
		text := trade.TableText(row.table)
		require.Contains(t, text, row.from)
		_, err := trade.Try(row.table, strings.Replace(text, row.from, row.to, 1))
		require.Error(t, err, row.to)
		assert.Contains(t, err.Error(), row.told)
		assert.Contains(t, err.Error(), "tables/"+row.table+".txt:")
		assert.Equal(t, text, trade.TableText(row.table), "the table stays as it was")
	}
}
