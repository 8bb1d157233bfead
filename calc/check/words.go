package check

import (
	"fmt"
	"strings"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Words prints the quantities of a working line in the job's units.
type Words struct{ Style measure.Style }

func (w Words) Length(l measure.Length) string   { return l.Print(w.Style) }
func (w Words) Metres(m float64) string          { return measure.FromMetres(m).Print(w.Style) }
func (w Words) Force(n float64) string           { return measure.Force(n).Print(w.Style) }
func (w Words) Moment(nm float64) string         { return measure.Moment(nm).Print(w.Style) }
func (w Words) Timber(s measure.Stress) string   { return measure.TimberStress(s).Print(w.Style) }
func (w Words) Pressure(s measure.Stress) string { return s.Print(w.Style) }
func (w Words) Line(nm float64) string           { return measure.LineLoad(nm).Print(w.Style) }
func (w Words) Ratio(r float64) string           { return measure.Ratio(r).Print(w.Style) }
func (w Words) Factor(r measure.Ratio) string    { return fmt.Sprintf("%.3g", float64(r)) }

// Small prints a deflection: hundredths of an inch, or tenths of a millimetre.
func (w Words) Small(m float64) string {
	if w.Style.System == measure.Metric {
		return fmt.Sprintf("%.1f mm", m*1000)
	}
	return fmt.Sprintf("%.3f in", m/0.0254)
}

// Power prints a section property in in², in³, in⁴ or in millimetres alike.
func (w Words) Power(v float64, n int) string {
	mark := map[int]string{1: "", 2: "²", 3: "³", 4: "⁴"}[n]
	unit, scale := "in", 0.0254
	if w.Style.System == measure.Metric {
		unit, scale = "mm", 0.001
	}
	for range n {
		v /= scale
	}
	return fmt.Sprintf("%.4g %s%s", v, unit, mark)
}

// Product writes "value × factor = name factor", leaving factors of one out but
// naming all symbols: Fb* = Fb·CD·CM = 850 psi × 1.15.
func (w Words) Product(name string, value measure.Stress, symbol string, result measure.Stress, factors ...Factor) string {
	var symbols, numbers strings.Builder
	symbols.WriteString(symbol)
	numbers.WriteString(w.Timber(value))
	for _, f := range factors {
		symbols.WriteString("·" + f.Symbol)
		numbers.WriteString(" × " + w.Factor(f.Value))
	}
	return fmt.Sprintf("%s = %s = %s = %s", name, symbols.String(), numbers.String(), w.Timber(result))
}

// Factor is one adjustment factor with the symbol that its standard gives it.
type Factor struct {
	Symbol string
	Value  measure.Ratio
}

// SectionName names a cross-section: 2-2x8, 4x6, 45x145.
func SectionName(s job.Section) string {
	if s.Plies > 1 {
		return fmt.Sprintf("%d-%s", s.Plies, s.Size)
	}
	return s.Size
}
