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
	Friction      measure.Ratio   // of the support on what it stands on
	Cap, Strap    check.Fastening // beam to post, and post to block by both ends of its strap
	ToBeam        bool            // the strap runs on up to the beam, with as many nails there
	Duration      func(combination string) measure.Ratio
	Words         check.Words

	ties    []Tie
	anchors string // what others do to hold the blocks to the ground
}

// underWind is the combination in which wind lifts.
const underWind = "0.6D + 0.6W"

// windDuration is CD of wind. NDS 2018 Table 2.3.2.
const windDuration = 1.6

// Want gathers the ties of every pier, from the reactions of the beams on it and
// the level force that it takes. What holds the blocks down is by others, and is
// named once with the greatest force of each kind.
func (a *Anchorage) Want(piers []statics.PierLoad, levels []measure.Force) {
	var up, level measure.Force
	upAt, levelAt := "", ""
	for i := range piers {
		p := &piers[i]
		a.tieAt(p.Name, onPost, a.liftOf(p), levels[i])
		held := a.offGround(p)
		if held > up {
			up, upAt = held, p.Name
		}
		if levels[i] > level {
			level, levelAt = levels[i], p.Name
		}
	}
	a.anchors = "ground anchors, block to ground, for an anchor installer"
	if up > 0 {
		a.anchors += fmt.Sprintf(", up to %s up (%s)", a.Words.Force(float64(up)), upAt)
	}
	if level > 0 {
		a.anchors += fmt.Sprintf(", up to %s sideways (%s)", a.Words.Force(float64(level)), levelAt)
	}
}

// Anchors says what others do to hold the blocks to the ground.
func (a *Anchorage) Anchors() string { return a.anchors }

// Anchor wants every block held to the ground.
func (a *Anchorage) Anchor(piers []statics.PierLoad, levels []measure.Force) {
	for i := range piers {
		a.tieAt(piers[i].Name, intoGround, a.offGround(&piers[i]), levels[i])
	}
}

// liftOf is the greatest lift on the joints of a pier: by loads elsewhere, or by wind.
func (a *Anchorage) liftOf(p *statics.PierLoad) measure.Force {
	up := max(0, -p.Lightest)
	if a.Wind != nil {
		up = max(up, -p.LeastInWind())
	}
	return up
}

// offGround is the greatest lift on a block beyond its own weight.
func (a *Anchorage) offGround(p *statics.PierLoad) measure.Force {
	up := max(0, -p.Lightest-a.Support)
	if a.Wind != nil {
		up = max(up, -p.LeastInWind()-0.6*a.Support)
	}
	return up
}

// InWind checks overturning and sliding of all that stands on the stone, from both
// directions. There is nothing to check without wind.
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
	own += a.LeastBuilding + a.Support*measure.Force(len(piers))
	for _, push := range []loads.Thrust{w.Across, w.Along} {
		b := Overturn(own, push.Force, w.Up, w.Factor, push.Arm+a.TallestPost+a.Seat, push.Span, a.Friction)
		found = append(found, a.overturning(push, b), a.sliding(push, b))
	}
	return found
}

// Joints checks every joint of a pier against what lifts there: loads elsewhere, and
// wind by the reactions of the same beams.
func (a *Anchorage) Joints(piers []statics.PierLoad) []check.Finding {
	var found []check.Finding
	for i := range piers {
		found = append(found, a.lifted(&piers[i]))
		if a.Wind != nil {
			found = append(found, a.heldDown(&piers[i]), a.heldToGround(&piers[i]))
		}
	}
	return found
}

// JointsHold says whether cap and strap hold every lift.
func (a *Anchorage) JointsHold(piers []statics.PierLoad) bool {
	for i := range piers {
		p := &piers[i]
		if p.Lightest < 0 && -p.Lightest > a.joints(a.Duration(p.LightestUnder)) || a.Wind != nil && -p.LeastInWind() > a.joints(windDuration) {
			return false
		}
	}
	return true
}

// Lifts says whether any block is lifted off its bed, so that it is anchored in any case.
func (a *Anchorage) Lifts(piers []statics.PierLoad) bool {
	return slices.ContainsFunc(piers, func(p statics.PierLoad) bool { return a.offGround(&p) > 0 })
}

// joints is what cap and strap hold, the lesser of the two, or a strap from the beam
// down alone.
func (a *Anchorage) joints(duration measure.Ratio) measure.Force {
	if a.ToBeam {
		return a.Strap.Holds(duration)
	}
	return min(a.Cap.Holds(duration), a.Strap.Holds(duration))
}

// lifted checks the fastenings of a pier off which loads elsewhere lift the beam:
// floor load on other bays, or a wall with its roof out past the next line. The
// strap hands the lift to the block. Piers that stay pressed down get no check.
func (a *Anchorage) lifted(p *statics.PierLoad) check.Finding {
	if p.Lightest >= 0 {
		return check.Finding{}
	}
	up, duration := -p.Lightest, a.Duration(p.LightestUnder)
	held := a.joints(duration)
	result := check.Check{ID: "pier." + p.Name + ".lift", What: "loads elsewhere lifting the beam off " + p.Name, Demand: up, Capacity: min(held, a.Support), Ratio: check.RatioOf(float64(up), float64(min(held, a.Support))),
		Combination: p.LightestUnder, Duration: duration, Clause: "statics, floor load on the worst bays; " + a.Strap.Clause, Memory: true}
	if !result.Holds() {
		result.Needs = a.anchors
		if up > held {
			result.Needs = stronger
		}
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		down := p.Dead + max(0, p.BuildingLeast)
		return []string{
			fmt.Sprintf("holds down: own weight %s + building at its lightest %s = %s", t.Force(float64(p.Dead)), t.Force(float64(max(0, p.BuildingLeast))), t.Force(float64(down))),
			fmt.Sprintf("lifts (%s): building %s, floor load %s, snow %s, roof live load %s, each by its factor: %s", p.LightestUnder,
				t.Force(float64(min(0, p.BuildingLeast))), t.Force(float64(p.LiveLeast)), t.Force(float64(min(0, p.Snow))), t.Force(float64(min(0, p.RoofLive))), t.Force(float64(down-p.Lightest))),
			fmt.Sprintf("left to fastenings: %s", t.Force(float64(up))),
			a.jointWords(t, duration),
			fmt.Sprintf("the block that the strap holds to weighs %s; ratio %s", t.Force(float64(a.Support)), t.Ratio(float64(result.Ratio))),
		}
	}}
}

// stronger is what others do where cap and strap do not hold.
const stronger = "connectors from beam to block, stronger than cap and strap, for an engineer, by the forces on the sheet Loads"

// heldDown checks cap and strap of a pier in wind.
func (a *Anchorage) heldDown(p *statics.PierLoad) check.Finding {
	up, held := max(0, -p.LeastInWind()), a.joints(windDuration)
	result := check.Check{ID: "pier." + p.Name + ".hold_down", What: "wind lifting the beam at " + p.Name + " off its post, and the post off its block", Demand: up, Capacity: held,
		Ratio: check.RatioOf(float64(up), float64(held)), Combination: underWind, Duration: windDuration, Clause: "ASCE 7-16 2.4.1; " + a.Strap.Clause, Memory: true}
	if !result.Holds() {
		result.Needs = stronger
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{a.windWords(t, p), a.jointWords(t, windDuration), fmt.Sprintf("ratio %s", t.Ratio(float64(result.Ratio)))}
	}}
}

// heldToGround checks whether wind lifts a block off its bed.
func (a *Anchorage) heldToGround(p *statics.PierLoad) check.Finding {
	down := 0.6 * (p.Dead + max(0, p.BuildingLeast) + a.Support)
	up := down - p.LeastInWind() - 0.6*a.Support
	result := check.Check{ID: "pier." + p.Name + ".uplift", What: "wind lifting the block at " + p.Name + " off its bed", Demand: up, Capacity: down,
		Ratio: check.RatioOf(float64(up), float64(down)), Combination: underWind, Clause: "ASCE 7-16 2.4.1; " + a.Wind.Source, Memory: a.Wind.Memory}
	if !result.Holds() {
		result.Needs = a.anchors
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{a.windWords(t, p), fmt.Sprintf("the block adds 0.6 × %s; lifts %s, holds %s; ratio %s", t.Force(float64(a.Support)), t.Force(float64(up)), t.Force(float64(down)), t.Ratio(float64(result.Ratio)))}
	}}
}

func (a *Anchorage) jointWords(t check.Words, duration measure.Ratio) string {
	if a.ToBeam {
		return a.Strap.Working(t, duration) + "; it runs up to the beam, past the cap"
	}
	return a.Cap.Working(t, duration) + "; " + a.Strap.Working(t, duration)
}

func (a *Anchorage) windWords(t check.Words, p *statics.PierLoad) string {
	return fmt.Sprintf("0.6·(own weight %s + lightest building %s) − uplift of the roof %s − couple at the corners %s = %s", t.Force(float64(p.Dead)), t.Force(float64(p.BuildingLeast)),
		t.Force(float64(p.Gust.Lift)), t.Force(float64(p.Gust.Couple())), t.Force(float64(p.LeastInWind())))
}

func (a *Anchorage) overturning(push loads.Thrust, b Balanced) check.Finding {
	result := check.Check{ID: "wind." + push.Name + ".overturning", What: "overturning by wind " + push.Name + " the beams: all with the blocks on the stone", Demand: b.Turning, Capacity: b.Resisting,
		Ratio: check.RatioOf(float64(b.Turning), float64(b.Resisting)), Combination: underWind, Clause: "ASCE 7-16 2.4.1; " + a.Wind.Source, Memory: a.Wind.Memory}
	each := b.Tie / measure.Force(push.PerRow)
	if !result.Holds() {
		result.Needs = a.anchors
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("D = %s (lightest building, own weight); H = %s × %s = %s; U = %s × %s = %s", t.Force(float64(b.Dead)), t.Factor(a.Wind.Factor),
				t.Force(float64(push.Force)), t.Force(float64(b.Sideways)), t.Factor(a.Wind.Factor), t.Force(float64(a.Wind.Up)), t.Force(float64(b.Up))),
			fmt.Sprintf("Mo = H·arm + U·s/2 = %s × %s + %s × %s/2 = %s", t.Force(float64(b.Sideways)), t.Length(b.Arm), t.Force(float64(b.Up)), t.Length(b.Span), t.Moment(float64(b.Turning))),
			fmt.Sprintf("Mr = 0.6·D·s/2 = 0.6 × %s × %s/2 = %s", t.Force(float64(b.Dead)), t.Length(b.Span), t.Moment(float64(b.Resisting))),
			fmt.Sprintf("tie on the windward row = (Mo − Mr)/s = %s, on average %s at each of %d piers", t.Force(float64(b.Tie)), t.Force(float64(each)), push.PerRow),
		}
	}}
}

func (a *Anchorage) sliding(push loads.Thrust, b Balanced) check.Finding {
	result := check.Check{ID: "wind." + push.Name + ".sliding", What: "sliding of the blocks on the stone by wind " + push.Name + " the beams", Demand: b.Sideways, Capacity: b.Friction,
		Ratio: check.RatioOf(float64(b.Sideways), float64(b.Friction)), Combination: underWind, Clause: "NAVFAC DM 7.02 (1986) Table 1, concrete on clean gravel 0.55, over 1.5; the 1.5 is from memory", Memory: true}
	if !result.Holds() {
		result.Needs = a.anchors
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
