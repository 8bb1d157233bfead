package strength

import (
	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// Strength is all that was worked out about loads and what carries them.
type Strength struct {
	Loads        []Load
	Combinations []Combination
	First        []FirstLoad // by pier: the load by tributary area
	Piers        []PierLoad  // by pier: continuous reactions, the greatest of all combinations
	Checks       []Check     // failing first
	Conventions  []Check     // the deck-table convention, apart from the others
	Balance      []Balance   // by load case: loads applied and reactions
	WorstPier    string
	Path         []Step   // surface to soil at the worst pier
	Ties         []Tie    // anchorage that would be wanted
	Wind         *Wind    // nil when no wind or no building was given
	Joist, Beam  *Curves  // of the governing joist and beam line
	Remedies     []Remedy // changes that mend a failing frame, cheapest first
	Rules        Rules
	Timber       []Member // the values that each kind of member was checked with
	Unchecked    []string // what could not be checked, and why

	style measure.Style
	job   *job.Job
}

// Member is one kind of member with its adjusted design values.
type Member struct {
	Name    string
	Section job.Section
	Service Service
	Values  Adjusted
}

// checker is one run of the checks.
type checker struct {
	in     Input
	job    *job.Job
	frame  *frame.Frame
	rules  Rules
	words  words
	quiet  bool // numbers alone: no words, no curves
	hasty  bool // a search: nothing more is looked at once a check fails
	faults fault.List
	loads  floorLoads
	combos []Combination // without wind, which acts on piers alone
	onPier []Combination // all
	store  *statics.Gauges
	floor  *statics.Crossing
	lines  []lineResult
	wind   *Wind

	joist, beam, post Member
	checks            []Check
	ties              []Tie
	joists, beams     []subject
	piers             []PierLoad
	unchecked         []string
	failed            bool
}

// Work checks a laid-out frame. It reports a fault for what cannot be worked at
// all: unknown timber, a section without values, no soil, a wall off the
// platform. A check that fails is a result, not a fault.
func Work(in Input) (*Strength, fault.List) {
	c := newChecker(in, statics.NewGauges())
	if !c.prepare() || !c.carry() {
		return nil, c.faults
	}
	c.all()
	s := c.result()
	if s.Failing() > 0 {
		s.mend(in)
	}
	return s, c.faults
}

func newChecker(in Input, store *statics.Gauges) *checker {
	in = placed(in)
	return &checker{in: in, job: in.Job, frame: in.Frame, rules: rulesOf(in.Rules, in.Job), words: words{in.Job.Style()}, store: store}
}

// wrong puts a fault at the place of a key of the job.
func (c *checker) wrong(path, wrong, remedy string) {
	c.faults.Add(fault.Fault{At: c.job.At(path), Path: path, Wrong: wrong, Remedy: remedy})
}

// prepare looks up the timber and puts the loads on the floor and its joists.
// It says whether the checks can be made.
func (c *checker) prepare() bool {
	if c.job.Site.Soil.Bearing <= 0 {
		c.wrong("site.soil", "no soil is given, so nothing is known of what the ground can carry", "name a class of soil: "+soilNames()+"; or give its allowable bearing, such as 1500 psf")
	}
	c.timber()
	c.offPlatform()
	if !c.faults.Empty() {
		return false
	}
	c.ownWeights()
	c.liveLoad()
	c.building()
	if !c.faults.Empty() {
		return false
	}
	c.wind = c.windLoads()
	c.combos, c.onPier = relevant(c.loads.present, false), relevant(c.loads.present, true)
	return c.cross()
}

// timber resolves the members' design values.
func (c *checker) timber() {
	f := c.frame
	member := func(name, path string, s job.Section, repetitive bool) Member {
		timber := c.job.Timber
		if s.Timber != nil {
			timber, path = *s.Timber, path+".timber"
		}
		ref, err := LookUp(timber, s)
		if err != nil {
			c.timberFault(path, s.Timber != nil, err)
		}
		service := Service{Wet: timber.Wet, Incised: timber.Incised, Repetitive: repetitive}
		return Member{Name: name, Section: s, Service: service, Values: Adjust(ref, s, service)}
	}
	close := c.widestBay() <= 24*measure.Inch && len(f.Joists) >= 3
	c.joist = member("joist", "frame.joists", f.Sections.Joist, close)
	c.beam = member("beam", "frame.beams", f.Sections.Beam, f.Sections.Beam.Plies >= 3)
	c.post = member("post", "frame.posts", f.Sections.Post, false)
}

// timberFault points at what would have to change: the species, the grade or
// the section.
func (c *checker) timberFault(path string, own bool, err error) {
	e := err.(lookUpError)
	at := path + ".size"
	if e.path != "" {
		at = "timber." + e.path
		if own {
			at = path + "." + e.path
		}
	}
	c.wrong(at, e.wrong, e.remedy)
}
