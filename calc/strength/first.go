package strength

import (
	"fmt"

	"pierbook/calc/frame"
	"pierbook/calc/measure"
)

// FirstLoad is the load on one pier by tributary area: own weight and floor
// load, no building, no continuity. It is what a builder can follow with a
// pencil; [PierLoad] is the fuller result.
type FirstLoad struct {
	Pier    string
	Area    measure.Area // of floor
	Own     measure.Force
	Live    measure.Force
	Load    measure.Force // on the block
	Rated   measure.Ratio // load over the block's rated load, 0 when that is not known
	OnStone measure.Stress
	OnSoil  measure.Stress
	Soil    measure.Ratio // pressure under the bed over allowable bearing
	Working []string
}

// firstLoads works the load check by tributary areas.
//
//	load = area·(floor load + own weight by area) + beam weight·tributary length + post
func (c *checker) firstLoads(piers []PierLoad) []FirstLoad {
	floor := c.frame.Length.Times(c.frame.Width)
	own := measure.Stress(c.loads.area[deadCase])
	for _, s := range c.loads.strips {
		if s.kind == deadCase {
			own += measure.Force(s.total()).Over(floor)
		}
	}
	all := make([]FirstLoad, len(c.frame.Piers))
	for i, p := range c.frame.Piers {
		all[i] = c.firstLoad(p, own, &piers[i])
	}
	return all
}

func (c *checker) firstLoad(p frame.Pier, own measure.Stress, pier *PierLoad) FirstLoad {
	live := c.job.Platform.FloorLoad
	f := FirstLoad{Pier: p.Name, Area: p.TributaryLength.Times(p.TributaryWidth)}
	beam := measure.Force(c.loads.beam * p.TributaryLength.Metres())
	post := measure.Force(c.loads.post * pier.Height.Post.Metres())
	f.Live, f.Own = live.On(f.Area), own.On(f.Area)+beam+post
	f.Load = f.Live + f.Own
	block, base := c.job.Block, c.job.Block.Base
	if block.RatedLoad > 0 {
		f.Rated = measure.Ratio(f.Load / block.RatedLoad)
	}
	side, stone := c.bed(pier)
	f.OnStone = (f.Load + block.Weight.Weight()).Over(base.Times(base))
	f.OnSoil = (f.Load + block.Weight.Weight() + stone).Over(side.Times(side))
	f.Soil = measure.Ratio(f.OnSoil / c.job.Site.Soil.Bearing)
	t := c.words
	f.Working = []string{
		fmt.Sprintf("area = %s × %s = %s", t.length(p.TributaryLength), t.length(p.TributaryWidth), f.Area.Print(t.style)),
		fmt.Sprintf("floor load = %s × %s = %s", t.pressure(live), f.Area.Print(t.style), t.force(float64(f.Live))),
		fmt.Sprintf("own weight = %s × %s + %s of beam + %s of post = %s", t.pressure(own), f.Area.Print(t.style), t.force(float64(beam)), t.force(float64(post)), t.force(float64(f.Own))),
		fmt.Sprintf("load = %s + %s = %s", t.force(float64(f.Live)), t.force(float64(f.Own)), t.force(float64(f.Load))),
	}
	if block.RatedLoad > 0 {
		f.Working = append(f.Working, fmt.Sprintf("load/rated = %s/%s = %s", t.force(float64(f.Load)), t.force(float64(block.RatedLoad)), t.ratio(float64(f.Rated))))
	}
	f.Working = append(f.Working, fmt.Sprintf("under the bed: (load + block + stone)/(%s)² = %s; allowed %s", t.length(side), t.pressure(f.OnSoil), t.pressure(c.job.Site.Soil.Bearing)))
	return f
}
