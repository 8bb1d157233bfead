package strength

import (
	"fmt"
	"strings"

	"pierbook/calc/check"
	"pierbook/calc/frame"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// descent gathers the steps of a path with their running sum.
type descent struct {
	steps []check.Stage
	sum   measure.Force
	check func(part string) string
}

func (d *descent) step(part string, adds measure.Force, working string, values ...any) {
	d.sum += adds
	d.steps = append(d.steps, check.Stage{Part: part, Adds: adds, Sum: d.sum, Working: fmt.Sprintf(working, values...), Check: d.check(part)})
}

// path follows the load of one pier from the surface to the soil, under the
// combination that is greatest there. By halves of bays first; what joists and
// beams that run on, and patterned load, shift to this pier is a step of its own.
func (t *Trial) path(pier *statics.PierLoad) []check.Stage {
	p, _ := t.frame.Pier(pier.Name)
	d := &descent{check: func(part string) string { return t.governs(part, p.Name, t.frame.Lines[p.Line].Name) }}
	t.pathToPost(d, p, pier)
	w := t.Words
	post := measure.Force(t.Loads.Post * pier.Height.Post.Metres())
	shifted := "members run on: rims, continuity and patterned load"
	if len(t.in.Patches) > 0 {
		shifted = "members run on: rims, heavy things, continuity and patterned load"
	}
	d.step("runs on", pier.Most-post-d.sum, "%s: reaction on the post %s − sum so far %s", shifted, w.Force(float64(pier.Most-post)), w.Force(float64(d.sum)))
	d.step("post", post, "%s × %s", w.Line(t.Loads.Post), w.Length(pier.Height.Post))
	for _, step := range t.support.Path(pier, d.sum) {
		step.Check = d.check(step.Part)
		d.steps = append(d.steps, step)
	}
	return d.steps
}

// pathToPost follows the load from the surface to the top of the post.
func (t *Trial) pathToPost(d *descent, p frame.Pier, pier *statics.PierLoad) {
	var combo loads.Combination
	for _, k := range loads.Combinations {
		if k.Name == pier.Combination {
			combo = k
		}
	}
	w, f := t.Words, combo.Factors
	area := p.TributaryLength.Times(p.TributaryWidth)
	moving := t.job.Platform.FloorLoad*measure.Stress(f[loads.LiveCase]) + t.Loads.SnowOnFloor()*measure.Stress(f[loads.SnowCase])
	own := measure.Stress(t.Loads.Area[loads.DeadCase])
	d.step("surface", moving.On(area), "%s: %s on %s of floor", combo.Name, w.Pressure(moving), area.Print(w.Style))
	d.step("joists", own.On(area), "surface and joists, %s × %s", w.Pressure(own), area.Print(w.Style))
	if t.job.Building != nil {
		walls := pier.BuildingMost + pier.RoofLive*measure.Force(f[loads.RoofCase]) + pier.Snow*measure.Force(f[loads.SnowCase])
		working := fmt.Sprintf("through the joists and along the beam: building %s", w.Force(float64(pier.BuildingMost)))
		for _, part := range []struct {
			name   string
			factor float64
			load   measure.Force
		}{{"snow", f[loads.SnowCase], pier.Snow}, {"roof live load", f[loads.RoofCase], pier.RoofLive}} {
			if part.factor != 0 && part.load != 0 {
				working += fmt.Sprintf(" + %s × %s of %s", w.Factor(measure.Ratio(part.factor)), w.Force(float64(part.load)), part.name)
			}
		}
		d.step("walls and roof", walls, "%s", working)
	}
	d.step("beam", measure.Force(t.Loads.Beam*p.TributaryLength.Metres()), "%s × %s", w.Line(t.Loads.Beam), w.Length(p.TributaryLength))
	if wind := pier.Wind * measure.Force(f[loads.WindCase]); wind > 0 {
		d.step("wind", wind, "overturning, on the leeward row: %s × %s", w.Factor(measure.Ratio(f[loads.WindCase])), w.Force(float64(pier.Wind)))
	}
}

// governs names the check with the greatest ratio of a part of the path.
func (t *Trial) governs(part, pier, line string) string {
	prefix, ok := map[string]string{"surface": "surface.", "joists": "joist.", "beam": "beam." + line + ".", "post": "post." + pier + "."}[part]
	if !ok {
		prefix = "pier." + pier + "." + part
	}
	worst, name := measure.Ratio(-1), ""
	for _, k := range t.Checks {
		if strings.HasPrefix(k.ID, prefix) && k.Ratio > worst {
			worst, name = k.Ratio, strings.ReplaceAll(k.ID[strings.LastIndex(k.ID, ".")+1:], "_", " ")
		}
	}
	if worst < 0 {
		return ""
	}
	return name + " " + worst.Print(t.Words.Style)
}

// worstPier returns the pier whose support or ground is nearest to its limit.
func (t *Trial) worstPier() *statics.PierLoad {
	piers := t.Piers
	worst := &piers[0]
	for i := range piers {
		if piers[i].Most > worst.Most {
			worst = &piers[i]
		}
	}
	ratio := measure.Ratio(0)
	for i := range piers {
		for _, step := range t.support.Path(&piers[i], piers[i].Most) {
			if k, made := check.Find(t.Checks, "pier."+piers[i].Name+"."+step.Part); made && k.Ratio > ratio {
				worst, ratio = &piers[i], k.Ratio
			}
		}
	}
	return worst
}
