package strength

import (
	"fmt"

	"pierbook/calc/measure"
)

// surfaceChecks checks the floor itself over the joists: panels by their span
// rating, boards by their thickness.
func (c *checker) surfaceChecks() {
	switch c.job.Platform.Surface.Kind {
	case "panels":
		c.panels()
	case "boards":
		c.boards()
	}
}

func (c *checker) panels() {
	s, spacing := c.job.Platform.Surface, c.widestBay()
	if s.SpanRating <= 0 {
		c.unchecked = append(c.unchecked, "Panels: no span rating was given; read it off the grade stamp.")
		return
	}
	rated := measure.Length(s.SpanRating) * measure.Inch
	check := Check{ID: "surface.span", What: "joist spacing under the panels", Demand: spacing, Capacity: rated, Ratio: measure.Ratio(spacing.Metres() / rated.Metres()),
		Clause: "IRC 2021 Table R503.2.1.1, span rating on the panel's stamp"}
	c.add(finding{check, func(t words) []string {
		return []string{fmt.Sprintf("spacing/rating = %s/%d in = %s; two spans or more, strength axis across the joists", t.length(spacing), s.SpanRating, t.ratio(float64(check.Ratio)))}
	}})
	allowed, ok := panelLoad(s.SpanRating, spacing)
	if !ok {
		return
	}
	live := max(c.job.Platform.FloorLoad, c.snowOnFloor())
	load := Check{ID: "surface.load", What: "load on the panels", Demand: live, Capacity: allowed, Ratio: measure.Ratio(live / allowed), Clause: "APA E30 (2011) Table 12", Memory: true}
	c.add(finding{load, func(t words) []string {
		return []string{fmt.Sprintf("live load/table at the next spacing up = %s/%s = %s", t.pressure(live), t.pressure(allowed), t.ratio(float64(load.Ratio)))}
	}})
}

// widestBay is how far apart joists really stand: the last bay may be wider than
// the spacing asked for.
func (c *checker) widestBay() measure.Length {
	return max(c.frame.WidestBay, c.job.Frame.Joists.Spacing)
}

func (c *checker) snowOnFloor() measure.Stress { return measure.Stress(c.loads.area[snowCase]) }

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
func (c *checker) boards() {
	s, spacing := c.job.Platform.Surface, c.widestBay()
	use := "deck"
	if c.job.Building != nil {
		use = "floor"
	}
	best := boardRow{spacing: measure.Inch, source: "IRC 2021 Table R503.1 and IRC 2018 Table R507.7 have no row so thin"}
	for _, r := range readBoards() {
		if r.use == use && s.Thickness >= r.thickness && r.spacing > best.spacing {
			best = r
		}
	}
	check := Check{ID: "surface.span", What: "joist spacing under the boards", Demand: spacing, Capacity: best.spacing, Ratio: measure.Ratio(spacing.Metres() / best.spacing.Metres()), Clause: best.source}
	c.add(finding{check, func(t words) []string {
		return []string{fmt.Sprintf("boards %s thick, laid square to the joists: joists at most %s apart; spacing %s, ratio %s", t.length(s.Thickness), t.length(best.spacing), t.length(spacing), t.ratio(float64(check.Ratio)))}
	}})
}
