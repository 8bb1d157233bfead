package timber

import (
	"strings"

	"pierbook/calc/check"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Figures returns the adjusted design values with the reference values they come
// from.
func (m Member) Figures(style measure.Style) []figure.Figure {
	var figures []figure.Figure
	t := check.Words{Style: style}
	v := m.Values
	value := func(name, symbol string, reference, adjusted measure.Stress, factors ...check.Factor) {
		figures = append(figures, figure.Figure{Key: "timber." + m.Name + "." + name, Means: "adjusted " + strings.ReplaceAll(name, "_",
			" ") + " value of the " + m.Name + "s, before load duration", Value: measure.TimberStress(adjusted),
			Origin: figure.Computed, Source: v.Origin(), Memory: v.Memory, Formula: symbol + "' = " + symbol + "·CM·CF·Ci·Cr, as they apply",
			Working: t.Product(symbol+"'", reference, symbol, adjusted, factors...), From: []string{"timber.species", "timber.grade", "timber.wet", "timber.incised"}})
	}
	value("bending", "Fb", v.Reference.Bending, v.Bending, v.BendingFactors(1)[1:]...)
	value("shear", "Fv", v.Reference.Shear, v.Shear, check.Factor{Symbol: "CM", Value: v.ShearWet}, check.Factor{Symbol: "Ci", Value: v.Incising})
	value("bearing_across", "Fc⊥", v.Reference.BearingAcross, v.BearingAcross, check.Factor{Symbol: "CM", Value: v.AcrossWet})
	value("compression", "Fc", v.Reference.Compression, v.Compression, check.Factor{Symbol: "CM", Value: v.CompressionWet},
		check.Factor{Symbol: "CF", Value: v.CompressionSize}, check.Factor{Symbol: "Ci", Value: v.Incising})
	value("elastic", "E", v.Reference.Elastic, v.Elastic, check.Factor{Symbol: "CM", Value: v.ElasticWet}, check.Factor{Symbol: "Ci", Value: v.ElasticIncising})
	return figures
}

// Rests names the design value that a kind of check compares with, and its limit.
func (m Member) Rests(kind string) []string {
	value, ok := map[string]string{"bending": "bending", "shear": "shear", "bearing": "bearing_across", "live_deflection": "elastic", "total_deflection": "elastic",
		"overhang": "elastic", "span": "bending", "column": "compression", "off_centre": "compression"}[kind]
	switch {
	case !ok || m.Name == "beam" && kind == "overhang":
		return nil
	case m.Name == "post" && kind == "bearing":
		value = "compression"
	}
	from := []string{"timber." + m.Name + "." + value}
	switch kind {
	case "live_deflection":
		from = append(from, "design.live_deflection")
	case "total_deflection":
		from = append(from, "design.total_deflection")
	}
	return from
}
