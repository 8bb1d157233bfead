package strength

import (
	"pierbook/calc/check"
	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
	"pierbook/calc/support"
	"pierbook/calc/timber"
)

// A second timber standard, or a second kind of support, is a package of its own
// and a line in one of these two lists that says which jobs ask for it.

// standardOf returns the standard by which the timber of a job is checked.
func standardOf(*job.Job) Standard {
	return Standard{
		Member: func(name string, j *job.Job, s job.Section, path string, shared bool) (Member, fault.List) {
			return timber.NewMember(name, j, s, path, shared)
		},
		Duration: timber.DurationOf, Symbols: timber.Symbols,
	}
}

// supportOf returns what stands under the posts of a job.
func supportOf(j *job.Job, rules check.Rules, words check.Words) Support {
	return support.PierBlock{Block: j.Block, Stone: j.Stone, Soil: j.Site.Soil.Bearing, Class: j.Site.Soil.Class, Rules: rules, Words: words}
}

// Standard is a standard by which timber members are designed.
type Standard struct {
	// Member looks the values of a section up, in the job's timber or its own. Path is
	// the key of the section in the job. Members that share their load stand so near
	// to each other, or touch, that one helps the next.
	Member   func(name string, j *job.Job, s job.Section, path string, shared bool) (Member, fault.List)
	Duration func(loads.Combination) measure.Ratio // the load-duration factor of a combination
	Symbols  []string                              // of its factors on design values, in the order of its table
}

// Member is a kind of member with its design values and the checks that its
// standard makes of it. What a standard does not check is a finding without a key.
type Member interface {
	Bending(b *statics.Bar, combos []loads.Combination) check.Finding
	Shear(b *statics.Bar, combos []loads.Combination) check.Finding
	LiveDeflection(b *statics.Bar, present [loads.CaseCount]bool, limit int) check.Finding
	TotalDeflection(b *statics.Bar, present [loads.CaseCount]bool, limit int) check.Finding

	// Joists: where they bear, their shape and overhang, their nails in wind.
	OnBeams(b *statics.Bar, combos []loads.Combination, seats []statics.Seat, least measure.Length, hung bool) check.Finding
	JoistShape(b *statics.Bar, hung bool) []check.Finding
	Toenails(push measure.Force, crossings int) check.Finding
	LiftOff(b *statics.Bar, combos []loads.Combination, seats []statics.Seat) check.Finding

	// Beams: where they bear, their shape and overhang, and a line by the tables.
	OnPost(b *statics.Bar, combos []loads.Combination, post job.Section) check.Finding
	BeamShape(b *statics.Bar) []check.Finding
	ByTable(f *frame.Frame, line int, live, snow measure.Stress) check.Finding

	// Posts: as columns, on a seat so wide, with the load so far off centre.
	Column(p *statics.PierLoad, combos []loads.Combination) check.Finding
	OnSeat(p *statics.PierLoad, combos []loads.Combination, seat measure.Length) check.Finding
	OffCentre(p *statics.PierLoad, combos []loads.Combination, off measure.Length) check.Finding

	// What holds a post down and upright: its cap, the strap under its block, its stiffness EI in N·m2.
	CapLift() check.Fastening
	StrapLimb(nails int) check.Fastening
	BraceEnd(screws int) check.Fastening
	Stiffness() float64

	// What drawings, tables and figures tell of it.
	Resists(b *statics.Bar) (moment measure.Moment, stiffness, creep float64) // N·m, N·m2, factor on lasting load
	DesignValues(checks []check.Check) []check.DesignValue
	Figures(style measure.Style) []figure.Figure
	Rests(kind string) []string // keys of what a kind of check rests on
	Use() string                // what it is cut from and how it is used
}

// Support is what stands under a post and carries it down to the ground.
type Support interface {
	Seat() (height, width measure.Length)         // of the post's foot over the ground; width 0 when not known
	Weight() measure.Force                        // of one, where it stands on the ground and moves with the platform
	Friction() measure.Ratio                      // of it on what it stands on, allowable
	Upholds(load measure.Force) measure.Moment    // what keeps it from tipping under a load with its own weight in it
	Rocks() float64                               // its stiffness against turning on its bed, N·m
	StrapSlope(post measure.Length) measure.Ratio // share of the pull of a strap under it that acts upright
	Checks(p *statics.PierLoad) []check.Finding
	Path(p *statics.PierLoad, load measure.Force) []check.Stage                // from under the post down to the soil
	OnSoil(p *statics.PierLoad, load measure.Force) (measure.Stress, []string) // its pressure there, and the working
	Rests(pier, kind string) (keys []string, known bool)                       // keys of what a kind of check rests on
	Unchecked() []string                                                       // what it could not check, and why
}

// Missing reports a fault for a section that the standard has no values for.
func Missing(j *job.Job, s job.Section, path string) fault.List {
	_, faults := standardOf(j).Member("", j, s, path, false)
	return faults
}
