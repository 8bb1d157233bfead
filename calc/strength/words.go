package strength

import (
	"fmt"
	"strings"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// words prints the quantities of a working line in the job's units.
type words struct{ style measure.Style }

func (w words) length(l measure.Length) string   { return l.Print(w.style) }
func (w words) metres(m float64) string          { return measure.FromMetres(m).Print(w.style) }
func (w words) force(n float64) string           { return measure.Force(n).Print(w.style) }
func (w words) moment(nm float64) string         { return measure.Moment(nm).Print(w.style) }
func (w words) timber(s measure.Stress) string   { return measure.TimberStress(s).Print(w.style) }
func (w words) pressure(s measure.Stress) string { return s.Print(w.style) }
func (w words) line(nm float64) string           { return measure.LineLoad(nm).Print(w.style) }
func (w words) ratio(r float64) string           { return measure.Ratio(r).Print(w.style) }
func (w words) factor(r measure.Ratio) string    { return fmt.Sprintf("%.3g", float64(r)) }

// small prints a deflection: hundredths of an inch, or tenths of a millimetre.
func (w words) small(m float64) string {
	if w.style.System == measure.Metric {
		return fmt.Sprintf("%.1f mm", m*1000)
	}
	return fmt.Sprintf("%.3f in", m/0.0254)
}

// power prints a section property in in², in³, in⁴ or in millimetres alike.
func (w words) power(v float64, n int) string {
	mark := map[int]string{1: "", 2: "²", 3: "³", 4: "⁴"}[n]
	unit, scale := "in", 0.0254
	if w.style.System == measure.Metric {
		unit, scale = "mm", 0.001
	}
	for range n {
		v /= scale
	}
	return fmt.Sprintf("%.4g %s%s", v, unit, mark)
}

// times writes "value × factor = name factor", leaving factors of one out but
// naming all symbols: Fb* = Fb·CD·CM = 850 psi × 1.15.
func (w words) product(name string, value measure.Stress, symbol string, result measure.Stress, factors ...namedFactor) string {
	var symbols, numbers strings.Builder
	symbols.WriteString(symbol)
	numbers.WriteString(w.timber(value))
	for _, f := range factors {
		symbols.WriteString("·" + f.symbol)
		numbers.WriteString(" × " + w.factor(f.value))
	}
	return fmt.Sprintf("%s = %s = %s = %s", name, symbols.String(), numbers.String(), w.timber(result))
}

type namedFactor struct {
	symbol string
	value  measure.Ratio
}

// section names a cross-section: 2-2x8, 4x6, 45x145.
func sectionName(s job.Section) string {
	if s.Plies > 1 {
		return fmt.Sprintf("%d-%s", s.Plies, s.Size)
	}
	return s.Size
}
