package sizing

import (
	"pierbook/calc/check"
	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
	"pierbook/calc/strength"
)

// floorKey is what the checks of surface and joists depend on.
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
	dead  float64     // own weight, N/m2
	worst check.Check // of surface and joists
}

func (c *Choice) floorKey() floorKey {
	return floorKey{c.Joist.Size, c.Spacing, c.Beam.Across(), c.Lines}
}

func (c *Choice) beamKey() beamKey {
	return beamKey{c.Beam.Size, c.Beam.Plies, c.Lines, c.PerLine}
}

// search is one walk through the choices.
type search struct {
	in      strength.Input
	choices []Choice
	order   []int // of the choices, by rising cost
	store   *statics.Gauges
	floors  map[floorKey]*floorResult
	beams   map[beamKey]float64 // the lightest floor, N/m2, under which the beam is known to fail
	faults  fault.List
	room    []check.Check // for the checks of one candidate after another

	considered, checked int // frames within the bounds, and of them worked through
}

func newSearch(in strength.Input) *search {
	in.Heights = nil
	s := &search{in: in, store: statics.NewGauges(), floors: map[floorKey]*floorResult{}, beams: map[beamKey]float64{}}
	s.enumerate(bounds(in.Job))
	return s
}

// cheapest returns the first so many choices that pass, by rising cost.
func (s *search) cheapest(wanted int) []Choice {
	var found []Choice
	for _, at := range s.order {
		if !s.faults.Empty() {
			return nil // the job is at fault, whatever is chosen
		}
		c := s.choices[at]
		if s.knownToFail(&c) || !s.passes(&c) {
			continue
		}
		found = append(found, c)
		if len(found) == wanted {
			break
		}
	}
	return found
}

// knownToFail tells choices whose floor has failed, and those whose beam has
// failed under a floor that weighs no more.
func (s *search) knownToFail(c *Choice) bool {
	floor := s.floors[c.floorKey()]
	if floor == nil {
		return false
	}
	failedUnder, noted := s.beams[c.beamKey()]
	return !floor.holds || noted && floor.dead >= failedUnder
}

// passes lays a choice out and makes its checks, dearest last. It notes what it
// finds about the floor and the beams for the choices after it.
func (s *search) passes(c *Choice) bool {
	in := s.in
	in.Job = c.with(s.in.Job)
	laid, faults := frame.Skeleton(in.Job)
	if laid == nil || !faults.Empty() {
		return false
	}
	in.Frame = laid
	s.checked++
	s.store.Reset()
	t := strength.NewTrial(in, s.store, strength.UntilOneFails)
	t.Checks = s.room[:0]
	defer func() { s.room = t.Checks }()
	if !t.Prepare() {
		s.faults.Join(t.Faults)
		return false
	}
	if !s.floorPasses(c, t) || s.knownToFail(c) || !t.CheckLines() {
		return false
	}
	if t.Failed {
		s.noteBeam(c, t)
		return false
	}
	t.CheckPiers()
	t.CheckWhole()
	worst, _ := check.Greatest(t.Checks)
	if floor := s.floors[c.floorKey()].worst; floor.Ratio > worst.Ratio {
		worst = floor
	}
	c.Worst, c.Governs = worst.Ratio, worst.ID
	return !t.Failed
}

// floorPasses checks surface and joists, once for each floor.
func (s *search) floorPasses(c *Choice, t *strength.Trial) bool {
	if known := s.floors[c.floorKey()]; known != nil {
		return known.holds
	}
	t.CheckFloor()
	floor := &floorResult{holds: !t.Failed, dead: t.Loads.Area[loads.DeadCase]}
	floor.worst, _ = check.Greatest(t.Checks)
	s.floors[c.floorKey()] = floor
	t.Restart()
	return floor.holds
}

// noteBeam remembers under how light a floor a beam failed. Each ratio is linear
// in the weight of the floor, so their greatest is convex in it: when it does not
// fall with a little more weight, it fails under every heavier floor.
func (s *search) noteBeam(c *Choice, t *strength.Trial) {
	failed, _ := check.Greatest(t.Checks)
	dead := t.Loads.Area[loads.DeadCase]
	t.Restart()
	for i := range t.Lines {
		t.Lines[i].Heavier(1.01)
		t.CheckLine(&t.Lines[i])
	}
	if heavier, _ := check.Greatest(t.Checks); heavier.Ratio < failed.Ratio {
		return
	}
	if known, ok := s.beams[c.beamKey()]; !ok || dead < known {
		s.beams[c.beamKey()] = dead
	}
}
