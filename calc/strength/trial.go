package strength

import (
	"strings"

	"pierbook/calc/check"
	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
	"pierbook/calc/support"
	"pierbook/calc/timber"
	"pierbook/calc/trade"
)

// Depth is how much of the checks is wanted.
type Depth int

// The depths: with working and curves, as ratios alone, and as ratios alone until
// one fails.
const (
	InFull Depth = iota
	RatiosOnly
	UntilOneFails
)

// Trial is one frame under check. Its stages come in the order of Run; a search
// goes through them by itself and stops where it has seen enough.
type Trial struct {
	check.Findings
	Faults fault.List
	Loads  *loads.Acting
	Floor  *statics.Floor
	Lines  []statics.LoadedLine // as they were checked
	Piers  []statics.PierLoad

	in                Input
	job               *job.Job
	frame             *frame.Frame
	rules             check.Rules
	heights           statics.PostHeights
	store             *statics.Gauges
	combos            []loads.Combination // without wind, which acts on piers alone
	onPier            []loads.Combination // all
	standard          Standard
	support           Support
	joist, beam, post Member
	rim               Member
	joists, beams     []statics.Bar // that were looked at
	anchorage         support.Anchorage
	strapNails        int           // in each end of a strap
	knees             support.Knees // of tall posts
	remarks           []check.Remark
}

// NewTrial returns a frame to check. Frames of one layout share the store.
func NewTrial(in Input, store *statics.Gauges, depth Depth) *Trial {
	j := in.Job
	in.Patches, in.Walls = loads.Placed(j, in.Patches, in.Walls)
	t := &Trial{in: in, job: j, frame: in.Frame, rules: check.RulesOf(in.Rules, j), heights: statics.PostHeights{Known: in.Heights, Job: j}, store: store,
		Findings: check.Findings{Words: check.Words{Style: j.Style()}, Quiet: depth != InFull, Hasty: depth == UntilOneFails}}
	t.standard, t.support = standardOf(j), supportOf(j, t.rules, t.Words)
	return t
}

// Run makes every check, or as many as it takes for one to fail. It fails with a
// fault when the checks cannot be made.
func (t *Trial) Run() bool {
	if !t.Prepare() {
		return false
	}
	t.CheckFloor()
	if !t.CheckLines() {
		return false
	}
	t.CheckPiers()
	t.CheckWhole()
	return true
}

// wrong puts a fault at the place of a key of the job.
func (t *Trial) wrong(path, wrong, remedy string) {
	t.Faults.Add(fault.Fault{At: t.job.At(path), Path: path, Wrong: wrong, Remedy: remedy})
}

// Prepare looks up the timber, puts the loads on the floor and lays the floor
// over its lines. It fails with a fault when the checks cannot be made.
func (t *Trial) Prepare() bool {
	if t.job.Site.Soil.Bearing <= 0 {
		t.wrong("site.soil", "no soil is given, so nothing is known of what the ground can carry", "name a class of soil: "+presumed()+"; or give its allowable bearing, such as 1500 psf")
	}
	t.members()
	seat, _ := t.support.Seat()
	acting := loads.Input{Job: t.job, Frame: t.frame, Patches: t.in.Patches, Walls: t.in.Walls, Timber: loads.WeightOf(t.job), RiskCategory: t.rules.RiskCategory,
		Underside: t.heights.TallestPost(t.frame) + seat, Shares: statics.Shares(t.frame, t.hung()), Quiet: t.Quiet}
	t.Faults.Join(loads.Misplaced(acting))
	if !t.Faults.Empty() {
		return false
	}
	var faults fault.List
	if t.Loads, faults = loads.Gather(acting); !faults.Empty() {
		t.Faults.Join(faults)
		return false
	}
	for _, words := range t.Loads.Unchecked {
		t.remark(check.NotCounted, words)
	}
	t.combos, t.onPier = loads.Relevant(t.Loads.Present, false), loads.Relevant(t.Loads.Present, true)
	var err error
	if t.Floor, err = statics.Cross(t.frame, t.Loads, t.hung(), t.store); err != nil {
		t.wrong("frame.beams.lines", "the joists have fewer than two lines to stand on", "write 2 or more lines")
		return false
	}
	return true
}

// hung tells joists that hang between the beams from those on them.
func (t *Trial) hung() bool { return t.job.Frame.Joists.Sit == "between_beams" }

// members resolves the members' design values.
func (t *Trial) members() {
	f := t.frame
	member := func(name, path string, s job.Section, shared bool) Member {
		m, faults := t.standard.Member(name, t.job, s, path, shared)
		t.Faults.Join(faults)
		return m
	}
	t.joist = member("joist", "frame.joists", f.Sections.Joist, t.widestBay() <= 24*measure.Inch && len(f.Joists) >= 3)
	t.beam = member("beam", "frame.beams", f.Sections.Beam, f.Sections.Beam.Plies >= 3)
	if len(f.Rims) > 0 {
		t.rim = member("rim", "frame.rims", f.Sections.Rim, false)
	}
	t.post = member("post", "frame.posts", f.Sections.Post, false)
}

// widestBay is how far apart joists really stand: the last bay may be wider than
// the spacing asked for.
func (t *Trial) widestBay() measure.Length {
	return max(t.frame.WidestBay, t.job.Frame.Joists.Spacing)
}

// CheckFloor checks the surface and the joists. In a search the ordinary joist
// goes first: when it fails, the rest need no look.
func (t *Trial) CheckFloor() {
	surface := t.job.Platform.Surface
	if surface.Kind == "panels" && surface.SpanRating <= 0 {
		t.remark(check.NotCounted, "Panels: no span rating was given; read it off the grade stamp.")
	}
	t.Add(timber.Surface(surface, t.widestBay(), max(t.job.Platform.FloorLoad, t.Loads.SnowOnFloor()), t.job.Building != nil)...)
	t.Add(t.oneBayPanels(), t.boardsOnTwoJoists(), t.hungStub(), t.rimOverBeam(), t.leastSeat(), t.outerPosts())
	if t.Enough() || !t.hungEnds() {
		return
	}
	if !t.Hasty {
		t.joists = t.Floor.Joists()
		t.checkJoists(t.joists)
		return
	}
	t.checkJoists([]statics.Bar{t.Floor.UsualJoist()})
	if !t.Failed {
		t.joists = t.Floor.Joists()
		t.checkLoadedJoists(t.joists[1:])
	}
}

// checkJoists checks joists of which the first is the ordinary one.
func (t *Trial) checkJoists(joists []statics.Bar) {
	t.Add(t.joist.JoistShape(&joists[0], t.hung())...)
	t.checkLoadedJoists(joists)
}

func (t *Trial) checkLoadedJoists(joists []statics.Bar) {
	m, least := t.joist, trade.BearingLeast.In(t.job.Units)
	seats := t.Floor.JoistSeats(least)
	t.worst(joists, func(b *statics.Bar) check.Finding { return m.Bending(b, t.combos) })
	t.worst(joists, func(b *statics.Bar) check.Finding { return m.Shear(b, t.combos) })
	t.worst(joists, func(b *statics.Bar) check.Finding { return m.LiveDeflection(b, t.Loads.Present, t.rules.LiveLimit) })
	t.worst(joists, func(b *statics.Bar) check.Finding { return m.TotalDeflection(b, t.Loads.Present, t.rules.TotalLimit) })
	t.worst(joists, func(b *statics.Bar) check.Finding { return m.OnBeams(b, t.combos, seats, least, t.hung()) })
}

// worst keeps the finding with the greatest ratio of several members.
func (t *Trial) worst(bars []statics.Bar, of func(*statics.Bar) check.Finding) {
	t.AddWorst(len(bars), func(i int) check.Finding { return of(&bars[i]) })
}

// CheckLines works and checks the beam lines by falling load. It fails with a
// fault when a line cannot be worked; a search stops at the first line that fails
// and leaves out those after it.
func (t *Trial) CheckLines() bool {
	if t.Enough() {
		return true
	}
	loads, err := t.Floor.LineLoads()
	if err != nil {
		t.wrong("frame.beams.set_back", "the rims past the beams cannot be worked: "+err.Error(), "set the beams back by 0")
		return false
	}
	lines := make([]statics.LoadedLine, len(loads))
	for _, i := range statics.HeaviestFirst(loads) {
		l, err := t.Floor.CarryLine(i, loads[i], t.store)
		if err != nil {
			t.wrong("frame.piers.per_line", "a piece of beam "+t.frame.Lines[i].Name+" has fewer than two piers under it", "write 2 or more piers per line, and splice over piers")
			return false
		}
		lines[i] = l
		t.Lines = append(t.Lines, l)
		t.CheckLine(&l)
		if t.Enough() {
			return true
		}
	}
	t.Lines = lines
	for i := range lines {
		t.beams = append(t.beams, lines[i].Bars()...)
	}
	return true
}

// CheckLine checks the beam of one line.
func (t *Trial) CheckLine(l *statics.LoadedLine) {
	plies, m := l.Bars(), t.beam
	t.worst(plies, func(b *statics.Bar) check.Finding { return m.Bending(b, t.combos) })
	t.worst(plies, func(b *statics.Bar) check.Finding { return m.Shear(b, t.combos) })
	t.worst(plies, func(b *statics.Bar) check.Finding { return m.OnPost(b, t.combos, t.frame.Sections.Post) })
	t.worst(plies, func(b *statics.Bar) check.Finding { return m.LiveDeflection(b, t.Loads.Present, t.rules.LiveLimit) })
	t.worst(plies, func(b *statics.Bar) check.Finding { return m.TotalDeflection(b, t.Loads.Present, t.rules.TotalLimit) })
	t.Add(m.BeamShape(&plies[0])...)
}

// CheckPiers sums the loads of the piers up and checks post, support and ground at
// every one, in a search the heaviest first.
func (t *Trial) CheckPiers() {
	if t.Enough() {
		return
	}
	t.Piers = t.Floor.PierLoads(t.Lines, t.heights, t.onPier)
	_, seat := t.support.Seat()
	site := t.job.Site
	ground := support.Ground{Class: site.Soil.Class, Filled: site.Fill == "yes", Given: site.Soil.Bearing, Steep: t.in.Steep}
	for _, i := range t.heaviestFirst() {
		p := &t.Piers[i]
		t.Add(t.post.Column(p, t.onPier), t.post.OnSeat(p, t.onPier, seat), t.post.OffCentre(p, t.onPier, t.rules.Eccentricity))
		t.Add(t.support.Checks(p)...)
		if !t.Hasty { // what others settle rules no frame out
			t.Add(ground.At(p.Name, t.Words)...)
		}
		if t.Enough() {
			return
		}
	}
}

// heaviestFirst returns the order in which piers are looked at: as they stand, or
// in a search the heaviest alone, then the rest.
func (t *Trial) heaviestFirst() []int {
	order := make([]int, len(t.Piers))
	heaviest := 0
	for i := range t.Piers {
		order[i] = i
		if t.Piers[i].Most > t.Piers[heaviest].Most {
			heaviest = i
		}
	}
	if t.Hasty {
		order[0], order[heaviest] = order[heaviest], order[0]
	}
	return order
}

// CheckWhole checks the platform as one body in wind, its joints and openings.
func (t *Trial) CheckWhole() {
	if t.Enough() {
		return
	}
	if w := t.Loads.Wind; w != nil && !t.hung() {
		t.Add(t.joist.Toenails(w.Greater(), len(t.frame.Joists)*len(t.frame.Lines)))
	}
	seat, _ := t.support.Seat()
	t.anchorage = support.Anchorage{Frame: t.frame, Wind: t.Loads.Wind, Support: t.support.Weight(), Seat: seat, TallestPost: t.heights.TallestPost(t.frame),
		Friction: t.support.Friction(), Cap: t.post.CapLift(), Duration: t.durationUnder, Words: t.Words}
	if b := t.job.Building; b != nil {
		t.anchorage.LeastBuilding = b.WeightLeast
	}
	if !t.hung() {
		t.worst(t.joists, func(b *statics.Bar) check.Finding {
			return t.joist.LiftOff(b, t.combos, t.Floor.JoistSeats(trade.BearingLeast.In(t.job.Units)))
		})
	}
	t.stand()
	t.Add(t.openings()...)
}

// durationUnder returns the load-duration factor of a combination by its name.
func (t *Trial) durationUnder(name string) measure.Ratio {
	for _, c := range t.onPier {
		if c.Name == name {
			return t.standard.Duration(c)
		}
	}
	return 1
}

// presumed lists the classes of soil that the codes presume a bearing of.
func presumed() string {
	var names []string
	for _, s := range trade.Soils() {
		if s.HasPresumed() {
			names = append(names, s.Class)
		}
	}
	return strings.Join(names, ", ")
}
