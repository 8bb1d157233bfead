package strength

import (
	"fmt"

	"pierbook/calc/measure"
)

// tableDead is the dead load of the deck-beam tables: 10 psf. IRC 2021 R507.5.
const tableDead = 10

// conventions checks the beams a second time, by the convention that made the
// published deck-beam tables: simple spans, joists from one side with their
// overhang, 10 psf dead. The tables know no building on the deck.
func (c *checker) conventions() []Check {
	if c.beam.Values.Class != Dimension {
		return nil
	}
	var checks []Check
	for i, line := range c.frame.Lines {
		r := c.beamRun(i)
		span := 0.0
		for k := range r.Supports[1:] {
			span = max(span, r.Supports[k+1]-r.Supports[k])
		}
		m := SimpleSpan{Reference: c.beam.Values.Reference, Section: c.beam.Section, Wet: c.beam.Service.Wet, Incised: c.beam.Service.Incised, Duration: TenYears, LimitRatio: 360}
		live := c.job.Platform.FloorLoad
		if snow := c.snowOnFloor(); snow > live {
			live, m.Duration = snow, TwoMonths
		}
		m.Live, m.Total = c.tableLoad(i, live), c.tableLoad(i, live+psf(tableDead))
		allowed, governs := DeckBeamTable.Spans(m).Least()
		ratio := measure.Ratio(span / allowed.Metres())
		t := c.words
		checks = append(checks, Check{ID: "table." + line.Name + ".span", What: "beam " + line.Name + " by the convention of the deck-beam tables (floor load alone, no building)",
			Demand: measure.FromMetres(span), Capacity: allowed, Ratio: ratio, Clause: DeckBeamTable.Source + "; 1.10 for two plies and 1.375 on shear are inferred from the tables",
			Working: []string{
				fmt.Sprintf("w = %s, live %s", t.line(float64(m.Total)), t.line(float64(m.Live))),
				fmt.Sprintf("allowable span of %s %s as a simple span = %s, by %s", sectionName(c.beam.Section), c.beam.Values.Species, t.length(allowed), governs),
				fmt.Sprintf("span/allowed = %s/%s = %s", t.metres(span), t.length(allowed), t.ratio(float64(ratio))),
			}})
	}
	return checks
}

// tableLoad is a line's load as the tables take it: joists from one side with
// their overhang on the outer lines, halves of both sides on the inner ones.
func (c *checker) tableLoad(line int, area measure.Stress) measure.LineLoad {
	lines := c.frame.Lines
	switch line {
	case 0:
		return OverhangingJoistLoad(area, lines[1].Y-lines[0].Y, lines[0].Y)
	case len(lines) - 1:
		return OverhangingJoistLoad(area, lines[line].Y-lines[line-1].Y, c.frame.Width-lines[line].Y)
	}
	return measure.LineLoad(float64(area) * (lines[line+1].Y - lines[line-1].Y).Metres() / 2)
}
