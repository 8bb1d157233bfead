package strength

import (
	"fmt"
	"math"

	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// usualJoist returns the ordinary joist: the one with the widest strip of floor.
func (c *checker) usualJoist(centres, widths []float64) subject {
	usual := min(1, len(widths)-1)
	for i := 1; i < len(widths)-1; i++ {
		if widths[i] > widths[usual]+1e-9 {
			usual = i
		}
	}
	return c.joistAt(centres[usual], widths[usual], nil, "a joist")
}

// loadedJoists returns each joist that a wall or a patch stands on.
func (c *checker) loadedJoists(centres, widths []float64) []subject {
	var subjects []subject
	for i, x := range centres {
		var walls []strip
		for _, s := range c.loads.strips {
			if !s.alongX() && nearest(centres, s.x1) == i {
				walls = append(walls, s)
			}
		}
		if len(walls) > 0 {
			subjects = append(subjects, c.joistAt(x, widths[i], walls, "the joist under the "+walls[0].name))
		}
	}
	for _, p := range c.in.Patches {
		subjects = append(subjects, c.joistUnder(p, centres, widths))
	}
	return subjects
}

func nearest(places []float64, x float64) int {
	best := 0
	for i, p := range places {
		if math.Abs(p-x) < math.Abs(places[best]-x) {
			best = i
		}
	}
	return best
}

// joistAt returns the joist at x that carries a strip of floor so wide, and the
// walls that stand along it.
func (c *checker) joistAt(x, wide float64, walls []strip, what string) subject {
	g := c.floor.Gauge
	s := subject{id: "joist", what: what, member: c.joist, gauge: g,
		width: c.joist.Section.Across().Metres(), depth: c.joist.Section.Depth.Metres(), braced: c.joist.Section.Across().Metres(), held: "the surface"}
	for kind, area := range c.loads.area {
		if area == 0 {
			continue
		}
		s.cases[kind] = g.Empty()
		if loadCase(kind) != liveCase {
			s.cases[kind].Always(g.Whole, area*wide)
			continue
		}
		for _, u := range g.Unit {
			s.cases[kind].Patterned(u, area*wide)
		}
	}
	for _, line := range c.loads.strips {
		if line.alongX() && line.x1 <= x && x < line.x2 {
			s.bear(line.kind, c.floor.Across(line.y1, line.y1), line.size*wide)
		}
	}
	for _, wall := range walls {
		s.bear(wall.kind, c.floor.Across(wall.y1, wall.y2), wall.size)
	}
	if b := s.cases[buildingCase]; b.Most.Shear != nil {
		b.Lighter(c.lightShare())
	}
	return s
}

// bear adds a load that is there with its case.
func (s *subject) bear(kind loadCase, unit statics.Field, size float64) {
	if s.cases[kind].Most.Shear == nil {
		s.cases[kind] = s.gauge.Empty()
	}
	s.cases[kind].Always(unit, size)
}

// joistUnder returns the joist that takes most of a patch: its whole load when
// the patch is shorter than the spacing, else the share of one strip.
func (c *checker) joistUnder(p Patch, centres, widths []float64) subject {
	i := nearest(centres, (p.X + p.Length/2).Metres())
	s := c.joistAt(centres[i], widths[i], nil, "the joist under "+p.Name)
	share := math.Min(1, widths[i]/p.Length.Metres())
	s.cases[liveCase].Patterned(c.floor.Across(p.Y.Metres(), (p.Y+p.Width).Metres()), float64(p.Load)/p.Width.Metres()*share)
	return s
}

// joistChecks checks the joists and returns those it looked at. In a search the
// ordinary joist goes first: when it fails, the rest need no look.
func (c *checker) joistChecks() []subject {
	centres, widths := c.joistPlaces()
	usual := c.usualJoist(centres, widths)
	kinds := []func(*checker, *subject) finding{bending, shear, liveDeflection, totalDeflection, joistBearing}
	c.slender(&usual)
	c.joistOverhang(&usual)
	if c.hasty {
		for _, of := range kinds {
			c.addWorst([]subject{usual}, of)
		}
		if c.failed {
			return nil
		}
	}
	subjects := append([]subject{usual}, c.loadedJoists(centres, widths)...)
	if c.hasty {
		subjects = subjects[1:]
	}
	for _, of := range kinds {
		c.addWorst(subjects, of)
	}
	return subjects
}

// joistBearing checks Fc⊥ where a joist lies on a beam, and the least bearing.
// Between beams it hangs in hangers, whose capacity is their maker's.
func joistBearing(c *checker, s *subject) finding {
	w := worstAt{ratio: -1}
	var bearings []measure.Length
	v := s.member.Values
	for i := range s.gauge.Run.Supports {
		bearings = append(bearings, c.joistBearingLength(i))
	}
	for n, combo := range c.combos {
		e := s.under(c.combos, n)
		for i, lb := range bearings {
			w.try(combo, i, s.endOn(e, i), float64(v.BearingAcross)*s.width*lb.Metres())
		}
	}
	least := 3 * measure.Inch / 2
	short, lb := false, bearings[w.station]
	for _, b := range bearings {
		if ratio := least.Metres() / b.Metres(); ratio > 1 && ratio > w.ratio {
			w.ratio, short, lb = ratio, true, b
		}
	}
	check := Check{ID: "joist.bearing", What: "bearing of " + s.what + " on the beam", Demand: measure.Force(w.demand), Capacity: measure.Force(w.capacity), Ratio: measure.Ratio(w.ratio),
		Combination: w.combo.Name, Area: 1, Clause: "NDS 2018 3.10.2; IRC 2021 R502.6: 1 1/2 in", Memory: v.Memory}
	if short {
		check.Demand, check.Capacity = least, lb
	}
	return finding{check, func(t words) []string {
		lines := []string{
			fmt.Sprintf("R = %s at line %s (%s)", t.force(w.demand), c.frame.Lines[w.station].Name, w.combo.Name),
			fmt.Sprintf("bearing = %s wide × %s long", t.metres(s.width), t.length(lb)),
			t.product("F'c⊥", v.Reference.BearingAcross, "Fc⊥", v.BearingAcross, namedFactor{"CM", v.AcrossWet}, namedFactor{"Cb", 1}),
			fmt.Sprintf("R/(b·lb·F'c⊥) = %s; least bearing %s", t.ratio(w.ratio), t.length(least)),
		}
		if c.between() {
			lines = append(lines, "the joists hang between the beams: a hanger for R at each end, by its maker's table")
		}
		return lines
	}}
}

// endOn returns what one joist puts on a line: where joists end at it, the greater
// of the two that meet there.
func (s *subject) endOn(e statics.Envelope, line int) float64 {
	if !s.gauge.Run.Hinges[line] || line == 0 || line == len(s.gauge.Run.Supports)-1 {
		return e.Most.Reactions[line]
	}
	return s.greaterEnd(e, line)
}

// joistBearingLength returns how much of a joist lies on a line's beam.
func (c *checker) joistBearingLength(line int) measure.Length {
	if c.between() {
		return 3 * measure.Inch / 2 // the seat of a hanger
	}
	half := c.frame.Sections.Beam.Across() / 2
	y, j := c.frame.Lines[line].Y, c.frame.Joists[0]
	return max(min(y+half, j.To)-max(y-half, j.From), measure.Millimetre)
}

// slender checks depth over width by the rule of NDS 2018 4.4.1: up to 2:1 free,
// 4:1 with the ends held, 5:1 with one edge held, 6:1 with bridging besides.
func (c *checker) slender(s *subject) {
	nominal := func(m float64) float64 { return math.Ceil(m/0.0254 - 1e-9) }
	ratio := nominal(s.depth) / nominal(s.braced)
	needs := ""
	if ratio > 5 {
		needs = "bridging or blocking at most 8 ft apart"
	}
	held, allowed := "held along its upper edge by "+s.held+", ends held", 5.0
	check := Check{ID: s.id + ".stability", What: "slenderness of " + s.what, Demand: measure.Ratio(ratio), Capacity: measure.Ratio(allowed), Ratio: measure.Ratio(ratio / allowed),
		Clause: "NDS 2018 4.4.1; the rows for 5 to 7 are from memory", Memory: ratio > 4, Needs: needs}
	if ratio > 6 {
		check.Needs = ""
	}
	c.add(finding{check, func(t words) []string {
		lines := []string{fmt.Sprintf("nominal depth over width = %.0f/%.0f = %s; allowed %s (%s)", nominal(s.depth), nominal(s.braced), t.ratio(ratio), t.ratio(allowed), held)}
		if needs != "" {
			lines = append(lines, "above 5 and up to 6: "+needs)
		}
		return lines
	}})
}

// joistOverhang checks joists that stand out past the outer beam.
//
//	a ≤ L/4   and   a·(L + a) ≤ 3·E'·I/(180·220 lb)
//
// The rule behind the cantilevers of IRC 2018 R507.6, of which it gives 33 of 36.
func (c *checker) joistOverhang(s *subject) {
	parts := s.gauge.Parts
	if c.between() {
		return
	}
	var worst, over, back, allowed float64
	for i, p := range parts {
		if !s.gauge.Overhang(i) || p.Long < overhangsFrom {
			continue
		}
		span := parts[max(1, min(i, len(parts)-2))].Long
		a := min(span/4, s.overhangByStiffness(span))
		if p.Long/a > worst {
			worst, over, back, allowed = p.Long/a, p.Long, span, a
		}
	}
	if worst == 0 {
		return
	}
	check := Check{ID: "joist.overhang", What: "overhang of the joists past the outer beam", Demand: measure.FromMetres(over), Capacity: measure.FromMetres(allowed), Ratio: measure.Ratio(worst),
		Clause: "IRC 2018 R507.6 (rule inferred from its table)"}
	c.add(finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("L/4 = %s/4 = %s", t.metres(back), t.metres(back/4)),
			fmt.Sprintf("a·(L + a) = 3·E'·I/(180 × 220 lb) gives a = %s", t.metres(s.overhangByStiffness(back))),
			fmt.Sprintf("a = %s, ratio %s", t.metres(over), t.ratio(worst)),
		}
	}})
}

// overhangByStiffness solves a·(L + a) = 3·E'·I/(180·P) for a, P = 220 lb.
func (s *subject) overhangByStiffness(span float64) float64 {
	k := 3 * float64(s.member.Values.Elastic) * s.inertia() / (180 * 220 * float64(measure.PoundForce))
	return (-span + math.Sqrt(span*span+4*k)) / 2
}
