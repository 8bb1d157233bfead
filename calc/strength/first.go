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
	OnSoil  measure.Stress
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
	w := t.Words
	f.Working = []string{
		fmt.Sprintf("area = %s × %s = %s", w.Length(p.TributaryLength), w.Length(p.TributaryWidth), f.Area.Print(w.Style)),
		fmt.Sprintf("floor load = %s × %s = %s", w.Pressure(live), f.Area.Print(w.Style), w.Force(float64(f.Live))),
		fmt.Sprintf("own weight = %s × %s + %s of beam + %s of post = %s", w.Pressure(own), f.Area.Print(w.Style), w.Force(float64(beam)), w.Force(float64(post)), w.Force(float64(f.Own))),
		fmt.Sprintf("load = %s + %s = %s", w.Force(float64(f.Live)), w.Force(float64(f.Own)), w.Force(float64(f.Load))),
	}
	onSoil, working := t.support.OnSoil(pier, f.Load)
	f.OnSoil, f.Working = onSoil, append(f.Working, working...)
	return f
}
