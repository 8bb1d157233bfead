package strength

import (
	"fmt"

	"pierbook/calc/frame"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
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
func (t *Trial) firstLoads() []FirstLoad {
	floor := t.frame.Length.Times(t.frame.Width)
	own := measure.Stress(t.Loads.Area[loads.DeadCase])
	for _, s := range t.Loads.Strips {
		if s.Kind == loads.DeadCase {
			own += measure.Force(s.Total()).Over(floor)
		}
	}
	all := make([]FirstLoad, len(t.frame.Piers))
	for i, p := range t.frame.Piers {
		all[i] = t.firstLoad(p, own, &t.Piers[i])
	}
	return all
}

func (t *Trial) firstLoad(p frame.Pier, own measure.Stress, pier *statics.PierLoad) FirstLoad {
	live := t.job.Platform.FloorLoad
	f := FirstLoad{Pier: p.Name, Area: p.TributaryLength.Times(p.TributaryWidth)}
	beam := measure.Force(t.Loads.Beam * p.TributaryLength.Metres())
	post := measure.Force(t.Loads.Post * pier.Height.Post.Metres())
	f.Live, f.Own = live.On(f.Area), own.On(f.Area)+beam+post
	f.Load = f.Live + f.Own
	block, base := t.job.Block, t.job.Block.Base
	if block.RatedLoad > 0 {
		f.Rated = measure.Ratio(f.Load / block.RatedLoad)
	}
	side, stone := t.block.Bed(pier)
	f.OnStone = (f.Load + block.Weight.Weight()).Over(base.Times(base))
	f.OnSoil = (f.Load + block.Weight.Weight() + stone).Over(side.Times(side))
	f.Soil = measure.Ratio(f.OnSoil / t.job.Site.Soil.Bearing)
	w := t.Words
	f.Working = []string{
		fmt.Sprintf("area = %s × %s = %s", w.Length(p.TributaryLength), w.Length(p.TributaryWidth), f.Area.Print(w.Style)),
		fmt.Sprintf("floor load = %s × %s = %s", w.Pressure(live), f.Area.Print(w.Style), w.Force(float64(f.Live))),
		fmt.Sprintf("own weight = %s × %s + %s of beam + %s of post = %s", w.Pressure(own), f.Area.Print(w.Style), w.Force(float64(beam)), w.Force(float64(post)), w.Force(float64(f.Own))),
		fmt.Sprintf("load = %s + %s = %s", w.Force(float64(f.Live)), w.Force(float64(f.Own)), w.Force(float64(f.Load))),
	}
	if block.RatedLoad > 0 {
		f.Working = append(f.Working, fmt.Sprintf("load/rated = %s/%s = %s", w.Force(float64(f.Load)), w.Force(float64(block.RatedLoad)), w.Ratio(float64(f.Rated))))
	}
	f.Working = append(f.Working, fmt.Sprintf("under the bed: (load + block + stone)/(%s)² = %s; allowed %s", w.Length(side), w.Pressure(f.OnSoil), w.Pressure(t.job.Site.Soil.Bearing)))
	return f
}
