package strength

import (
	"fmt"
	"math"

	"pierbook/calc/measure"
)

// pierChecks checks post, block, stone and soil at every pier.
func (c *checker) pierChecks(piers []PierLoad) {
	for _, i := range c.heaviestFirst(piers) {
		p := &piers[i]
		if c.hasty && c.failed {
			return
		}
		c.postColumn(p)
		c.postBearing(p)
		c.postOffCentre(p)
		c.blockRating(p)
		c.onStone(p)
		c.onSoil(p)
		c.tilted(p)
		c.tall(p)
		c.braced(p)
	}
}

// heaviestFirst returns the order in which piers are looked at: as they stand, or
// in a search the heaviest alone, then the rest.
func (c *checker) heaviestFirst(piers []PierLoad) []int {
	order := make([]int, len(piers))
	heaviest := 0
	for i := range piers {
		order[i] = i
		if piers[i].Most > piers[heaviest].Most {
			heaviest = i
		}
	}
	if c.hasty {
		order[0], order[heaviest] = order[heaviest], order[0]
	}
	return order
}

// postColumn checks a post as a pinned column: fc ≤ F'c = Fc*·CP.
func (c *checker) postColumn(p *PierLoad) {
	s, v := c.post.Section, c.post.Values
	area, d := float64(s.Width.Times(s.Depth)), min(s.Width, s.Depth)
	slender := measure.Ratio(p.Height.Post.Metres() / d.Metres())
	best := worstAt{ratio: -1}
	var cp measure.Ratio
	for _, combo := range c.onPier {
		star := v.Compression * measure.Stress(combo.Duration)
		factor, _ := ColumnFactor(v.ElasticMin, star, slender)
		if best.try(combo, 0, float64(p.under(combo)), float64(star)*float64(factor)*area) {
			cp = factor
		}
	}
	if slender > 50 {
		best.ratio = max(best.ratio, float64(slender)/50)
	}
	check := Check{ID: "post." + p.Name + ".column", What: "post at " + p.Name + " as a column", Demand: measure.Force(best.demand), Capacity: measure.Force(best.capacity), Ratio: measure.Ratio(best.ratio),
		Combination: best.combo.Name, Duration: best.combo.Duration, Stability: cp, Clause: "NDS 2018 3.6, 3.7.1", Memory: v.Memory}
	c.add(finding{check, func(t words) []string {
		star := v.Compression * measure.Stress(best.combo.Duration)
		_, critical := ColumnFactor(v.ElasticMin, star, slender)
		return []string{
			fmt.Sprintf("P = %s (%s)", t.force(best.demand), best.combo.Name),
			fmt.Sprintf("le/d = %s/%s = %s", t.length(p.Height.Post), t.length(d), t.ratio(float64(slender))),
			t.product("Fc*", v.Reference.Compression, "Fc", star, namedFactor{"CD", measure.Ratio(best.combo.Duration)}, namedFactor{"CM", v.CompressionWet}, namedFactor{"CF", v.CompressionSize}, namedFactor{"Ci", v.Incising}),
			t.product("Emin'", v.Reference.ElasticMin, "Emin", v.ElasticMin, namedFactor{"CM", v.ElasticWet}, namedFactor{"Ci", v.ElasticIncising}),
			fmt.Sprintf("FcE = 0.822·Emin'/(le/d)² = %s; c = 0.8; CP = %.3f", t.timber(critical), float64(cp)),
			fmt.Sprintf("P' = Fc*·CP·A = %s × %.3f × %s = %s; ratio %s", t.timber(star), float64(cp), t.power(area, 2), t.force(best.capacity), t.ratio(best.ratio)),
		}
	}})
}

// postBearing checks the end grain of the post on the block's seat: fc ≤ Fc*.
func (c *checker) postBearing(p *PierLoad) {
	s, v := c.post.Section, c.post.Values
	seat := c.job.Block.SeatWidth
	wide, deep := s.Width, s.Depth
	if seat > 0 {
		wide, deep = min(wide, seat), min(deep, seat)
	}
	area := wide.Times(deep)
	best := worstAt{ratio: -1}
	for _, combo := range c.onPier {
		best.try(combo, 0, float64(p.under(combo)), float64(v.Compression)*float64(combo.Duration)*float64(area))
	}
	check := Check{ID: "post." + p.Name + ".bearing", What: "end of the post at " + p.Name + " on the block", Demand: measure.Force(best.demand), Capacity: measure.Force(best.capacity), Ratio: measure.Ratio(best.ratio),
		Combination: best.combo.Name, Clause: "NDS 2018 3.10.1", Memory: v.Memory}
	c.add(finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("P = %s (%s) on %s × %s", t.force(best.demand), best.combo.Name, t.length(wide), t.length(deep)),
			fmt.Sprintf("Fc*·A = %s × %s = %s; ratio %s", t.timber(v.Compression*measure.Stress(best.combo.Duration)), t.power(float64(area), 2), t.force(best.capacity), t.ratio(best.ratio)),
		}
	}})
}

// blockRating checks the load on a block against what its maker rates it for.
func (c *checker) blockRating(p *PierLoad) {
	rated := c.job.Block.RatedLoad
	if rated <= 0 {
		return
	}
	check := Check{ID: "pier." + p.Name + ".block", What: "load on the block at " + p.Name, Demand: p.Most, Capacity: rated, Ratio: measure.Ratio(p.Most / rated),
		Combination: p.Combination, Clause: "the block's rated load, job file"}
	c.add(finding{check, func(t words) []string {
		return append(p.sum(t), fmt.Sprintf("P/rated = %s/%s = %s", t.force(float64(p.Most)), t.force(float64(rated)), t.ratio(float64(check.Ratio))))
	}})
}

// sum writes the pier's load as the sum of its cases.
func (p *PierLoad) sum(t words) []string {
	var parts string
	for _, combo := range combinations {
		if combo.Name != p.Combination {
			continue
		}
		for kind, load := range p.cases() {
			if combo.factors[kind] == 0 || load == 0 {
				continue
			}
			if parts != "" {
				parts += " + "
			}
			if combo.factors[kind] != 1 {
				parts += fmt.Sprintf("%.3g × ", combo.factors[kind])
			}
			name := caseNames[kind]
			if loadCase(kind) == buildingCase && load < 0 {
				name = "building at its lightest"
			}
			parts += fmt.Sprintf("%s (%s)", t.force(float64(load)), name)
		}
	}
	return []string{fmt.Sprintf("P = %s = %s under %s", parts, t.force(float64(p.Most)), p.Combination)}
}

// onStone checks the pressure of the block's base on the compacted stone.
func (c *checker) onStone(p *PierLoad) {
	base := c.job.Block.Base
	load := p.Most + c.job.Block.Weight.Weight()
	q := load.Over(base.Times(base))
	check := Check{ID: "pier." + p.Name + ".stone", What: "pressure of the block at " + p.Name + " on the stone", Demand: q, Capacity: c.rules.StoneBearing, Ratio: measure.Ratio(q / c.rules.StoneBearing),
		Combination: p.Combination, Clause: "IBC 2012 Table 1806.2, gravel; compacted bed"}
	c.add(finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("P + block = %s + %s = %s", t.force(float64(p.Most)), t.force(float64(c.job.Block.Weight.Weight())), t.force(float64(load))),
			fmt.Sprintf("q = P/B² = %s/(%s)² = %s; allowed %s; ratio %s", t.force(float64(load)), t.length(base), t.pressure(q), t.pressure(c.rules.StoneBearing), t.ratio(float64(check.Ratio))),
		}
	}})
}

// bed returns the side of the square of soil that carries a pier: the base and
// the stone's depth, at most the hole's width, and the weight of that stone.
func (c *checker) bed(p *PierLoad) (side measure.Length, stone measure.Force) {
	z, base := p.Height.Stone, c.job.Block.Base
	side = min(base+z, base+2*c.job.Stone.Margin)
	density := c.job.Stone.Density
	if density == 0 {
		density = 125 * measure.PoundPerCubicFoot // gravel, wet: common practice, no source
	}
	return side, density.Of(side.Times(side).Deep(z)).Weight()
}

// onSoil checks the pressure under the bed, spread 2:1 through the stone, with
// the weights of block and stone: gross pressure against allowable bearing.
func (c *checker) onSoil(p *PierLoad) {
	side, stone := c.bed(p)
	block := c.job.Block.Weight.Weight()
	load := p.Most + block + stone
	q, allowed := load.Over(side.Times(side)), c.job.Site.Soil.Bearing
	check := Check{ID: "pier." + p.Name + ".soil", What: "pressure on the soil under the bed at " + p.Name, Demand: q, Capacity: allowed, Ratio: measure.Ratio(q / allowed),
		Combination: p.Combination, Clause: "IRC 2021 Table R401.4.1 or as given; spread 2:1"}
	c.add(finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("P + block + stone = %s + %s + %s = %s", t.force(float64(p.Most)), t.force(float64(block)), t.force(float64(stone)), t.force(float64(load))),
			fmt.Sprintf("side = min(B + z, B + 2·margin) = min(%s + %s, %s + 2 × %s) = %s", t.length(c.job.Block.Base), t.length(p.Height.Stone), t.length(c.job.Block.Base), t.length(c.job.Stone.Margin), t.length(side)),
			fmt.Sprintf("q = %s/(%s)² = %s; allowed %s; ratio %s", t.force(float64(load)), t.length(side), t.pressure(q), t.pressure(allowed), t.ratio(float64(check.Ratio))),
			fmt.Sprintf("a bed of at least %s square would do", t.length(LeastSide(load, allowed).RoundUpTo(measure.Inch/4))),
		}
	}})
}

// tilted checks the edge pressures of a post that stands off the block's centre.
//
//	q = P/B²·(1 + 6·e/B) for e ≤ B/6
func (c *checker) tilted(p *PierLoad) {
	e, base := c.rules.Eccentricity, c.job.Block.Base
	side, stone := c.bed(p)
	load := p.Most + c.job.Block.Weight.Weight()
	edge := func(total measure.Force, b measure.Length) measure.Stress {
		if e.Metres() > b.Metres()/6 { // part of the base lifts: 2P/(3·B·(B/2 − e))
			return measure.Stress(2 * float64(total) / (3 * b.Metres() * math.Max(1e-6, b.Metres()/2-e.Metres())))
		}
		off := measure.Force(float64(p.Most) * 6 * e.Metres() / b.Metres())
		return (total + off).Over(b.Times(b))
	}
	onStone, onSoil := edge(load, base), edge(load+stone, side)
	check := Check{ID: "pier." + p.Name + ".eccentric", What: "pressure under the edge at " + p.Name + " with the post off centre", Demand: onSoil, Capacity: c.job.Site.Soil.Bearing,
		Ratio: measure.Ratio(onSoil / c.job.Site.Soil.Bearing), Combination: p.Combination, Clause: "statics; " + c.words.length(e) + " off centre is common practice, no source"}
	if ratio := measure.Ratio(onStone / c.rules.StoneBearing); ratio > check.Ratio {
		check.Demand, check.Capacity, check.Ratio = onStone, c.rules.StoneBearing, ratio
	}
	c.add(finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("e = %s; q = P/B²·(1 + 6·e/B)", t.length(e)),
			fmt.Sprintf("on the stone: B = %s, q = %s, allowed %s", t.length(base), t.pressure(onStone), t.pressure(c.rules.StoneBearing)),
			fmt.Sprintf("on the soil: B = %s, q = %s, allowed %s", t.length(side), t.pressure(onSoil), t.pressure(c.job.Site.Soil.Bearing)),
			fmt.Sprintf("greater ratio %s", t.ratio(float64(check.Ratio))),
		}
	}})
}

// tall refuses to size a pier whose block and post stand higher than the rules allow.
func (c *checker) tall(p *PierLoad) {
	if !p.HeightKnown {
		return
	}
	height, most := c.job.Block.SeatHeight+p.Height.Post, c.rules.NotSizedAbove
	check := Check{ID: "pier." + p.Name + ".height", What: "height of block and post at " + p.Name, Demand: height, Capacity: most, Ratio: measure.Ratio(height.Metres() / most.Metres()),
		Clause: "our own limit of this method; 24 CFR 3285.306 (2015) ends single stacks of blocks at 36 in"}
	c.add(finding{check, func(t words) []string {
		return []string{fmt.Sprintf("seat + post = %s + %s = %s; above %s an engineer sizes the pier", t.length(c.job.Block.SeatHeight), t.length(p.Height.Post), t.length(height), t.length(most))}
	}})
}

// braced asks for bracing both ways where a post is longer than the rules allow
// without. The force in a brace is the wind's share or 2 per cent of the load.
func (c *checker) braced(p *PierLoad) {
	if !p.HeightKnown {
		return
	}
	post, most := p.Height.Post, c.rules.BracedAbove
	check := Check{ID: "pier." + p.Name + ".bracing", What: "bracing of the post at " + p.Name, Demand: post, Capacity: most, Ratio: measure.Ratio(post.Metres() / most.Metres()),
		Clause: "common practice, no source"}
	side := c.sideways(p)
	if !check.Holds() {
		check.Needs = "bracing both ways, each brace for " + c.words.force(float64(side)*math.Sqrt2) + " at 45°"
	}
	c.add(finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("post %s; bracing both ways above %s", t.length(post), t.length(most)),
			fmt.Sprintf("sideways force: the greater of the wind's share and 2%% of the load = %s", t.force(float64(side))),
		}
	}})
}

// sideways returns the force that pushes the top of a post: the wind shared by
// all piers, at least 2 per cent of the load (common practice, no source).
func (c *checker) sideways(p *PierLoad) measure.Force {
	side := 0.02 * p.Most
	if c.wind != nil {
		side = max(side, max(c.wind.Across.Force, c.wind.Along.Force)*measure.Force(c.wind.Factor)/measure.Force(len(c.frame.Piers)))
	}
	return side
}
