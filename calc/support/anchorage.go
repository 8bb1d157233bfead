package support

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pierbook/calc/check"
	"pierbook/calc/frame"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
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

// Anchorage finds what holds platform and building down, and gathers the ties
// that would be wanted.
type Anchorage struct {
	Frame         *frame.Frame
	Wind          *loads.WindLoad // nil when none acts
	LeastBuilding measure.Force   // the building at its lightest
	Support       measure.Force   // weight of the support under one pier
	Seat          measure.Length  // of the post over the ground's stone
	TallestPost   measure.Length
	Friction      measure.Ratio // of the support on what it stands on
	Words         check.Words

	ties []Tie
}

// InWind checks overturning and sliding of building and platform, on the blocks
// and with the blocks, from both directions. There is nothing to check without
// wind.
func (a *Anchorage) InWind(piers []statics.PierLoad) []check.Finding {
	w := a.Wind
	if w == nil {
		return nil
	}
	var found []check.Finding
	own := measure.Force(0)
	for _, p := range piers {
		own += p.Dead
	}
	own += a.LeastBuilding
	blocks := a.Support * measure.Force(len(piers))
	post, seat := a.TallestPost, a.Seat
	for _, push := range []loads.Thrust{w.Across, w.Along} {
		onBlocks := Overturn(own, push.Force, w.Up, w.Factor, push.Arm+post, push.Span, 0)
		withBlocks := Overturn(own+blocks, push.Force, w.Up, w.Factor, push.Arm+post+seat, push.Span, a.Friction)
		found = append(found,
			a.overturning(push, onBlocks, "on_blocks", "platform and building on the blocks", onPost),
			a.overturning(push, withBlocks, "on_stone", "all with the blocks on the stone", intoGround),
			a.sliding(push, withBlocks, len(piers)))
	}
	return append(found, a.uplift(own, len(piers)))
}

// Joints wants every joint of a pier to hold the sideways force on it, whether or
// not the building would turn over, and checks piers that loads elsewhere lift.
func (a *Anchorage) Joints(piers []statics.PierLoad) []check.Finding {
	var found []check.Finding
	for i := range piers {
		a.tieAt(piers[i].Name, onPost, max(0, -piers[i].Lightest), Sideways(&piers[i], a.Wind, len(piers)))
		found = append(found, a.lifted(&piers[i]))
	}
	return found
}

// lifted asks for a fastening where loads elsewhere lift the beam off its pier:
// floor load on other bays, or a wall with its roof out past the next line. Piers
// that stay pressed down get no check.
func (a *Anchorage) lifted(p *statics.PierLoad) check.Finding {
	if p.Lightest >= 0 {
		return check.Finding{}
	}
	down := p.Dead + max(0, p.BuildingLeast)
	up := down - p.Lightest
	result := check.Check{ID: "pier." + p.Name + ".lift", What: "loads elsewhere lifting the beam off " + p.Name, Demand: up, Capacity: down, Ratio: check.RatioOf(float64(up), float64(down)),
		Combination: p.LightestUnder, Clause: "statics; floor load on the worst bays", Needs: "a fastening, joists to beam, " + onPost + ", for " + a.Words.Force(float64(-p.Lightest)) + " up"}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("holds down: own weight %s + building at its lightest %s = %s", t.Force(float64(p.Dead)), t.Force(float64(max(0, p.BuildingLeast))), t.Force(float64(down))),
			fmt.Sprintf("lifts (%s): building %s, floor load %s, snow %s, roof live load %s, each by its factor: %s", p.LightestUnder,
				t.Force(float64(min(0, p.BuildingLeast))), t.Force(float64(p.LiveLeast)), t.Force(float64(min(0, p.Snow))), t.Force(float64(min(0, p.RoofLive))), t.Force(float64(up))),
			fmt.Sprintf("%s − %s = %s", t.Force(float64(down)), t.Force(float64(up)), t.Force(float64(p.Lightest))),
		}
	}}
}

func (a *Anchorage) overturning(push loads.Thrust, b Balanced, id, what, joint string) check.Finding {
	result := check.Check{ID: "wind." + push.Name + ".overturning_" + id, What: "overturning by wind " + push.Name + " the beams: " + what, Demand: b.Turning, Capacity: b.Resisting,
		Ratio: check.RatioOf(float64(b.Turning), float64(b.Resisting)), Combination: "0.6D + 0.6W", Clause: "ASCE 7-16 2.4.1; " + a.Wind.Source, Memory: a.Wind.Memory}
	each := b.Tie / measure.Force(push.PerRow)
	if !result.Holds() {
		result.Needs = fmt.Sprintf("anchorage, %s: %s up at each of the %d piers of the windward row, whichever side that is", joint, a.Words.Force(float64(each)), push.PerRow)
		a.tie(push, joint, each, b.Sideways/measure.Force(len(a.Frame.Piers)))
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("D = %s (lightest building, own weight); H = %s × %s = %s; U = %s × %s = %s", t.Force(float64(b.Dead)), t.Factor(a.Wind.Factor),
				t.Force(float64(push.Force)), t.Force(float64(b.Sideways)), t.Factor(a.Wind.Factor), t.Force(float64(a.Wind.Up)), t.Force(float64(b.Up))),
			fmt.Sprintf("Mo = H·arm + U·s/2 = %s × %s + %s × %s/2 = %s", t.Force(float64(b.Sideways)), t.Length(b.Arm), t.Force(float64(b.Up)), t.Length(b.Span), t.Moment(float64(b.Turning))),
			fmt.Sprintf("Mr = 0.6·D·s/2 = 0.6 × %s × %s/2 = %s", t.Force(float64(b.Dead)), t.Length(b.Span), t.Moment(float64(b.Resisting))),
			fmt.Sprintf("tie on the windward row = (Mo − Mr)/s = %s, %s at each of %d piers", t.Force(float64(b.Tie)), t.Force(float64(each)), push.PerRow),
		}
	}}
}

func (a *Anchorage) sliding(push loads.Thrust, b Balanced, piers int) check.Finding {
	result := check.Check{ID: "wind." + push.Name + ".sliding", What: "sliding of the blocks on the stone by wind " + push.Name + " the beams", Demand: b.Sideways, Capacity: b.Friction,
		Ratio: check.RatioOf(float64(b.Sideways), float64(b.Friction)), Combination: "0.6D + 0.6W", Clause: "NAVFAC DM 7.02 (1986) Table 1, concrete on clean gravel 0.55, over 1.5; the 1.5 is from memory", Memory: true}
	if !result.Holds() {
		each := b.Slide / measure.Force(piers)
		result.Needs = fmt.Sprintf("anchorage, block to ground: %s sideways at each of %d piers, or an engineer's word that the sunk blocks hold it", a.Words.Force(float64(each)), piers)
		for _, p := range a.Frame.Piers {
			a.tieAt(p.Name, intoGround, 0, each)
		}
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("H = %s; N = 0.6·D − U = 0.6 × %s − %s = %s", t.Force(float64(b.Sideways)), t.Force(float64(b.Dead)), t.Force(float64(b.Up)), t.Force(0.6*float64(b.Dead)-float64(b.Up))),
			fmt.Sprintf("friction = μ·N, not below 0, μ = 0.55/1.5 = %.2f: %s", float64(a.Friction), t.Force(float64(b.Friction))),
			fmt.Sprintf("not held: %s", t.Force(float64(b.Slide))),
			"the ground beside a sunk block is left out: frost and digging take it away",
		}
	}}
}

// uplift checks the building and platform against being lifted straight up.
func (a *Anchorage) uplift(own measure.Force, piers int) check.Finding {
	up, down := a.Wind.Up*measure.Force(a.Wind.Factor), 0.6*own
	result := check.Check{ID: "wind.uplift", What: "uplift of the roof against building and platform", Demand: up, Capacity: down, Ratio: check.RatioOf(float64(up), float64(down)),
		Combination: "0.6D + 0.6W", Clause: "ASCE 7-16 2.4.1; " + a.Wind.Source, Memory: a.Wind.Memory}
	if !result.Holds() {
		each := (up - down) / measure.Force(piers)
		result.Needs = fmt.Sprintf("anchorage, beam to post and post to block to ground: %s up at every pier", a.Words.Force(float64(each)))
		for _, p := range a.Frame.Piers {
			a.tieAt(p.Name, onPost, each, 0)
		}
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("U = %s × %s = %s", t.Factor(a.Wind.Factor), t.Force(float64(a.Wind.Up)), t.Force(float64(up))),
			fmt.Sprintf("0.6·D = 0.6 × %s = %s; ratio %s", t.Force(float64(own)), t.Force(float64(down)), t.Ratio(float64(result.Ratio))),
		}
	}}
}

// tie wants a hold-down at every pier of both outer rows, for wind comes from
// either side.
func (a *Anchorage) tie(push loads.Thrust, joint string, up, level measure.Force) {
	for _, p := range a.Frame.Piers {
		outer := p.Line == 0 || p.Line == len(a.Frame.Lines)-1
		if push.Name == "along" {
			outer = p.Number == 1 || p.Number == a.Frame.PerLine(p.Line)
		}
		if outer {
			a.tieAt(p.Name, joint, up, level)
		}
	}
}

// Ties returns the ties wanted in the order of the piers, from the beam down.
func (a *Anchorage) Ties() []Tie {
	at := map[string]int{}
	for i, p := range a.Frame.Piers {
		at[p.Name] = i
	}
	slices.SortStableFunc(a.ties, func(x, y Tie) int {
		return cmp.Or(cmp.Compare(at[x.Pier], at[y.Pier]), cmp.Compare(x.Joint, y.Joint))
	})
	return a.ties
}

// tieAt keeps the greatest of what is wanted at a pier for each joint.
func (a *Anchorage) tieAt(pier, joint string, up, level measure.Force) {
	for i := range a.ties {
		if t := &a.ties[i]; t.Pier == pier && t.Joint == joint {
			t.Up, t.Level = max(t.Up, up), max(t.Level, level)
			return
		}
	}
	a.ties = append(a.ties, Tie{pier, joint, up, level})
}
