package strength

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pierbook/calc/check"
	"pierbook/calc/loads"
	"pierbook/calc/trade"
)

// result gathers what was worked out.
func (t *Trial) result() *Strength {
	t.notes()
	s := &Strength{
		Loads: t.Loads.Items, Combinations: t.onPier, First: t.firstLoads(), Piers: t.Piers,
		Conventions: t.conventions(), Balance: t.balances(), Wind: t.Loads.Wind, Ties: t.anchorage.Ties(), Straps: Straps{t.strapNails, t.anchorage.ToBeam}, Knees: t.knees, Rules: t.rules,
		members: []named{{"joist", t.joist}, {"beam", t.beam}, {"post",
			t.post}}, support: t.support, symbols: t.standard.Symbols, duration: t.standard.Duration, Remarks: t.remarks, style: t.Words.Style, job: t.job,
		Joist: t.curves(t.joist, t.joists), Beam: t.curves(t.beam, t.beams),
	}
	worst := t.worstPier()
	s.WorstPier, s.Path = worst.Name, t.path(worst)
	s.Checks = t.Checks
	check.Sort(s.Checks)
	return s
}

// conventions checks the beams a second time, apart from the others.
func (t *Trial) conventions() []check.Check {
	apart := check.Findings{Words: t.Words}
	for i := range t.frame.Lines {
		apart.Add(t.beam.ByTable(t.frame, i, t.job.Platform.FloorLoad, t.Loads.SnowOnFloor()))
	}
	return apart.Checks
}

// remark notes something that the checks do not settle.
func (t *Trial) remark(standing check.Standing, words string) {
	t.remarks = append(t.remarks, check.Remark{Standing: standing, Words: words})
}

// notes says what the checks do not settle: what is wrong and no check of its own,
// what others must do, and what was left out or taken on trust.
func (t *Trial) notes() {
	for _, b := range t.lost() {
		t.remark(check.Fails, b)
	}
	t.byOthers()
	for _, a := range t.frame.Advice {
		if a.Standing != "" {
			t.remark(check.Standing(a.Standing), a.Saying)
		}
	}
	for _, words := range t.support.Unchecked() {
		t.remark(check.NotCounted, words)
	}
	if len(t.in.Heights) == 0 {
		t.remark(check.NotCounted, "Posts pushed over, bracing, and the height of block and post: the ground is not known yet; posts are checked at the longest allowed.")
	}
	if t.Loads.Wind != nil {
		t.remark(check.NotCounted, "Wind on joists and beams: it is taken at the piers and at the joints of joists and beams, shared evenly.")
	}
	if len(t.frame.Openings) > 0 {
		t.remark(check.NotCounted, "Openings in the floor: members are checked as if it were whole. Headers, trimmers, covers, and whatever stands in an opening are not.")
	}
	if len(t.in.Patches) > 0 {
		t.remark(check.NotCounted, "Loads at a place: the surface between the joists is not checked for being pushed through. Lay a plate or a second layer under each.")
	}
	switch pushed := slices.ContainsFunc(t.Checks, func(c check.Check) bool { return check.KindOf(c.ID) == "pier.racking" }); {
	case pushed:
		t.remark(check.NotCounted, "Posts pushed over: the floor turning about its stiffest piers, and posts out of plumb. Braced or strapped, they are checked for a push through the middle.")
	case len(t.in.Heights) > 0:
		t.remark(check.NotCounted, "Posts pushed over: no wind was given, and no guard is wanted.")
	}
	t.remark(check.NotCounted, "Earthquake, flood, the building on the platform, and the steel of caps, hangers and anchors.")
	t.buildingCounted()
}

// byOthers gathers what others must do: the work without which checks do not hold,
// once with all its places, and the ground and the hangers.
func (t *Trial) byOthers() {
	places := map[string][]string{}
	var needs []string
	for _, c := range t.Checks {
		if c.Holds() || c.Needs == "" {
			continue
		}
		if places[c.Needs] == nil {
			needs = append(needs, c.Needs)
		}
		place := c.What
		if _, at, _, many := c.Repeated(); many {
			place = at
		}
		if !slices.Contains(places[c.Needs], place) {
			places[c.Needs] = append(places[c.Needs], place)
		}
	}
	for _, need := range needs {
		t.remark(check.ByOthers, strings.ToUpper(need[:1])+need[1:]+": "+t.placed(places[need])+".")
	}
	if t.hung() {
		t.remark(check.ByOthers, "Hangers: by their maker's table, for the reaction in the check of the joists' bearing.")
	}
	if cuts := t.job.Ground.CutNames(); len(cuts) > 0 {
		t.remark(check.ByOthers, fmt.Sprintf("The ground that is cut (%s): whether grading needs a permit, faces steeper than 1 up in 2 out, walls, drains behind them, and any filling with soil (IBC 2018 Appendix J, J103, J106, J107, from memory). Only tamped stone in the holes is counted as filling here.", strings.Join(cuts, ", ")))
	}
	t.takenAsGiven()
}

// allButAsGiven lets a value of a table pass that was written in the other system.
const allButAsGiven = 1.005

// takenAsGiven names the values that the job sets on the unsafe side of those that
// are usual: bearing, pressure on the stone, floor load.
func (t *Trial) takenAsGiven() {
	site := t.job.Site
	given := t.Words.Pressure(site.Soil.Bearing)
	soil, known := trade.FindSoil(site.Soil.Class)
	switch {
	case !known:
		t.remark(check.NotCounted, fmt.Sprintf("The class of the soil: the %s given are taken as given. Who tested it?", given))
	case soil.HasPresumed() && site.Soil.Bearing > soil.Presumed*allButAsGiven:
		t.remark(check.NotCounted, fmt.Sprintf("Bearing of the soil: %s as given, more than the %s presumed of its class. It was taken as given; who tested it?", given, t.Words.Pressure(soil.Presumed)))
	}
	if stone, usual := t.rules.StoneBearing, check.DefaultRules().StoneBearing; stone > usual {
		t.remark(check.NotCounted, fmt.Sprintf("Pressure on the stone: %s as given, more than the usual %s. It was taken as given.", t.Words.Pressure(stone), t.Words.Pressure(usual)))
	}
	if words := belowTheUse(t.job); words != "" {
		t.remark(check.NotCounted, words)
	}
}

// lost compares what the job says stands on the platform with what the piers
// carry, added up here from the job's own figures and not from the loads that were
// shared out: roof, snow and building by their plan, floor load by its area.
func (t *Trial) lost() []string {
	carried := func(kind loads.Case) float64 {
		sum := 0.0
		for i := range t.Lines {
			for _, r := range t.Lines[i].Reactions[kind].Whole {
				sum += r
			}
		}
		return sum
	}
	j := t.job
	floor := float64(j.Platform.Length.Times(j.Platform.Width))
	stated := map[loads.Case]float64{loads.LiveCase: float64(j.Platform.FloorLoad) * floor}
	for _, p := range j.Platform.Loads {
		stated[loads.LiveCase] += float64(p.Load)
	}
	if b := j.Building; b != nil {
		plan := floor
		if eaves := b.Roof.Overhang; eaves > 0 {
			plan = float64((j.Platform.Length + 2*eaves).Times(j.Platform.Width + 2*eaves))
		}
		stated[loads.BuildingCase] = float64(b.WeightMost)
		stated[loads.SnowCase] = float64(j.Site.GroundSnow) * map[string]float64{"I": 1, "II": 1, "III": 1.1, "IV": 1.2}[t.rules.RiskCategory] * plan
	}
	var told []string
	for kind := range loads.CaseCount {
		want, there := stated[kind]
		if have := carried(kind); there && math.Abs(have-want) > 0.01*want+10 {
			told = append(told, fmt.Sprintf("The %s is %s by the job and %s at the piers: some of it was lost or counted twice on the way.", loads.CaseNames[kind], t.Words.Force(want), t.Words.Force(have)))
		}
	}
	return told
}

// placed tells at which piers something is wanted, in their order; places that are
// no piers are told where there is no pier.
func (t *Trial) placed(places []string) string {
	var piers []string
	for _, p := range t.frame.Piers {
		if slices.Contains(places, p.Name) {
			piers = append(piers, p.Name)
		}
	}
	switch len(piers) {
	case 0:
		return strings.Join(places, ", ")
	case len(t.frame.Piers):
		return "every pier"
	}
	return strings.Join(piers, ", ")
}
