package strength

import (
	"fmt"
	"strings"

	"pierbook/calc/frame"
	"pierbook/calc/measure"
)

// Step is one stage of a load on its way down, with the running sum.
type Step struct {
	Part    string // surface, joists, walls, beam, runs on, post, block, stone, soil
	Adds    measure.Force
	Sum     measure.Force
	Working string
	Check   string // the check that governs the part, such as "bending 0.62"; empty when none
}

// descent gathers the steps of a path with their running sum.
type descent struct {
	steps []Step
	sum   measure.Force
	check func(part string) string
}

func (d *descent) step(part string, adds measure.Force, working string, values ...any) {
	d.sum += adds
	d.steps = append(d.steps, Step{part, adds, d.sum, fmt.Sprintf(working, values...), d.check(part)})
}

// path follows the load of one pier from the surface to the soil, under the
// combination that is greatest there. By halves of bays first; what joists and
// beams that run on, and patterned load, shift to this pier is a step of its own.
func (c *checker) path(pier *PierLoad) []Step {
	p, _ := c.frame.Pier(pier.Name)
	d := &descent{check: func(part string) string { return c.governs(part, p.Name, c.frame.Lines[p.Line].Name) }}
	c.pathToPost(d, p, pier)
	t, block, base := c.words, c.job.Block.Weight.Weight(), c.job.Block.Base
	post := measure.Force(c.loads.post * pier.Height.Post.Metres())
	shifted := "members run on: rims, continuity and patterned load"
	if len(c.in.Patches) > 0 {
		shifted = "members run on: rims, heavy things, continuity and patterned load"
	}
	d.step("runs on", pier.Most-post-d.sum, "%s: reaction on the post %s − sum so far %s", shifted, t.force(float64(pier.Most-post)), t.force(float64(d.sum)))
	d.step("post", post, "%s × %s", t.line(c.loads.post), t.length(pier.Height.Post))
	onStone := d.sum + block
	d.step("block", block, "on the stone: %s/(%s)² = %s", t.force(float64(onStone)), t.length(base), t.pressure(onStone.Over(base.Times(base))))
	side, stone := c.bed(pier)
	d.step("stone", stone, "%s deep, %s square", t.length(pier.Height.Stone), t.length(side))
	d.step("soil", 0, "%s/(%s)² = %s; allowed %s", t.force(float64(d.sum)), t.length(side), t.pressure(d.sum.Over(side.Times(side))), t.pressure(c.job.Site.Soil.Bearing))
	return d.steps
}

// pathToPost follows the load from the surface to the top of the post.
func (c *checker) pathToPost(d *descent, p frame.Pier, pier *PierLoad) {
	var combo Combination
	for _, k := range combinations {
		if k.Name == pier.Combination {
			combo = k
		}
	}
	t, f := c.words, combo.factors
	area := p.TributaryLength.Times(p.TributaryWidth)
	moving := c.job.Platform.FloorLoad*measure.Stress(f[liveCase]) + c.snowOnFloor()*measure.Stress(f[snowCase])
	own := measure.Stress(c.loads.area[deadCase])
	d.step("surface", moving.On(area), "%s: %s on %s of floor", combo.Name, t.pressure(moving), area.Print(t.style))
	d.step("joists", own.On(area), "surface and joists, %s × %s", t.pressure(own), area.Print(t.style))
	if c.job.Building != nil {
		walls := pier.BuildingMost + pier.RoofLive*measure.Force(f[roofCase]) + pier.Snow*measure.Force(f[snowCase])
		working := fmt.Sprintf("through the joists and along the beam: building %s", t.force(float64(pier.BuildingMost)))
		for _, part := range []struct {
			name   string
			factor float64
			load   measure.Force
		}{{"snow", f[snowCase], pier.Snow}, {"roof live load", f[roofCase], pier.RoofLive}} {
			if part.factor != 0 && part.load != 0 {
				working += fmt.Sprintf(" + %s × %s of %s", t.factor(measure.Ratio(part.factor)), t.force(float64(part.load)), part.name)
			}
		}
		d.step("walls and roof", walls, "%s", working)
	}
	d.step("beam", measure.Force(c.loads.beam*p.TributaryLength.Metres()), "%s × %s", t.line(c.loads.beam), t.length(p.TributaryLength))
	if wind := pier.Wind * measure.Force(f[windCase]); wind > 0 {
		d.step("wind", wind, "overturning, on the leeward row: %s × %s", t.factor(measure.Ratio(f[windCase])), t.force(float64(pier.Wind)))
	}
}

// governs names the check with the greatest ratio of a part of the path.
func (c *checker) governs(part, pier, line string) string {
	prefixes := map[string]string{"surface": "surface.", "joists": "joist.", "beam": "beam." + line + ".", "post": "post." + pier + ".",
		"block": "pier." + pier + ".block", "stone": "pier." + pier + ".stone", "soil": "pier." + pier + ".soil"}
	prefix, ok := prefixes[part]
	if !ok {
		return ""
	}
	worst, name := measure.Ratio(-1), ""
	for _, k := range c.checks {
		if strings.HasPrefix(k.ID, prefix) && k.Ratio > worst {
			worst, name = k.Ratio, strings.ReplaceAll(k.ID[strings.LastIndex(k.ID, ".")+1:], "_", " ")
		}
	}
	if worst < 0 {
		return ""
	}
	return name + " " + worst.Print(c.words.style)
}

// worstPier returns the pier whose block or ground is nearest to its limit.
func (c *checker) worstPier(piers []PierLoad) *PierLoad {
	worst := &piers[0]
	for i := range piers {
		if piers[i].Most > worst.Most {
			worst = &piers[i]
		}
	}
	ratio := measure.Ratio(0)
	for i := range piers {
		for _, k := range c.checks {
			if k.Ratio > ratio && (k.ID == "pier."+piers[i].Name+".soil" || k.ID == "pier."+piers[i].Name+".block" || k.ID == "pier."+piers[i].Name+".stone") {
				worst, ratio = &piers[i], k.Ratio
			}
		}
	}
	return worst
}
