package strength

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pierbook/calc/measure"
)

// The joints that ties hold.
const (
	onPost     = "beam to post and post to block"
	intoGround = "block to ground"
)

// Tie is a hold-down that would be wanted at a pier; its capacity, and that of
// what it holds to, are shown by others.
type Tie struct {
	Pier  string
	Joint string        // what it joins: beam to post and post to block, or block to ground
	Up    measure.Force // to be held down
	Level measure.Force // to be held sideways, with it
}

// ToGround says whether the tie holds the block to the ground, not what stands
// on it.
func (t Tie) ToGround() bool { return t.Joint == intoGround }

// Key is the stem of the keys of its figures.
func (t Tie) Key() string {
	if t.ToGround() {
		return "pier." + t.Pier + ".tie_to_ground"
	}
	return "pier." + t.Pier + ".tie_to_block"
}

// Balanced is one body under wind from one direction: 0.6D + 0.6W.
type Balanced struct {
	Direction          string
	Dead               measure.Force // what holds it down, unfactored
	Sideways, Up       measure.Force // factored
	Arm, Span          measure.Length
	Turning, Resisting measure.Moment
	Friction           measure.Force
	Tie                measure.Force // total on the windward row, 0 when none is wanted
	Slide              measure.Force // that friction does not hold
}

// Overturn works a body that stands on two rows of supports.
//
//	Mo = f·(H·arm + U·span/2)   Mr = 0.6·D·span/2   tie = (Mo − Mr)/span
//	friction = μ·(0.6·D − f·U), not below 0         slide = f·H − friction
//
// f is 0.6 for wind by an ultimate speed. ASCE 7-16 2.4.1, combination 7.
func Overturn(dead, sideways, up measure.Force, factor measure.Ratio, arm, span measure.Length, friction measure.Ratio) Balanced {
	b := Balanced{Dead: dead, Sideways: sideways * measure.Force(factor), Up: up * measure.Force(factor), Arm: arm, Span: span}
	half := span.Metres() / 2
	b.Turning = measure.Moment(float64(b.Sideways)*arm.Metres() + float64(b.Up)*half)
	b.Resisting = measure.Moment(0.6 * float64(dead) * half)
	b.Tie = measure.Force(math.Max(0, float64(b.Turning-b.Resisting)/span.Metres()))
	b.Friction = measure.Force(math.Max(0, float64(friction)*float64(0.6*dead-b.Up)))
	b.Slide = measure.Force(math.Max(0, float64(b.Sideways-b.Friction)))
	return b
}

// windChecks checks overturning and sliding of building and platform, on the
// blocks and with the blocks, from both directions, and lists the ties wanted.
func (c *checker) windChecks(piers []PierLoad) {
	w := c.wind
	if w == nil {
		return
	}
	own := measure.Force(0)
	for _, p := range piers {
		own += p.Dead
	}
	own += c.job.Building.WeightLeast
	blocks := c.job.Block.Weight.Weight() * measure.Force(len(piers))
	post, seat := c.tallest(), c.job.Block.SeatHeight
	for _, push := range []Push{w.Across, w.Along} {
		onBlocks := Overturn(own, push.Force, w.Up, w.Factor, push.Arm+post, push.Span, 0)
		withBlocks := Overturn(own+blocks, push.Force, w.Up, w.Factor, push.Arm+post+seat, push.Span, c.rules.StoneFriction)
		c.overturning(push, onBlocks, "on_blocks", "platform and building on the blocks", onPost)
		c.overturning(push, withBlocks, "on_stone", "all with the blocks on the stone", intoGround)
		c.sliding(push, withBlocks, len(piers))
	}
	c.upliftCheck(own, len(piers))
}

// joinPiers wants every joint of a pier to hold the sideways force on it, whether
// or not the building would turn over.
func (c *checker) joinPiers(piers []PierLoad) {
	for i := range piers {
		c.tieAt(piers[i].Name, onPost, max(0, -piers[i].Lightest), c.sideways(&piers[i]))
		c.lifted(&piers[i])
	}
}

// lifted asks for a fastening where loads elsewhere lift the beam off its pier:
// floor load on other bays, or a wall with its roof out past the next line. Piers
// that stay pressed down get no check.
func (c *checker) lifted(p *PierLoad) {
	if p.Lightest >= 0 {
		return
	}
	down := p.Dead + max(0, p.BuildingLeast)
	up := down - p.Lightest
	check := Check{ID: "pier." + p.Name + ".lift", What: "loads elsewhere lifting the beam off " + p.Name, Demand: up, Capacity: down, Ratio: ratioOf(float64(up), float64(down)),
		Combination: p.LightestUnder, Clause: "statics; floor load on the worst bays", Needs: "a fastening, joists to beam, " + onPost + ", for " + c.words.force(float64(-p.Lightest)) + " up"}
	c.add(finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("holds down: own weight %s + building at its lightest %s = %s", t.force(float64(p.Dead)), t.force(float64(max(0, p.BuildingLeast))), t.force(float64(down))),
			fmt.Sprintf("lifts (%s): building %s, floor load %s, snow %s, roof live load %s, each by its factor: %s", p.LightestUnder, t.force(float64(min(0, p.BuildingLeast))), t.force(float64(p.LiveLeast)), t.force(float64(min(0, p.Snow))), t.force(float64(min(0, p.RoofLive))), t.force(float64(up))),
			fmt.Sprintf("%s − %s = %s", t.force(float64(down)), t.force(float64(up)), t.force(float64(p.Lightest))),
		}
	}})
}

func (c *checker) overturning(push Push, b Balanced, id, what, joint string) {
	check := Check{ID: "wind." + push.Name + ".overturning_" + id, What: "overturning by wind " + push.Name + " the beams: " + what, Demand: b.Turning, Capacity: b.Resisting,
		Ratio: ratioOf(float64(b.Turning), float64(b.Resisting)), Combination: "0.6D + 0.6W", Clause: "ASCE 7-16 2.4.1; " + c.wind.source, Memory: c.wind.memory}
	each := b.Tie / measure.Force(push.perRow)
	if !check.Holds() {
		check.Needs = fmt.Sprintf("anchorage, %s: %s up at each of the %d piers of the windward row, whichever side that is", joint, c.words.force(float64(each)), push.perRow)
		c.tie(push, joint, each, b.Sideways/measure.Force(len(c.frame.Piers)))
	}
	c.add(finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("D = %s (lightest building, own weight); H = %s × %s = %s; U = %s × %s = %s", t.force(float64(b.Dead)), t.factor(c.wind.Factor), t.force(float64(push.Force)), t.force(float64(b.Sideways)), t.factor(c.wind.Factor), t.force(float64(c.wind.Up)), t.force(float64(b.Up))),
			fmt.Sprintf("Mo = H·arm + U·s/2 = %s × %s + %s × %s/2 = %s", t.force(float64(b.Sideways)), t.length(b.Arm), t.force(float64(b.Up)), t.length(b.Span), t.moment(float64(b.Turning))),
			fmt.Sprintf("Mr = 0.6·D·s/2 = 0.6 × %s × %s/2 = %s", t.force(float64(b.Dead)), t.length(b.Span), t.moment(float64(b.Resisting))),
			fmt.Sprintf("tie on the windward row = (Mo − Mr)/s = %s, %s at each of %d piers", t.force(float64(b.Tie)), t.force(float64(each)), push.perRow),
		}
	}})
}

// ratioOf is demand over capacity, a large number when there is none.
func ratioOf(demand, capacity float64) measure.Ratio {
	if demand <= 0 {
		return 0
	}
	return measure.Ratio(demand / math.Max(capacity, demand/99))
}

func (c *checker) sliding(push Push, b Balanced, piers int) {
	check := Check{ID: "wind." + push.Name + ".sliding", What: "sliding of the blocks on the stone by wind " + push.Name + " the beams", Demand: b.Sideways, Capacity: b.Friction,
		Ratio: ratioOf(float64(b.Sideways), float64(b.Friction)), Combination: "0.6D + 0.6W", Clause: "NAVFAC DM 7.02 (1986) Table 1, concrete on clean gravel 0.55, over 1.5; the 1.5 is from memory", Memory: true}
	if !check.Holds() {
		each := b.Slide / measure.Force(piers)
		check.Needs = fmt.Sprintf("anchorage, block to ground: %s sideways at each of %d piers, or an engineer's word that the sunk blocks hold it", c.words.force(float64(each)), piers)
		for _, p := range c.frame.Piers {
			c.tieAt(p.Name, intoGround, 0, each)
		}
	}
	c.add(finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("H = %s; N = 0.6·D − U = 0.6 × %s − %s = %s", t.force(float64(b.Sideways)), t.force(float64(b.Dead)), t.force(float64(b.Up)), t.force(0.6*float64(b.Dead)-float64(b.Up))),
			fmt.Sprintf("friction = μ·N, not below 0, μ = 0.55/1.5 = %.2f: %s", float64(c.rules.StoneFriction), t.force(float64(b.Friction))),
			fmt.Sprintf("not held: %s", t.force(float64(b.Slide))),
			"the ground beside a sunk block is left out: frost and digging take it away",
		}
	}})
}

// upliftCheck checks the building and platform against being lifted straight up.
func (c *checker) upliftCheck(own measure.Force, piers int) {
	up, down := c.wind.Up*measure.Force(c.wind.Factor), 0.6*own
	check := Check{ID: "wind.uplift", What: "uplift of the roof against building and platform", Demand: up, Capacity: down, Ratio: ratioOf(float64(up), float64(down)),
		Combination: "0.6D + 0.6W", Clause: "ASCE 7-16 2.4.1; " + c.wind.source, Memory: c.wind.memory}
	if !check.Holds() {
		each := (up - down) / measure.Force(piers)
		check.Needs = fmt.Sprintf("anchorage, beam to post and post to block to ground: %s up at every pier", c.words.force(float64(each)))
		for _, p := range c.frame.Piers {
			c.tieAt(p.Name, onPost, each, 0)
		}
	}
	c.add(finding{check, func(t words) []string {
		return []string{
			fmt.Sprintf("U = %s × %s = %s", t.factor(c.wind.Factor), t.force(float64(c.wind.Up)), t.force(float64(up))),
			fmt.Sprintf("0.6·D = 0.6 × %s = %s; ratio %s", t.force(float64(own)), t.force(float64(down)), t.ratio(float64(check.Ratio))),
		}
	}})
}

// tie wants a hold-down at every pier of both outer rows, for wind comes from
// either side.
func (c *checker) tie(push Push, joint string, up, level measure.Force) {
	for _, p := range c.frame.Piers {
		outer := p.Line == 0 || p.Line == len(c.frame.Lines)-1
		if push.Name == "along" {
			outer = p.Number == 1 || p.Number == c.frame.PerLine(p.Line)
		}
		if outer {
			c.tieAt(p.Name, joint, up, level)
		}
	}
}

// sortTies puts the ties in the order of the piers, from the beam down.
func (c *checker) sortTies() {
	at := map[string]int{}
	for i, p := range c.frame.Piers {
		at[p.Name] = i
	}
	slices.SortStableFunc(c.ties, func(a, b Tie) int {
		return cmp.Or(cmp.Compare(at[a.Pier], at[b.Pier]), cmp.Compare(a.Joint, b.Joint))
	})
}

// tieAt keeps the greatest of what is wanted at a pier for each joint.
func (c *checker) tieAt(pier, joint string, up, level measure.Force) {
	for i := range c.ties {
		if t := &c.ties[i]; t.Pier == pier && t.Joint == joint {
			t.Up, t.Level = max(t.Up, up), max(t.Level, level)
			return
		}
	}
	c.ties = append(c.ties, Tie{pier, joint, up, level})
}
