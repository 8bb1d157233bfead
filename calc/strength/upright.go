package strength

import (
	"math"
	"slices"

	"pierbook/calc/check"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
	"pierbook/calc/support"
	"pierbook/calc/trade"
)

// guardForce pushes on a guard in any direction, and through it on the floor:
// IRC 2021 Table R301.5, 200 lb.
const guardForce = 200 * measure.PoundForce

// The most nails in an end of a strap, and screws in an end of a brace, that there
// is room for: our own limits. Beyond them others design it.
const (
	mostStrapNails   = 6
	mostBraceScrews  = 6
	leastBraceScrews = 2
)

// stand checks that the posts stay on their blocks and upright: what lifts them and
// what pushes their heads. Straps get more nails, then tall posts get braces, until
// all holds; where nothing does, it is by others.
func (t *Trial) stand() {
	a, pushes := &t.anchorage, t.pushes()
	u := t.upright()
	t.fasten(&u, pushes)
	_, _, levels := u.Holds(t.Piers, pushes)
	t.strapNails, t.knees = u.Limb.Count, u.Knees
	a.Want(t.Piers, levels)
	u.Anchors, u.Brace = a.Anchors(), "bracing, or walls under the floor, that hold its posts upright, for an engineer"
	first := len(t.Checks)
	t.Add(a.InWind(t.Piers)...)
	t.Add(a.Joints(t.Piers)...)
	t.Add(u.Checks(t.Piers, pushes)...)
	for i := range t.Piers {
		t.Add(u.Knees.Check(&t.Piers[i], t.rules.BracedAbove, t.Words))
	}
	anchored := func(c check.Check) bool { return c.Needs == a.Anchors() && !c.Holds() }
	if slices.ContainsFunc(t.Checks[first:], anchored) {
		a.Anchor(t.Piers, levels)
	}
}

// fasten chooses the nails of the straps and the braces: the first of its options,
// from the plainest on, under which all holds; else the first under which all holds
// once the blocks are anchored, else the first whose joints hold, else the last.
func (t *Trial) fasten(u *support.Upright, pushes []support.Push) {
	var options, anchored, joined []func()
	limit := t.rules.BracedAbove
	for _, from := range []measure.Length{limit, min(limit, support.ShortestBraced)} {
		for nails := trade.JointFor("strap", 0).Each; nails <= mostStrapNails; nails++ {
			for _, toBeam := range []bool{false, true} {
				for screws := leastBraceScrews; screws <= mostBraceScrews; screws++ {
					options = append(options, func() {
						u.Limb = t.post.StrapLimb(nails)
						t.anchorage.Strap, t.anchorage.ToBeam = strapOf(u.Limb, u.Slope), toBeam
						u.Knees.From, u.Knees.End = from, t.post.BraceEnd(screws)
					})
				}
			}
		}
	}
	for _, option := range options {
		option()
		if !t.anchorage.JointsHold(t.Piers) {
			continue
		}
		joined = append(joined, option)
		posts, blocks, _ := u.Holds(t.Piers, pushes)
		if !posts || !t.bracesHold(u) {
			continue
		}
		if blocks || t.anchorage.Lifts(t.Piers) {
			return
		}
		anchored = append(anchored, option)
	}
	for _, list := range [][]func(){anchored, joined, options[len(options)-1:]} {
		if len(list) > 0 {
			list[0]()
			return
		}
	}
}

// strapOf is both ends of a strap together.
func strapOf(limb check.Fastening, slope measure.Ratio) check.Fastening {
	limb.What, limb.Count, limb.Steel, limb.Slope = "nails of the strap, both ends", 2*limb.Count, 2*limb.Steel, slope
	return limb
}

// upright gathers what stands under the floor.
func (t *Trial) upright() support.Upright {
	seat, _ := t.support.Seat()
	side := min(t.frame.Sections.Post.Width, t.frame.Sections.Post.Depth)
	return support.Upright{Side: side, Stiffness: t.post.Stiffness(), Rocks: t.support.Rocks(), Seat: seat, Weight: t.support.Weight(), Slope: t.support.StrapSlope(side),
		Upholds: t.support.Upholds, Knees: support.Knees{Usual: check.DefaultRules().BracedAbove, Most: mostBraceScrews}}
}

// bracesHold says whether the braces hold the least that a brace is good for.
func (t *Trial) bracesHold(u *support.Upright) bool {
	for i := range t.Piers {
		if found := u.Knees.Check(&t.Piers[i], t.rules.BracedAbove, t.Words); u.Knees.Braces(&t.Piers[i]) && !found.Check.Holds() {
			return false
		}
	}
	return true
}

// pushes are the level forces on the posts' heads: wind on the building from four
// sides, wind on the edge of an open floor, and somebody against a guard.
func (t *Trial) pushes() []support.Push {
	if len(t.in.Heights) == 0 {
		return nil // how tall the posts will be is not known yet
	}
	var list []support.Push
	lightest := func(p *statics.PierLoad) measure.Force { return 0.6 * (p.Dead + p.BuildingLeast) }
	if w := t.Loads.Wind; w != nil {
		for _, d := range []struct {
			what   string
			thrust loads.Thrust
			sign   measure.Force
			couple func(p *statics.PierLoad) measure.Force
		}{
			{"wind across the beams, toward the last line", w.Across, 1, func(p *statics.PierLoad) measure.Force { return p.Gust.Across }},
			{"wind across the beams, toward line A", w.Across, -1, func(p *statics.PierLoad) measure.Force { return p.Gust.Across }},
			{"wind along the beams, toward the last piers", w.Along, 1, func(p *statics.PierLoad) measure.Force { return p.Gust.Along }},
			{"wind along the beams, toward the first piers", w.Along, -1, func(p *statics.PierLoad) measure.Force { return p.Gust.Along }},
		} {
			list = append(list, support.Push{What: d.what, Combination: "0.6D + 0.6W", Source: w.Source, Force: d.thrust.Force * measure.Force(w.Factor), Duration: 1.6, OwnWeight: 0.6,
				Press: func(p *statics.PierLoad) measure.Force { return p.InWind(d.sign * d.couple(p)) }})
		}
	} else if edge, factor := t.edgePressure(); edge > 0 {
		f := t.frame
		deck := f.BuildUp.Surface + f.BuildUp.Joist + f.BuildUp.Beam
		list = append(list, support.Push{What: "wind on the edge of the floor", Combination: "0.6D + 0.6W", Source: "ASCE 7-16 26.10, 27.1.5", Duration: 1.6, OwnWeight: 0.6, Press: lightest,
			Force: edge.On(max(f.Length, f.Width).Times(deck)) * measure.Force(factor)})
	}
	if t.guarded() {
		list = append(list, support.Push{What: "somebody against a guard", Combination: "D + L", Source: "IRC 2021 Table R301.5, 200 lb", Force: guardForce, Duration: 1, OwnWeight: 1,
			Press: func(p *statics.PierLoad) measure.Force { return p.Dead + p.BuildingLeast }})
	}
	return list
}

// edgePressure is the wind on the edge of an open floor, at least 16 psf as for open
// buildings (ASCE 7-16 27.1.5), and the factor to allowable stress.
func (t *Trial) edgePressure() (measure.Stress, measure.Ratio) {
	site := t.job.Site.Wind
	switch {
	case site.Speed > 0:
		q, _ := loads.VelocityPressure(site.Speed, site.Exposure, t.underside())
		return max(q*loads.Gust*loads.WallSides, loads.LeastOnWalls), 0.6
	case site.Pressure > 0:
		return site.Pressure * loads.Gust * loads.WallSides, 1
	}
	return 0, 0
}

// underside is how high the beams stand over the bed at the tallest pier.
func (t *Trial) underside() measure.Length {
	seat, _ := t.support.Seat()
	return t.heights.TallestPost(t.frame) + seat
}

// guarded says whether the floor stands so high somewhere that a guard is wanted.
func (t *Trial) guarded() bool {
	top := measure.Length(math.MinInt64)
	for i := range t.Piers {
		if p := &t.Piers[i]; p.HeightKnown {
			seat, _ := t.support.Seat()
			top = max(top, p.Height.Post+seat+p.Height.Stone-p.Height.Dig+t.frame.BuildUp.Total())
		}
	}
	return top > trade.GuardHeight.In(t.job.Units)
}
