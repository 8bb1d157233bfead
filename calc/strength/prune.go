package strength

import (
	"math"
	"slices"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// floorKey is what the joists' checks and the lines' loads depend on.
type floorKey struct {
	joist         string
	spacing, wide measure.Length
	lines         int
}

// beamKey is what a beam's checks depend on, but for the loads.
type beamKey struct {
	size           string
	plies          int
	lines, perLine int
}

// floorResult is what was found out about a floor.
type floorResult struct {
	holds bool
	loads []float64 // by line: own weight of the floor and patterned live load, N/m
	dead  float64   // own weight of the floor, N/m2

	worst   measure.Ratio // greatest ratio of surface and joists
	governs string
}

func (c *Choice) floorKey() floorKey {
	return floorKey{c.Joist.Size, c.Spacing, c.Beam.Across(), c.Lines}
}

func (c *Choice) beamKey() beamKey {
	return beamKey{c.Beam.Size, c.Beam.Plies, c.Lines, c.PerLine}
}

// leastMoment returns the least that the greatest moment can be over so many equal
// spans under a uniform load, as a share of w·L²: 1/8 for one and two, 1/10 for
// three, more for four and on. A joint only parts them into fewer.
func leastMoment(spans int) float64 {
	if spans <= 2 {
		return 0.1249
	}
	return 0.0999
}

// leastDeflection does the same for a span's deflection under patterned load, as a
// share of w·L⁴/EI: one span 5/384, two with one loaded 0.0092, more with all
// loaded 0.0069 or less where one alone is loaded: standard beam diagrams.
func leastDeflection(spans int) float64 {
	switch spans {
	case 1:
		return 0.0130
	case 2:
		return 0.0091
	}
	return 0.0064
}

// ruledOut says whether a choice cannot pass, by conditions that every passing
// frame meets whatever its joints: the greatest moment and deflection are at least
// those of [leastMoment] and [leastDeflection], less what an overhang takes off,
// the greatest shear is at least w·L/2, and an inner pier takes the load of a span.
func (s *search) ruledOut(c *Choice) bool {
	floor := s.floors[c.floorKey()]
	if floor == nil {
		if !s.joistTooWeak(c) {
			return c.PerLine > 0 && s.lineTooWeak(c, s.leastOnALine(c))
		}
		floor = &floorResult{}
		s.floors[c.floorKey()] = floor
	}
	if !floor.holds {
		return true
	}
	if failedUnder, ok := s.beams[c.beamKey()]; ok && floor.dead >= failedUnder {
		return true
	}
	if c.PerLine == 0 {
		return false // the spacing rules
	}
	return slices.ContainsFunc(floor.loads, func(w float64) bool { return s.lineTooWeak(c, w) })
}

// lineTooWeak says whether a line's beam or one of its piers fails under so much
// by metre.
func (s *search) lineTooWeak(c *Choice, w float64) bool {
	v := s.valuesOf(c.Beam, s.in.Job.Frame.Beams.Timber, c.Beam.Plies >= 3)
	span, over := s.pierSpan(c)
	return s.beamTooWeak(c, v, w, span, over) || s.pierTooWeak(c, v, w, span, over)
}

// leastOnALine returns what some line gets of the live load at least, by metre:
// of two lines one gets half of the floor; of more, an inner one with every bay
// loaded that adds to it gets a bay or more.
func (s *search) leastOnALine(c *Choice) float64 {
	j := s.in.Job
	if c.Lines == 2 {
		return float64(j.Platform.FloorLoad) * j.Platform.Width.Metres() / 2
	}
	over := j.Frame.Beams.Inset + c.Beam.Across()/2
	return float64(j.Platform.FloorLoad) * (j.Platform.Width - 2*over).Metres() / float64(c.Lines-1)
}

// valuesOf returns the adjusted values of a section, looked up once.
func (s *search) valuesOf(section job.Section, own *job.Timber, repetitive bool) Adjusted {
	key := valuesKey{section.Size, section.Plies, repetitive}
	if v, ok := s.values[key]; ok {
		return v
	}
	timber := s.in.Job.Timber
	if own != nil {
		timber = *own
	}
	ref, err := LookUp(timber, section)
	if err != nil {
		panic("strength: a section without values is no choice: " + err.Error()) // withValues left it out
	}
	v := Adjust(ref, section, Service{Wet: timber.Wet, Incised: timber.Incised, Repetitive: repetitive})
	s.values[key] = v
	return v
}

type valuesKey struct {
	size       string
	plies      int
	repetitive bool
}

// outer returns where the first and last pier stand, from the beam's ends.
func (s *search) outer() (first, last measure.Length) {
	piers, half := s.in.Job.Frame.Piers, s.in.Job.Frame.Posts.Width/2
	first, last = half, half
	if piers.First != nil {
		first = *piers.First
	}
	if piers.Last != nil {
		last = *piers.Last
	}
	return first, last
}

// reach returns the distance from the first pier of a line to its last.
func (s *search) reach() measure.Length {
	first, last := s.outer()
	return s.in.Job.Platform.Length - 2*s.in.Job.Frame.Beams.SetBack - first - last
}

// pierSpan returns the distance of the piers and the floor's overhang past the
// outer ones.
func (s *search) pierSpan(c *Choice) (span, over float64) {
	first, last := s.outer()
	return s.reach().Metres() / float64(c.PerLine-1), (max(first, last) + s.in.Job.Frame.Beams.SetBack).Metres()
}

func (s *search) beamTooWeak(c *Choice, v Adjusted, w, span, over float64) bool {
	b, d := c.Beam.Across().Metres(), c.Beam.Depth.Metres()
	if w*(leastMoment(c.PerLine-1)*span*span-over*over/2) > float64(v.Bending)*b*d*d/6 {
		return true
	}
	return 1.5*w*(span/2-d)/(b*d) > float64(v.Shear)
}

// pierTooWeak compares the load of an inner pier with what block, ground and the
// beam's bearing allow. The end piers of a line take no more than half a span and
// the overhang, so one of the inner ones takes a whole span or more.
func (s *search) pierTooWeak(c *Choice, v Adjusted, w, span, over float64) bool {
	load := w * (span - over*over/span)
	if c.PerLine == 2 {
		load = w * span / 2
	}
	post := s.in.Job.Frame.Posts
	contact := min(c.Beam.Across(), post.Depth).Times(post.Width)
	bearing := float64(v.BearingAcross) * float64(BearingFactor(post.Width, 6*measure.Inch)) * float64(contact)
	return load > min(s.mostOnPier(), bearing)
}

// mostOnPier returns the greatest load that block, stone and soil allow, with the
// block's weight on them and the post off its centre:
//
//	P·(1 + 6·e/B) + block ≤ q·B²   while e ≤ B/6
func (s *search) mostOnPier() float64 {
	j, rules := s.in.Job, rulesOf(s.in.Rules, s.in.Job)
	most := math.Inf(1)
	if j.Block.RatedLoad > 0 {
		most = float64(j.Block.RatedLoad)
	}
	base := j.Block.Base
	side := min(base+j.Stone.Least, base+2*j.Stone.Margin)
	under := func(side measure.Length, allowed measure.Stress) float64 {
		tilt := 1 + 6*min(rules.Eccentricity.Metres()/side.Metres(), 1.0/6)
		return float64(allowed.On(side.Times(side))-j.Block.Weight.Weight()) / tilt
	}
	most = min(most, under(base, rules.StoneBearing))
	if soil := j.Site.Soil.Bearing; soil > 0 { // without one the job is at fault, and the checks say so
		most = min(most, under(side, soil))
	}
	return most
}

// joistTooWeak rules a floor out by surface and joists under the live load alone.
func (s *search) joistTooWeak(c *Choice) bool {
	j := s.in.Job
	if rating := j.Platform.Surface.SpanRating; j.Platform.Surface.Kind == "panels" && rating > 0 && c.Spacing > measure.Length(rating)*measure.Inch {
		return true
	}
	v := s.valuesOf(c.Joist, j.Frame.Joists.Timber, true)
	b, d := c.Joist.Across().Metres(), c.Joist.Depth.Metres()
	over := (j.Frame.Beams.Inset + c.Beam.Across()/2).Metres()
	spans := c.Lines - 1
	span := (j.Platform.Width.Metres() - 2*over) / float64(spans)
	w := float64(j.Platform.FloorLoad) * c.Spacing.Metres()
	if w*(leastMoment(spans)*span*span-over*over/2) > float64(v.Bending)*b*d*d/6 {
		return true
	}
	stiffness := float64(v.Elastic) * b * d * d * d / 12
	return leastDeflection(spans)*w*math.Pow(span, 4)/stiffness > span/float64(rulesOf(s.in.Rules, j).LiveLimit)
}

// passes lays a choice out and makes its checks, dearest last. It notes what it
// finds about the floor and the beams for the choices after it.
func (s *search) passes(c *Choice) bool {
	in := s.in
	in.Job = c.with(s.in.Job)
	var faults = s.faults
	in.Frame, faults = frame.Skeleton(in.Job)
	if in.Frame == nil || !faults.Empty() {
		return false
	}
	s.checked++
	s.store.Reset()
	k := newChecker(in, s.store)
	k.quiet, k.hasty = true, true
	k.checks = s.room[:0]
	defer func() { s.room = k.checks }()
	if !k.prepare() {
		s.faults.Join(k.faults)
		return false
	}
	if !s.floorPasses(c, k) || s.ruledOut(c) {
		return false
	}
	if !k.carryHeaviestFirst() {
		return false
	}
	if k.failed {
		s.noteBeam(c, k)
		return false
	}
	k.piers = k.pierLoads()
	k.pierChecks(k.piers)
	if k.failed {
		return false
	}
	k.joistToenails()
	k.windChecks(k.piers)
	c.Worst, c.Governs = k.greatest()
	if floor := s.floors[c.floorKey()]; floor.worst > c.Worst {
		c.Worst, c.Governs = floor.worst, floor.governs
	}
	return !k.failed
}

// floorPasses checks surface and joists, once for each floor.
func (s *search) floorPasses(c *Choice, k *checker) bool {
	if known := s.floors[c.floorKey()]; known != nil {
		return known.holds
	}
	k.surfaceChecks()
	if !k.failed {
		k.joists = k.joistChecks()
	}
	floor := &floorResult{holds: !k.failed, dead: k.loads.area[deadCase]}
	floor.worst, floor.governs = k.greatest()
	most, _, whole := k.liveShare()
	for i := range most {
		floor.loads = append(floor.loads, k.loads.area[liveCase]*most[i]+floor.dead*whole[i]+k.lasting(i))
	}
	s.floors[c.floorKey()] = floor
	k.checks = k.checks[:0]
	return floor.holds
}

// lasting returns what walls and rims put on a line by metre: those that run the
// whole length, and of the others only what lifts.
func (c *checker) lasting(line int) float64 {
	sum, length := 0.0, c.frame.Length.Metres()
	for _, s := range c.loads.strips {
		if !s.alongX() || s.kind != deadCase && s.kind != buildingCase {
			continue
		}
		load := s.size * c.floor.Share(s.y1)[line]
		if s.x1 > 0 || s.x2 < length {
			load = min(0, load)
		}
		sum += load
	}
	return sum
}

// noteBeam remembers under how light a floor a beam failed. Each ratio is linear
// in the weight of the floor, so their greatest is convex in it: when it does not
// fall with a little more weight, it fails under every heavier floor.
func (s *search) noteBeam(c *Choice, k *checker) {
	failed, _ := k.greatest()
	dead := k.loads.area[deadCase]
	for i := range k.lines {
		for _, p := range k.lines[i].plies {
			p.cases[deadCase].Most.Add(p.cases[deadCase].Most, 0.01)
			p.cases[deadCase].Least.Add(p.cases[deadCase].Least, 0.01)
		}
	}
	k.checks, k.failed = k.checks[:0], false
	for i := range k.lines {
		k.checkLine(&k.lines[i])
	}
	if heavier, _ := k.greatest(); heavier < failed {
		return
	}
	if known, ok := s.beams[c.beamKey()]; !ok || dead < known {
		s.beams[c.beamKey()] = dead
	}
}

// greatest returns the greatest ratio among the checks that the frame must hold
// by itself.
func (c *checker) greatest() (measure.Ratio, string) {
	s := Strength{Checks: c.checks}
	worst, _ := s.Worst()
	return worst.Ratio, worst.ID
}
