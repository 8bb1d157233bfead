package strength

import (
	"pierbook/calc/trade"

	"pierbook/calc/check"
)

// result gathers what was worked out.
func (t *Trial) result() *Strength {
	t.notes()
	s := &Strength{
		Loads: t.Loads.Items, Combinations: t.onPier, First: t.firstLoads(), Piers: t.Piers,
		Conventions: t.conventions(), Balance: t.balances(), Wind: t.Loads.Wind, Ties: t.anchorage.Ties(), Rules: t.rules,
		members: []named{{"joist", t.joist}, {"beam", t.beam}, {"post",
			t.post}}, support: t.support, symbols: t.standard.Symbols, duration: t.standard.Duration, Unchecked: t.unchecked, style: t.Words.Style, job: t.job,
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

// notes says what was left unchecked.
func (t *Trial) notes() {
	t.unchecked = append(t.unchecked, t.support.Unchecked()...)
	if len(t.in.Heights) == 0 {
		t.unchecked = append(t.unchecked, "Bracing and the height of block and post: the ground is not known yet; posts are checked at the longest allowed.")
	}
	if soil, ok := trade.FindSoil(t.job.Site.Soil.Class); !ok || !soil.HasPresumed() {
		t.unchecked = append(t.unchecked, "The kind of soil is not in the presumptive table; its bearing is taken as given.")
	}
	if t.hung() {
		t.unchecked = append(t.unchecked, "Hangers: by their maker's table, for the reaction in the check of the joists' bearing.")
	}
	if t.Loads.Wind != nil {
		t.unchecked = append(t.unchecked, "Wind on joists and beams: it is taken at the piers and at the joints of joists and beams, shared evenly.")
	}
	if len(t.frame.Openings) > 0 {
		t.unchecked = append(t.unchecked, "Openings in the floor: members are checked as if it were whole. Headers, trimmers, covers, and whatever stands in an opening are not.")
	}
	t.unchecked = append(t.unchecked, "Posts that lean: without bracing they are held upright by cap and seat, as the makers of these state.")
	t.unchecked = append(t.unchecked, "Earthquake, flood, the building on the platform, and the capacity of connectors and anchors.")
}
