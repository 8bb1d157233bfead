package timber

import (
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Surface checks the floor itself over joists so far apart under a live load:
// panels by their span rating, boards by their thickness, in a building or not.
// Panels without a rating are not checked.
func Surface(s job.Surface, spacing measure.Length, live measure.Stress, building bool) []check.Finding {
	switch {
	case s.Kind == "panels" && s.SpanRating > 0:
		return panels(s, spacing, live)
	case s.Kind == "boards":
		return []check.Finding{boards(s, spacing, building)}
	}
	return nil
}

func panels(s job.Surface, spacing measure.Length, live measure.Stress) []check.Finding {
	rated := measure.Length(s.SpanRating) * measure.Inch
	result := check.Check{ID: "surface.span", What: "joist spacing under the panels", Demand: spacing, Capacity: rated, Ratio: measure.Ratio(spacing.Metres() / rated.Metres()),
		Clause: "IRC 2021 Table R503.2.1.1, span rating on the panel's stamp"}
	found := []check.Finding{{Check: result, Explain: func(t check.Words) []string {
		return []string{fmt.Sprintf("spacing/rating = %s/%d in = %s; two spans or more, strength axis across the joists", t.Length(spacing), s.SpanRating, t.Ratio(float64(result.Ratio)))}
	}}}
	allowed, ok := panelLoad(s.SpanRating, spacing)
	if !ok {
		return found
	}
	load := check.Check{ID: "surface.load", What: "load on the panels", Demand: live, Capacity: allowed, Ratio: measure.Ratio(live / allowed), Clause: "APA E30 (2011) Table 12", Memory: true}
	return append(found, check.Finding{Check: load, Explain: func(t check.Words) []string {
		return []string{fmt.Sprintf("live load/table at the next spacing up = %s/%s = %s", t.Pressure(live), t.Pressure(allowed), t.Ratio(float64(load.Ratio)))}
	}})
}

// panelLoad returns the live load of a span rating at the least table spacing
// that is not below the joists'.
func panelLoad(rating int, spacing measure.Length) (measure.Stress, bool) {
	for _, r := range readPanels() {
		if r.rating == rating && spacing <= r.spacing {
			return r.live, true
		}
	}
	return 0, false
}

// boards checks boards by thickness: a floor in a building by IRC Table R503.1,
// an open deck by R507.7.
func boards(s job.Surface, spacing measure.Length, building bool) check.Finding {
	use := "deck"
	if building {
		use = "floor"
	}
	best := boardRow{spacing: measure.Inch, source: "IRC 2021 Table R503.1 and IRC 2018 Table R507.7 have no row so thin"}
	for _, r := range readBoards() {
		if r.use == use && s.Thickness >= r.thickness && r.spacing > best.spacing {
			best = r
		}
	}
	result := check.Check{ID: "surface.span", What: "joist spacing under the boards", Demand: spacing, Capacity: best.spacing, Ratio: measure.Ratio(spacing.Metres() / best.spacing.Metres()), Clause: best.source}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{fmt.Sprintf("boards %s thick, laid square to the joists: joists at most %s apart; spacing %s, ratio %s", t.Length(s.Thickness), t.Length(best.spacing), t.Length(spacing), t.Ratio(float64(result.Ratio)))}
	}}
}
