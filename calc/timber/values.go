package timber

import (
	"fmt"
	"strings"

	"pierbook/calc/check"
	"pierbook/calc/measure"
)

// DesignValues returns a member's design values, each with load duration and
// stability as its worst check has them. Temperature stays ordinary, so Ct is 1
// (NDS 2018 2.3.3).
//
//	F' = F·CD·CM·Ct·CL·CF·Ci·Cr·CP·Cb, as they apply
func (m Member) DesignValues(checks []check.Check) []check.DesignValue {
	v, r := m.Values, m.Values.Reference
	var values []check.DesignValue
	add := func(what, symbol, kind string, reference, adjusted measure.Stress, own ...check.Factor) {
		result, made := worstOf(checks, m.Name, kind)
		value := check.DesignValue{Member: m.Name, What: what, Symbol: symbol, Reference: measure.TimberStress(reference), Adjusted: measure.TimberStress(adjusted), Source: v.Origin(), Memory: v.Memory}
		with := func(symbol string, factor measure.Ratio) {
			if made && factor > 0 {
				value.Factors = append(value.Factors, check.Factor{Symbol: symbol, Value: factor})
				value.Adjusted *= measure.TimberStress(factor)
			}
		}
		with("CD", measure.Ratio(result.Duration))
		value.Factors = append(value.Factors, own...)
		value.Factors = append(value.Factors, check.Factor{Symbol: "Ct", Value: 1})
		stability := "CL"
		if m.Name == "post" {
			stability = "CP"
		}
		with(stability, result.Stability)
		with("Cb", result.Area)
		value.Check = result.ID
		values = append(values, value)
	}
	if m.Name != "post" {
		add("bending", "Fb", "bending", r.Bending, v.Bending, check.Factor{Symbol: "CM", Value: v.BendingWet}, check.Factor{Symbol: "CF", Value: v.BendingSize},
			check.Factor{Symbol: "Ci", Value: v.Incising}, check.Factor{Symbol: "Cr", Value: v.Repetitive})
		add("shear", "Fv", "shear", r.Shear, v.Shear, check.Factor{Symbol: "CM", Value: v.ShearWet}, check.Factor{Symbol: "Ci", Value: v.Incising})
		add("bearing across the grain", "Fc⊥", "bearing", r.BearingAcross, v.BearingAcross, check.Factor{Symbol: "CM", Value: v.AcrossWet})
		add("stiffness", "E", "live_deflection", r.Elastic, v.Elastic, check.Factor{Symbol: "CM", Value: v.ElasticWet}, check.Factor{Symbol: "Ci", Value: v.ElasticIncising})
		return values
	}
	add("compression along the grain", "Fc", "column", r.Compression, v.Compression, check.Factor{Symbol: "CM", Value: v.CompressionWet},
		check.Factor{Symbol: "CF", Value: v.CompressionSize}, check.Factor{Symbol: "Ci", Value: v.Incising})
	add("stiffness against buckling", "Emin", "", r.ElasticMin, v.ElasticMin, check.Factor{Symbol: "CM", Value: v.ElasticWet}, check.Factor{Symbol: "Ci", Value: v.ElasticIncising})
	return values
}

// worstOf returns the check of a kind of member that comes nearest to its limit.
func worstOf(checks []check.Check, member, kind string) (check.Check, bool) {
	var worst check.Check
	for _, c := range checks {
		if kind != "" && strings.HasPrefix(c.ID, member+".") && strings.HasSuffix(c.ID, "."+kind) && (worst.ID == "" || c.Ratio > worst.Ratio) {
			worst = c
		}
	}
	return worst, worst.ID != ""
}

// Symbols are the factors on design values, in the order of NDS 2018 Table 4.3.1.
var Symbols = []string{"CD", "CM", "Ct", "CL", "CF", "Ci", "Cr", "CP", "Cb"}

// Use says what a member is cut from and how it is used.
func (m Member) Use() string {
	section := m.Section.Size
	if m.Section.Plies > 1 {
		section = fmt.Sprintf("%d plies of %s", m.Section.Plies, section)
	}
	use := []string{"dry in service", "not incised"}
	if m.Service.Wet {
		use[0] = "wet in service"
	}
	if m.Service.Incised {
		use[1] = "incised"
	}
	return section + ", " + strings.Join(use, ", ")
}
