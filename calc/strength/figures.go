package strength

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/check"
	"pierbook/calc/figure"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// Figures returns every figure of the strength part: loads, the load on each
// pier, each check, the rules and the design values.
func (s *Strength) Figures() []figure.Figure {
	figures := s.loadFigures()
	figures = append(figures, s.pierFigures()...)
	figures = append(figures, s.checkFigures(s.Checks)...)
	figures = append(figures, s.checkFigures(s.Conventions)...)
	figures = append(figures, s.ruleFigures()...)
	for _, m := range s.members {
		figures = append(figures, m.Figures(s.style)...)
	}
	figures = append(figures, s.tieFigures()...)
	figures = append(figures, s.buildingFigure())
	figures = append(figures, s.floorLoadFigures()...)
	return append(figures, s.summaryFigures()...)
}

func (s *Strength) loadFigures() []figure.Figure {
	var figures []figure.Figure
	for _, l := range s.Loads {
		f := figure.Figure{Key: "load." + l.ID, Means: l.What, Value: l.Amount, Origin: figure.Computed, Source: l.Source, Memory: l.Memory, Formula: l.Formula, Working: l.Working, From: l.From}
		if l.Path == "" && l.Formula == "" {
			f.Origin = figure.Assumed
		}
		if l.Path != "" {
			f.From = append([]string{l.Path}, f.From...)
			if f.Formula == "" {
				f.Formula, f.Working = "taken over", l.Amount.Print(s.style)
			}
			f.At = s.job.At(l.Path)
		}
		figures = append(figures, f)
	}
	for _, b := range s.Balance {
		key := "load.sum." + strings.ReplaceAll(b.Case, " ", "_")
		figures = append(figures,
			figure.Figure{Key: key + ".applied", Means: b.Case + ", put on the platform", Value: b.Applied, Origin: figure.Computed, Formula: "Σ loads", Working: b.Working},
			figure.Figure{Key: key + ".reactions", Means: b.Case + ", carried by the piers", Value: b.Reactions, Origin: figure.Computed, Formula: "Σ reactions",
				Working: b.Working, From: []string{key + ".applied"}})
	}
	return figures
}

// pierFigures gives each pier its load, which is the governing reaction, with the
// parts of it; and apart from it, named so, the load by tributary area.
func (s *Strength) pierFigures() []figure.Figure {
	var figures []figure.Figure
	for i, f := range s.First {
		p := s.Piers[i]
		key := "pier." + f.Pier
		computed := func(name, means string, value measure.Quantity, formula, working string, from ...string) {
			figures = append(figures, figure.Figure{Key: key + "." + name, Means: means + " at " + f.Pier, Value: value, Origin: figure.Computed, Formula: formula, Working: working, From: from})
		}
		computed("load_by_area", "load by tributary area: floor load and own weight", f.Load, "load = area·(floor load + own weight) + beam + post",
			strings.Join(f.Working[:4], "; "), "platform.floor_load", "load.surface", "load.joists", "load.beams")
		computed("soil_by_area", "pressure under the bed, by tributary area", f.OnSoil, "q = (load + block + stone)/side²", f.Working[len(f.Working)-1], key+".load_by_area")
		var parts []string
		for _, part := range s.pierParts(p) {
			if !part.there {
				continue
			}
			computed(part.name, part.means, part.load, part.formula, part.load.Print(s.style), part.from...)
			parts = append(parts, key+"."+part.name)
		}
		computed("reaction", "greatest load on the block, members running on", p.Most, "greatest of all combinations: "+p.Combination, p.SumWords(check.Words{Style: s.style})[0], parts...)
		computed("load", "load of the pier: its greatest reaction", p.Most, "the greatest reaction of all combinations", p.Most.Print(s.style), key+".reaction")
	}
	return figures
}

// pierPart is the part of one kind of load in what a pier carries.
type pierPart struct {
	name, means, formula string
	load                 measure.Force
	there                bool
	from                 []string
}

func (s *Strength) pierParts(p statics.PierLoad) []pierPart {
	patches, walls := []string{"platform.floor_load"}, []string{}
	for _, l := range s.Loads {
		switch {
		case strings.HasPrefix(l.ID, "patch."):
			patches = append(patches, "load."+l.ID)
		case strings.HasPrefix(l.ID, "wall."):
			walls = append(walls, "load."+l.ID)
		}
	}
	has := func(id string) bool {
		return slices.ContainsFunc(s.Loads, func(l loads.Load) bool { return l.ID == id })
	}
	var snow []string
	if has("snow") {
		snow = []string{"load.snow"}
	}
	const running = "reaction of the beam, which runs on between its joints"
	return []pierPart{
		{"dead", "own weight of what stands on the pier, with its post", running + ", and of the post", p.Dead, true, []string{"load.surface", "load.joists", "load.beams"}},
		{"building", "weight of the building, at its most", running, p.Building, true, walls},
		{"live", "floor load, on the worst bays", running + ": every bay that adds is loaded", p.Live, true, patches},
		{"snow", "snow", running, p.Snow, true, snow},
		{"roof_live", "people on the roof", running, p.RoofLive, has("roof_live"), []string{"load.roof_live"}},
		{"wind", "wind that turns the building over and presses the leeward piers down", "couple at the four corners, f·H·(arm + mean post)/(2·side), by the reactions of the same beams", p.Wind,
			s.Wind != nil, []string{"load.wind.across", "load.wind.along"}},
	}
}

func (s *Strength) checkFigures(checks []check.Check) []figure.Figure {
	var figures []figure.Figure
	for _, c := range checks {
		figures = append(figures, figure.Figure{Key: "check." + c.ID + ".ratio", Means: c.What + ": demand over capacity", Value: c.Ratio, Origin: figure.Computed,
			Source: c.Clause, Memory: c.Memory, Formula: "ratio = demand/capacity",
			Working: fmt.Sprintf("%s/%s = %s. %s", c.Demand.Print(s.style), c.Capacity.Print(s.style), c.Ratio.Print(s.style), strings.Join(c.Working, "; ")), From: s.fromOf(c)})
	}
	return figures
}

// fromOf names the figures that a check rests on.
func (s *Strength) fromOf(c check.Check) []string {
	parts := strings.Split(c.ID, ".")
	kind := parts[len(parts)-1]
	switch parts[0] {
	case "pier", "post":
		return append(s.fromPier(parts[1], kind), s.member("post").Rests(kind)...)
	case "joist":
		if kind == "toenails" {
			return []string{"load.wind.across", "load.wind.along", "joist.count", "frame.lines"}
		}
		return append(s.member("joist").Rests(kind), "joist.section", "joist.spacing", "platform.floor_load")
	case "beam", "table":
		return append(s.member("beam").Rests(kind), "beam.section", "frame.piers", "platform.floor_load")
	case "wind":
		return []string{"load.wind.across", "load.wind.along", "load.wind.uplift", "load.building.least"}
	case "surface":
		return []string{"surface.thickness", "joist.spacing", "platform.floor_load"}
	}
	return []string{"platform.floor_load"}
}

// fromPier names what a check of a pier rests on besides its timber.
func (s *Strength) fromPier(pier, kind string) []string {
	if keys, known := s.support.Rests(pier, kind); known {
		return keys
	}
	key := "pier." + pier
	switch kind {
	case "bracing":
		return []string{key + ".post", "design.braced_above"}
	case "lift":
		return []string{key + ".dead", key + ".live"}
	case "hold_down", "uplift":
		return []string{key + ".dead", key + ".building", "load.wind.across", "load.wind.along", "load.wind.uplift"}
	case "racking", "tipping":
		return []string{key + ".dead", key + ".post"}
	case "off_centre":
		return []string{key + ".reaction", key + ".post", "rule.eccentricity"}
	}
	return []string{key + ".reaction", key + ".post"}
}

// ruleFigures gives the allowances that are no keys of the job.
func (s *Strength) ruleFigures() []figure.Figure {
	r, d := s.Rules, check.DefaultRules()
	rule := func(key, means string, value measure.Quantity, usual bool, source string, memory bool) figure.Figure {
		origin := figure.Given
		if usual {
			origin = figure.Assumed
		}
		return figure.Figure{Key: "rule." + key, Means: means, Value: value, Origin: origin, Source: source, Memory: memory}
	}
	return []figure.Figure{
		rule("eccentricity", "how far a post may stand off its block's centre", r.Eccentricity, r.Eccentricity == d.Eccentricity, "common practice, no source", false),
		rule("stone_friction", "friction of block on stone", r.StoneFriction, r.StoneFriction == d.StoneFriction, "NAVFAC DM 7.02 (1986) Table 1: 0.55, over 1.5", true),
		{Key: "brace.from", Means: "posts above this are braced both ways", Value: s.Knees.From, Origin: figure.Computed, Formula: "the limit for posts that stand unbraced, or a lower one where short posts must be braced to stand upright", From: []string{"design.braced_above"}},
		rule("roof_dead", "weight of a roof by its plan, at most half of the building", loads.RoofDead, true, "24 CFR 3285.303 (2015), notes to Table 1", false),
	}
}

func (s *Strength) tieFigures() []figure.Figure {
	var figures []figure.Figure
	for _, t := range s.Ties {
		key := t.Key()
		from := []string{"pier." + t.Pier + ".reaction"}
		if s.Wind != nil {
			from = append(from, "load.wind.pressure")
		}
		held := "cap and strap, by the checks of lift and hold-down"
		if t.ToGround() {
			held = "capacity by others"
		}
		figures = append(figures,
			figure.Figure{Key: key + ".up", Means: "lift to hold at " + t.Pier + ", " + t.Joint, Value: t.Up, Origin: figure.Computed, Source: held,
				Formula: "greatest of loads elsewhere and of wind from any side, by the reactions of the beams", Working: t.Up.Print(s.style), From: from},
			figure.Figure{Key: key + ".level", Means: "level force to hold at " + t.Pier + ", " + t.Joint, Value: t.Level, Origin: figure.Computed,
				Source: held, Formula: "greatest of the pushes, shared by stiffness", Working: t.Level.Print(s.style), From: from})
	}
	return figures
}

// summaryFigures gives the worst and the number of failing checks.
func (s *Strength) summaryFigures() []figure.Figure {
	failing, needs, wanting := s.Failing(), s.ByOthers(), 0
	for _, c := range s.Checks {
		if !c.Holds() && c.Needs != "" {
			wanting++
		}
	}
	none := measure.Word("no")
	if failing == 0 {
		none = "yes"
	}
	var ratio measure.Ratio
	var id string
	if worst, ok := s.Worst(); ok {
		ratio, id = worst.Ratio, worst.ID
	}
	from := []string{"check." + id + ".ratio"}
	var worstLoad measure.Force
	for _, p := range s.Piers {
		if p.Name == s.WorstPier {
			worstLoad = p.Most
		}
	}
	reaction := []string{"pier." + s.WorstPier + ".reaction"}
	return []figure.Figure{
		{Key: "checks.worst", Means: "greatest ratio of demand to capacity", Value: ratio, Origin: figure.Computed,
			Formula: "greatest of all checks that the frame must hold by itself", Working: id + ": " + ratio.Print(s.style), From: from},
		{Key: "checks.worst_is", Means: "the check with the greatest ratio", Value: measure.Word(id), Origin: figure.Computed,
			Formula: "greatest of all checks that the frame must hold by itself", Working: id, From: from},
		{Key: "checks.failing", Means: "checks that fail", Value: measure.Count(failing), Origin: figure.Computed,
			Formula: "count of ratios above 1 that nothing by others would mend", Working: fmt.Sprintf("%d of %d", failing, len(s.Checks))},
		{Key: "checks.none_failing", Means: "no check fails", Value: none, Origin: figure.Computed, Formula: "checks.failing = 0",
			Working: fmt.Sprintf("%d fail", failing), From: []string{"checks.failing"}},
		{Key: "checks.wanted", Means: "works by others without which checks do not hold", Value: measure.Count(len(needs)), Origin: figure.Computed,
			Formula: "count of the works that checks with ratios above 1 name", Working: fmt.Sprintf("%d of %d checks want %d works", wanting, len(s.Checks), len(needs))},
		{Key: "load.worst_pier", Means: "the pier nearest to the limit of its block or ground", Value: measure.Word(s.WorstPier), Origin: figure.Computed,
			Formula: "greatest ratio of block, stone and soil", Working: s.WorstPier, From: reaction},
		{Key: "load.worst", Means: "load on that pier's block", Value: worstLoad, Origin: figure.Computed, Formula: "greatest of all combinations", Working: worstLoad.Print(s.style), From: reaction},
	}
}
