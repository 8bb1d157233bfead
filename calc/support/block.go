package support

import (
	"fmt"
	"math"

	"pierbook/calc/check"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// PierBlock is a pier block on a bed of compacted stone in the ground: what it
// carries, and how high it may stand.
type PierBlock struct {
	Block job.Block
	Stone job.Stone
	Soil  measure.Stress // allowable bearing of the ground
	Class string         // of the soil, empty when only its bearing was given
	Rules check.Rules
	Words check.Words
}

// Checks returns the checks of the block under a pier's load, of its bed and of
// the ground below.
func (b PierBlock) Checks(p *statics.PierLoad) []check.Finding {
	return []check.Finding{b.rating(p), b.onStone(p), b.onSoil(p), b.tilted(p), b.tall(p)}
}

// Seat returns how high the post's foot stands over the bed, and how wide the seat
// is, 0 when that is not known.
func (b PierBlock) Seat() (height, width measure.Length) {
	return b.Block.SeatHeight, b.Block.SeatWidth
}

// Weight returns the weight of a block.
func (b PierBlock) Weight() measure.Force { return b.Block.Weight.Weight() }

// Friction returns the allowable friction of the block on its bed.
func (b PierBlock) Friction() measure.Ratio { return b.Rules.StoneFriction }

// OnSoil returns the pressure under the bed with so much load on the block, and
// the working of the load against its ratings.
func (b PierBlock) OnSoil(p *statics.PierLoad, load measure.Force) (measure.Stress, []string) {
	var working []string
	w := b.Words
	if rated := b.Block.RatedLoad; rated > 0 {
		working = append(working, fmt.Sprintf("load/rated = %s/%s = %s", w.Force(float64(load)), w.Force(float64(rated)), w.Ratio(float64(load/rated))))
	}
	side, stone := b.bed(p)
	q := (load + b.Weight() + stone).Over(side.Times(side))
	return q, append(working, fmt.Sprintf("under the bed: (load + block + stone)/(%s)² = %s; allowed %s", w.Length(side), w.Pressure(q), w.Pressure(b.Soil)))
}

// Path follows a load from the block down to the soil.
func (b PierBlock) Path(p *statics.PierLoad, load measure.Force) []check.Stage {
	w, base, block := b.Words, b.Block.Base, b.Weight()
	side, stone := b.bed(p)
	onStone := load + block
	onSoil := onStone + stone
	return []check.Stage{
		{Part: "block", Adds: block, Sum: onStone, Working: fmt.Sprintf("on the stone: %s/(%s)² = %s", w.Force(float64(onStone)), w.Length(base), w.Pressure(onStone.Over(base.Times(base))))},
		{Part: "stone", Adds: stone, Sum: onSoil, Working: fmt.Sprintf("%s deep, %s square", w.Length(p.Height.Stone), w.Length(side))},
		{Part: "soil", Sum: onSoil, Working: fmt.Sprintf("%s/(%s)² = %s; allowed %s", w.Force(float64(onSoil)), w.Length(side), w.Pressure(onSoil.Over(side.Times(side))), w.Pressure(b.Soil))},
	}
}

// Rests names what a kind of check of the block rests on.
func (b PierBlock) Rests(pier, kind string) (keys []string, known bool) {
	key := "pier." + pier
	keys, known = map[string][]string{
		"block":     {key + ".reaction", "block.rated_load"},
		"stone":     {key + ".reaction", "block.weight", "block.base", "design.stone_bearing"},
		"soil":      {key + ".reaction", "block.weight", "block.base", "stone.margin", key + ".stone", "site.soil.bearing"},
		"eccentric": {key + ".reaction", "rule.eccentricity", "block.base", key + ".stone", "design.stone_bearing", "site.soil.bearing"},
		"height":    {key + ".post", "block.seat_height", "design.not_sized_above"},
	}[kind]
	return keys, known
}

// Unchecked says what could not be checked of the block.
func (b PierBlock) Unchecked() []string {
	if b.Block.RatedLoad > 0 {
		return nil
	}
	return []string{"The block itself: no rated load was given; ask its maker."}
}

// rating checks the load on a block against what its maker rates it for.
func (b PierBlock) rating(p *statics.PierLoad) check.Finding {
	rated := b.Block.RatedLoad
	if rated <= 0 {
		return check.Finding{}
	}
	result := check.Check{ID: "pier." + p.Name + ".block", What: "load on the block at " + p.Name, Demand: p.Most, Capacity: rated, Ratio: measure.Ratio(p.Most / rated),
		Combination: p.Combination, Clause: "the block's rated load, job file"}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return append(p.SumWords(t), fmt.Sprintf("P/rated = %s/%s = %s", t.Force(float64(p.Most)), t.Force(float64(rated)), t.Ratio(float64(result.Ratio))))
	}}
}

// onStone checks the pressure of the block's base on the compacted stone.
func (b PierBlock) onStone(p *statics.PierLoad) check.Finding {
	base := b.Block.Base
	load := p.Most + b.Weight()
	q := load.Over(base.Times(base))
	result := check.Check{ID: "pier." + p.Name + ".stone", What: "pressure of the block at " + p.Name + " on the stone", Demand: q, Capacity: b.Rules.StoneBearing,
		Ratio:       measure.Ratio(q / b.Rules.StoneBearing),
		Combination: p.Combination, Clause: b.onStoneBy()}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("P + block = %s + %s = %s", t.Force(float64(p.Most)), t.Force(float64(b.Weight())), t.Force(float64(load))),
			fmt.Sprintf("q = P/B² = %s/(%s)² = %s; allowed %s; ratio %s", t.Force(float64(load)), t.Length(base), t.Pressure(q), t.Pressure(b.Rules.StoneBearing), t.Ratio(float64(result.Ratio))),
		}
	}}
}

// bed returns the side of the square of soil that carries a pier: the base and
// the stone's depth, at most the hole's width, and the weight of that stone.
func (b PierBlock) bed(p *statics.PierLoad) (side measure.Length, stone measure.Force) {
	z, base := p.Height.Stone, b.Block.Base
	side = min(base+z, base+2*b.Stone.Margin)
	density := b.Stone.Density
	if density == 0 {
		density = 125 * measure.PoundPerCubicFoot // gravel, wet: common practice, no source
	}
	return side, density.Of(side.Times(side).Deep(z)).Weight()
}

// onSoil checks the pressure under the bed, spread 2:1 through the stone, with
// the weights of block and stone: gross pressure against allowable bearing.
func (b PierBlock) onSoil(p *statics.PierLoad) check.Finding {
	side, stone := b.bed(p)
	block := b.Weight()
	load := p.Most + block + stone
	q, allowed := load.Over(side.Times(side)), b.Soil
	result := check.Check{ID: "pier." + p.Name + ".soil", What: "pressure on the soil under the bed at " + p.Name, Demand: q, Capacity: allowed, Ratio: measure.Ratio(q / allowed),
		Combination: p.Combination, Clause: b.onSoilBy()}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("P + block + stone = %s + %s + %s = %s", t.Force(float64(p.Most)), t.Force(float64(block)), t.Force(float64(stone)), t.Force(float64(load))),
			fmt.Sprintf("side = min(B + z, B + 2·margin) = min(%s + %s, %s + 2 × %s) = %s", t.Length(b.Block.Base), t.Length(p.Height.Stone), t.Length(b.Block.Base), t.Length(b.Stone.Margin), t.Length(side)),
			fmt.Sprintf("q = %s/(%s)² = %s; allowed %s; ratio %s", t.Force(float64(load)), t.Length(side), t.Pressure(q), t.Pressure(allowed), t.Ratio(float64(result.Ratio))),
			fmt.Sprintf("a bed of at least %s square would do", t.Length(LeastSide(load, allowed).RoundUpTo(measure.Inch/4))),
		}
	}}
}

// tilted checks the edge pressures of a post that stands off the block's centre.
//
//	q = P/B²·(1 + 6·e/B) for e ≤ B/6
func (b PierBlock) tilted(p *statics.PierLoad) check.Finding {
	e, base := b.Rules.Eccentricity, b.Block.Base
	side, stone := b.bed(p)
	load := p.Most + b.Weight()
	edge := func(total measure.Force, wide measure.Length) measure.Stress {
		if e.Metres() > wide.Metres()/6 { // part of the base lifts: 2P/(3·B·(B/2 − e))
			return measure.Stress(2 * float64(total) / (3 * wide.Metres() * math.Max(1e-6, wide.Metres()/2-e.Metres())))
		}
		off := measure.Force(float64(p.Most) * 6 * e.Metres() / wide.Metres())
		return (total + off).Over(wide.Times(wide))
	}
	onStone, onSoil := edge(load, base), edge(load+stone, side)
	result := check.Check{ID: "pier." + p.Name + ".eccentric", What: "pressure under the edge at " + p.Name + " with the post off centre", Demand: onSoil, Capacity: b.Soil,
		Ratio: measure.Ratio(onSoil / b.Soil), Combination: p.Combination, Clause: "statics; " + b.Words.Length(e) + " off centre is common practice, no source"}
	if ratio := measure.Ratio(onStone / b.Rules.StoneBearing); ratio > result.Ratio {
		result.Demand, result.Capacity, result.Ratio = onStone, b.Rules.StoneBearing, ratio
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("e = %s; q = P/B²·(1 + 6·e/B)", t.Length(e)),
			fmt.Sprintf("on the stone: B = %s, q = %s, allowed %s", t.Length(base), t.Pressure(onStone), t.Pressure(b.Rules.StoneBearing)),
			fmt.Sprintf("on the soil: B = %s, q = %s, allowed %s", t.Length(side), t.Pressure(onSoil), t.Pressure(b.Soil)),
			fmt.Sprintf("greater ratio %s", t.Ratio(float64(result.Ratio))),
		}
	}}
}

// tall refuses to size a pier whose block and post stand higher than the rules allow.
func (b PierBlock) tall(p *statics.PierLoad) check.Finding {
	if !p.HeightKnown {
		return check.Finding{}
	}
	height, most := b.Block.SeatHeight+p.Height.Post, b.Rules.NotSizedAbove
	clause := "our own limit of this method; 24 CFR 3285.306 (2015) ends single stacks of blocks at 36 in"
	if usual := check.DefaultRules().NotSizedAbove; most != usual {
		clause = "set by the job; the usual is " + b.Words.Length(usual) + ", 24 CFR 3285.306 (2015) for single stacks of blocks"
	}
	result := check.Check{ID: "pier." + p.Name + ".height", What: "height of block and post at " + p.Name, Demand: height, Capacity: most, Ratio: measure.Ratio(height.Metres() / most.Metres()),
		Clause: clause}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{fmt.Sprintf("seat + post = %s + %s = %s; above %s an engineer sizes the pier", t.Length(b.Block.SeatHeight), t.Length(p.Height.Post), t.Length(height), t.Length(most))}
	}}
}
