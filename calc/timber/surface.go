package timber

import (
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
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
	rated := trade.RatedSpacing(s.SpanRating)
	result := check.Check{ID: "surface.span", What: "joist spacing under the panels", Demand: spacing, Capacity: rated, Ratio: measure.Ratio(spacing.Metres() / rated.Metres()),
		Clause: "IRC 2021 Table R503.2.1.1, span rating on the panel's stamp"}
	found := []check.Finding{tooThin("panels", s.Thickness, trade.ThinnestPanel(), "IRC 2021 Table R503.2.1.1"), {Check: result, Explain: func(t check.Words) []string {
		return []string{fmt.Sprintf("spacing/rating = %s/%d in = %s; two spans or more, strength axis across the joists", t.Length(spacing), s.SpanRating, t.Ratio(float64(result.Ratio)))}
	}}}
	allowed, source, memory, ok := trade.PanelLoad(s.SpanRating, spacing)
	if !ok {
		return found
	}
	load := check.Check{ID: "surface.load", What: "load on the panels", Demand: live, Capacity: allowed, Ratio: measure.Ratio(live / allowed), Clause: source, Memory: memory}
	return append(found, check.Finding{Check: load, Explain: func(t check.Words) []string {
		return []string{fmt.Sprintf("live load/table at the next spacing up = %s/%s = %s", t.Pressure(live), t.Pressure(allowed), t.Ratio(float64(load.Ratio)))}
	}})
}

// boards checks boards by thickness: a floor in a building by IRC Table R503.1,
// an open deck by R507.7.
func boards(s job.Surface, spacing measure.Length, building bool) check.Finding {
	use := "deck"
	if building {
		use = "floor"
	}
	best, ok := trade.FindBoard(use, s.Thickness)
	if !ok {
		return tooThin("boards", s.Thickness, trade.ThinnestBoard(use), "IRC 2021 Table R503.1 and IRC 2021 Table R507.7 have no row so thin")
	}
	result := check.Check{ID: "surface.span", What: "joist spacing under the boards", Demand: spacing, Capacity: best.Spacing,
		Ratio: measure.Ratio(spacing.Metres() / best.Spacing.Metres()), Clause: best.Source}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{fmt.Sprintf("boards %s thick, laid square to the joists: joists at most %s apart; spacing %s, ratio %s", t.Length(s.Thickness),
			t.Length(best.Spacing), t.Length(spacing), t.Ratio(float64(result.Ratio)))}
	}}
}

// tooThin fails a surface thinner than any in its table, whatever the spacing. It
// has nothing to say of one that the table has.
func tooThin(what string, thickness, least measure.Length, clause string) check.Finding {
	if !trade.Thinner(thickness, least) {
		return check.Finding{}
	}
	ratio := measure.Ratio(least.Metres() / thickness.Metres())
	result := check.Check{ID: "surface.thickness", What: "least thickness of the " + what, Demand: least, Capacity: thickness, Ratio: ratio, Clause: clause}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{fmt.Sprintf("the thinnest of the table/thickness = %s/%s = %s; no spacing of joists mends it", t.Length(least), t.Length(thickness), t.Ratio(float64(ratio)))}
	}}
}

// BoardsOnTwoJoists checks boards of an open deck of which some lie on two joists
// alone: IRC 2021 Table R507.7 allows these less than boards on three or more.
func BoardsOnTwoJoists(s job.Surface, spacing measure.Length) check.Finding {
	best, ok := trade.FindBoard("deck on two joists", s.Thickness)
	if !ok {
		return check.Finding{} // too thin on any number of joists
	}
	result := check.Check{ID: "surface.two_joists", What: "joist spacing under boards on two joists", Demand: spacing, Capacity: best.Spacing,
		Ratio: measure.Ratio(spacing.Metres() / best.Spacing.Metres()), Clause: best.Source}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{fmt.Sprintf("some boards lie on two joists alone: joists at most %s apart; spacing %s, ratio %s. Longer boards need no more than the row above", t.Length(best.Spacing), t.Length(spacing), t.Ratio(float64(result.Ratio)))}
	}}
}
