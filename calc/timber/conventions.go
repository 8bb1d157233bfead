package timber

import (
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/frame"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// tableDead is the dead load of the deck-beam tables: 10 psf. IRC 2021 R507.5.
const tableDead = 10 * measure.PoundPerSquareFt

// ByTable checks a beam line a second time, by the convention that made the
// published deck-beam tables: simple spans, joists from one side with their
// overhang, 10 psf dead. The tables know no building on the deck. Live load is
// that of the floor, or snow where that is more.
func (m Member) ByTable(f *frame.Frame, line int, live, snow measure.Stress) check.Finding {
	if m.Values.Class != Dimension {
		return check.Finding{}
	}
	name, r := f.Lines[line].Name, statics.BeamRun(f, line)
	span := 0.0
	for k := range r.Supports[1:] {
		span = max(span, r.Supports[k+1]-r.Supports[k])
	}
	s := SimpleSpan{Reference: m.Values.Reference, Section: m.Section, Wet: m.Service.Wet, Incised: m.Service.Incised, Duration: TenYears, LimitRatio: 360}
	if snow > live {
		live, s.Duration = snow, TwoMonths
	}
	s.Live, s.Total = tableLoad(f, line, live), tableLoad(f, line, live+tableDead)
	allowed, governs := DeckBeamTable.Spans(s).Least()
	ratio := measure.Ratio(span / allowed.Metres())
	result := check.Check{ID: "table." + name + ".span", What: "beam " + name + " by the convention of the deck-beam tables (floor load alone, no building)",
		Demand: measure.FromMetres(span), Capacity: allowed, Ratio: ratio, Clause: DeckBeamTable.Source + "; 1.10 for two plies and 1.375 on shear are inferred from the tables"}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("w = %s, live %s", t.Line(float64(s.Total)), t.Line(float64(s.Live))),
			fmt.Sprintf("allowable span of %s %s as a simple span = %s, by %s", check.SectionName(m.Section), m.Values.Species, t.Length(allowed), governs),
			fmt.Sprintf("span/allowed = %s/%s = %s", t.Metres(span), t.Length(allowed), t.Ratio(float64(ratio))),
		}
	}}
}

// tableLoad is a line's load as the tables take it: joists from one side with
// their overhang on the outer lines, halves of both sides on the inner ones.
func tableLoad(f *frame.Frame, line int, area measure.Stress) measure.LineLoad {
	lines := f.Lines
	switch line {
	case 0:
		return OverhangingJoistLoad(area, lines[1].Y-lines[0].Y, lines[0].Y)
	case len(lines) - 1:
		return OverhangingJoistLoad(area, lines[line].Y-lines[line-1].Y, f.Width-lines[line].Y)
	}
	return measure.LineLoad(float64(area) * (lines[line+1].Y - lines[line-1].Y).Metres() / 2)
}
