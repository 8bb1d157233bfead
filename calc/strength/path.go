package strength

import (
	"fmt"
	"strings"

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

// path follows the load of one pier from the surface to the soil, under the
// combination that is greatest there. By halves of bays first; what joists and
// beams that run on, and patterned load, shift to this pier is a step of its own.
func (c *checker) path(pier *PierLoad) []Step {
	p, _ := c.frame.Pier(pier.Name)
	var combo Combination
	for _, k := range combinations {
		if k.Name == pier.Combination {
			combo = k
		}
	}
	area := p.TributaryLength.Times(p.TributaryWidth)
	t, f := c.words, combo.factors
	live := c.job.Platform.FloorLoad * measure.Stress(f[liveCase])
	snow := c.snowOnFloor() * measure.Stress(f[snowCase])
	own := measure.Stress(c.loads.area[deadCase])
	var steps []Step
	sum := measure.Force(0)
	step := func(part string, adds measure.Force, working string) {
		sum += adds
		steps = append(steps, Step{part, adds, sum, working, c.governs(part, p.Name, c.frame.Lines[p.Line].Name)})
	}
	step("surface", (live + snow).On(area), fmt.Sprintf("%s: %s on %s of floor", combo.Name, t.pressure(live+snow), area.Print(t.style)))
	step("joists", own.On(area), fmt.Sprintf("surface and joists, %s × %s", t.pressure(own), area.Print(t.style)))
	beam := measure.Force(c.loads.beam * p.TributaryLength.Metres())
	step("beam", beam, fmt.Sprintf("%s × %s", t.line(c.loads.beam), t.length(p.TributaryLength)))
	walls := pier.Building + pier.RoofLive*measure.Force(f[roofCase])
	if c.job.Building != nil {
		walls += pier.Snow * measure.Force(f[snowCase])
		step("walls and roof", walls, "through the joists and along the beam")
	}
	post := measure.Force(c.loads.post * pier.Height.Post.Metres())
	wind := pier.Wind * measure.Force(f[windCase])
	if wind > 0 {
		step("wind", wind, "overturning, on the leeward row")
	}
	step("members that run on", pier.Most-post-sum, "rims, continuity and patterned load: reaction less the sum so far")
	step("post", post, fmt.Sprintf("%s × %s", t.line(c.loads.post), t.length(pier.Height.Post)))
	block := c.job.Block.Weight.Weight()
	base := c.job.Block.Base
	step("block", block, fmt.Sprintf("on the stone: %s/(%s)² = %s", t.force(float64(sum+block)), t.length(base), t.pressure((sum+block).Over(base.Times(base)))))
	side, stone := c.bed(pier)
	step("stone", stone, fmt.Sprintf("%s deep, %s square", t.length(pier.Height.Stone), t.length(side)))
	step("soil", 0, fmt.Sprintf("%s/(%s)² = %s; allowed %s", t.force(float64(sum)), t.length(side), t.pressure(sum.Over(side.Times(side))), t.pressure(c.job.Site.Soil.Bearing)))
	return steps
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
