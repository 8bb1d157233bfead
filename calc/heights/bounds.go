package heights

import (
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// terms are the lengths that bind the heights of a job.
type terms struct {
	BuildUp                      measure.Length // top of post to top of surface, as it prints: the three heights of the cover add up
	Shortest, Longest            measure.Length // of a post
	Clear                        measure.Length // ground to the top of a post, least
	StoneLeast, StoneMost, Embed measure.Length
	AboveGround, SeatHeight      measure.Length // seat over the ground, least; over the block's underside
	DigLeast, DigDeepest, Frost  measure.Length // Frost is 0 when it is only reported
	RoundUp                      measure.Length
	Room                         measure.Length  // that a seat is given to come out higher or lower
	BenchMark                    measure.Length  // its height
	Mark                         measure.Length  // finest printed mark
	Serves, Shim, Plane          measure.Length  // how far a cut post may be off as it is, with a shim, and with a plane
	Given                        *measure.Length // floor height wished for, nil for the lowest
}

func termsOf(j *job.Job, f *frame.Frame) terms {
	t := terms{
		BuildUp:  f.BuildUp.Total().RoundTo(j.Mark()),
		Shortest: j.Frame.Posts.Shortest, Longest: j.Frame.Posts.Longest, Clear: j.Frame.Clear,
		StoneLeast: j.Stone.Least, StoneMost: j.Stone.Most, Embed: j.Stone.Embed,
		AboveGround: j.Stone.AboveGround, SeatHeight: j.Block.SeatHeight,
		DigLeast: j.Dig.Least, DigDeepest: j.Dig.Deepest,
		RoundUp: j.Platform.Floor.RoundUp, Room: j.Platform.Floor.Room, BenchMark: j.Ground.BenchMark.Height, Mark: j.Mark(),
		Serves: trade.PostServes.In(j.Units), Shim: trade.ShimMost.In(j.Units), Plane: trade.PlaneMost.In(j.Units),
	}
	if j.Site.Frost == "dig" {
		t.Frost = j.Site.FrostDepth
	}
	if !j.Platform.Floor.Lowest {
		height := j.Platform.Floor.Height
		t.Given = &height
	}
	return t
}

// place is what the heights need to know of one pier.
type place struct {
	name      string
	ground    measure.Length
	buildUp   measure.Length  // top of post to top of surface on its line
	probe     *job.Probe      // what the bar found
	dug       *job.Probe      // the hole as dug
	seat      *measure.Length // the seat as set
	exception job.Exception
}

// planned returns the piers as they stood before anything was measured on them.
func (h *Heights) planned(j *job.Job) []place {
	list := make([]place, len(h.Piers))
	for i, p := range h.Piers {
		list[i] = place{name: p.Name, ground: p.Level.Height, buildUp: h.terms.BuildUp, exception: j.Piers[p.Name]}
		if probe, probed := j.Ground.Probes[p.Name]; probed {
			probe.Depth = max(0, probe.Depth-p.Level.Cut) // the bar was pushed in before the cut
			list[i].probe = &probe
		}
	}
	return list
}

// Limit says, in a closed list of words, which rule stops a height.
type Limit string

// The limits. Their words are printed.
const (
	SeatAboveGround Limit = "seat above ground" // the seat may not lie lower over the ground
	DeepestDig      Limit = "deepest dig"
	Rock            Limit = "rock"
	Water           Limit = "water"
	BeamClearance   Limit = "beam clearance" // ground to the underside of the beam
	StoneMost       Limit = "most stone"
	Embedded        Limit = "stone embedded" // the stone's top must stay below the ground
	LeastDig        Limit = "least dig"
	FirmGround      Limit = "firm ground"
	FrostDepth      Limit = "frost depth"
	HoleAsDug       Limit = "hole as dug"
	SeatAsSet       Limit = "seat as set"
)

// Bounds are what one pier allows. The seat depends only on how deep the top of
// the stone lies under the ground, cover = D − c:
//
//	seat = g − cover + h        embed ≤ cover ≤ h − above ground
type Bounds struct {
	Name                  string
	Ground, SeatHeight    measure.Length
	DigRule               measure.Length // least dig, or frost: what holds whatever the digging meets
	DigLeast, DigMost     measure.Length
	DigLeastBy, DigMostBy Limit
	StoneLeast, StoneMost measure.Length
	CoverLeast, CoverMost measure.Length
}

// bounds works out what a pier allows. Rock is dug to and no deeper; water is
// not dug into.
func (t terms) bounds(p place) Bounds {
	b := Bounds{
		Name: p.name, Ground: p.ground, SeatHeight: t.SeatHeight,
		DigLeast: t.DigLeast, DigLeastBy: LeastDig, DigMost: t.DigDeepest, DigMostBy: DeepestDig,
		StoneLeast: t.StoneLeast, StoneMost: t.StoneMost,
		CoverLeast: t.Embed, CoverMost: t.SeatHeight - t.AboveGround,
	}
	if t.Frost > b.DigLeast {
		b.DigLeast, b.DigLeastBy = t.Frost, FrostDepth
	}
	b.DigRule = b.DigLeast
	if p.exception.Bed != nil {
		b.StoneLeast = *p.exception.Bed
	}
	if p.exception.Deepest != nil {
		b.DigMost = *p.exception.Deepest
	}
	switch {
	case p.dug != nil:
		b.dug(*p.dug)
	case p.probe != nil:
		b.found(*p.probe)
	}
	return b
}

// dug holds the least dig to the hole as it stands: what was dug too deep is
// filled with stone, not with soil. Rock and water end the digging.
func (b *Bounds) dug(hole job.Probe) {
	b.reach(hole.Depth, HoleAsDug)
	b.DigMost = max(b.DigMost, hole.Depth)
	switch hole.Found {
	case "rock":
		b.DigMost, b.DigMostBy = hole.Depth, Rock
	case "water":
		b.DigMost, b.DigMostBy = hole.Depth, Water
	}
}

// found narrows the dig by what the bar met.
func (b *Bounds) found(probe job.Probe) {
	switch probe.Found {
	case "water":
		if probe.Depth < b.DigMost {
			b.DigMost, b.DigMostBy = probe.Depth, Water
		}
		return
	case "rock":
		b.reach(probe.Depth, Rock)
		if probe.Depth < b.DigMost {
			b.DigMost, b.DigMostBy = probe.Depth, Rock
		}
	default:
		b.reach(probe.Depth, FirmGround)
	}
}

// reach deepens the least dig to what the bar or the spade met.
func (b *Bounds) reach(depth measure.Length, by Limit) {
	if depth > b.DigLeast {
		b.DigLeast, b.DigLeastBy = depth, by
	}
}

// LowestSeat returns the lowest seat the pier allows and what stops it there.
//
//	lowest = max(g + above ground, g − most dig + least stone + h)
func (b Bounds) LowestSeat() (measure.Length, Limit) {
	if deepest := b.DigMost - b.StoneLeast; deepest < b.CoverMost {
		return b.Ground - deepest + b.SeatHeight, b.DigMostBy
	}
	return b.Ground - b.CoverMost + b.SeatHeight, SeatAboveGround
}

// HighestSeat returns the highest seat the pier allows and what stops it there.
//
//	highest = min(g − embed + h, g − least dig + most stone + h)
func (b Bounds) HighestSeat() (measure.Length, Limit) {
	if shallowest := b.DigLeast - b.StoneMost; shallowest > b.CoverLeast {
		return b.Ground - shallowest + b.SeatHeight, StoneMost
	}
	return b.Ground - b.CoverLeast + b.SeatHeight, Embedded
}

// Lacks returns by how much the pier contradicts itself, whatever the floor: 0
// when it does not.
func (b Bounds) Lacks() measure.Length {
	low, _ := b.LowestSeat()
	high, _ := b.HighestSeat()
	return max(0, b.DigLeast-b.DigMost, b.StoneLeast-b.StoneMost, low-high)
}
