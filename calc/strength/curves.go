package strength

import (
	"fmt"
	"strings"

	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// Curves are the moment and deflection of a member along its length, for a drawing.
type Curves struct {
	What                         string
	Names                        []string         // of the supports: lines, or piers
	Supports                     []measure.Length // along the member, from the frame corner
	Hinges                       []measure.Length // supports over which it is spliced
	X                            []measure.Length
	MomentMost, MomentLeast      []measure.Moment // of all combinations: sagging positive
	Capacity                     measure.Moment   // of the sagging section under normal duration
	DeflectionMost, DeflectLeast []measure.Length // lasting and live, down positive
	Case                         string           // one loading, for a single line: everything at once
	Moment                       []measure.Moment
	Deflection                   []measure.Length // without creep
}

// curves draws the envelope of the bar that governs bending.
func (t *Trial) curves(m Member, bars []statics.Bar) *Curves {
	s := t.governing(m, bars)
	g := s.Gauge
	moment, stiffness, creep := m.Resists(s)
	k := &Curves{What: s.What, Capacity: moment}
	for i, x := range g.Run.Supports {
		k.Supports = append(k.Supports, measure.FromMetres(x))
		k.Names = append(k.Names, t.supportName(s, i))
		if g.Run.Hinges[i] && i > 0 && i < len(g.Run.Supports)-1 {
			k.Hinges = append(k.Hinges, measure.FromMetres(x))
		}
	}
	k.MomentMost, k.MomentLeast = make([]measure.Moment, len(g.Stations)), make([]measure.Moment, len(g.Stations))
	k.DeflectionMost, k.DeflectLeast = make([]measure.Length, len(g.Stations)), make([]measure.Length, len(g.Stations))
	for _, st := range g.Stations {
		k.X = append(k.X, measure.FromMetres(st.X))
	}
	for n := range t.combos {
		e := s.Under(t.combos, n)
		for i := range g.Stations {
			k.MomentMost[i] = max(k.MomentMost[i], measure.Moment(e.Most.Moment[i]))
			k.MomentLeast[i] = min(k.MomentLeast[i], measure.Moment(e.Least.Moment[i]))
		}
	}
	for _, combo := range loads.ShortTerm {
		if !combo.Within(t.Loads.Present) {
			continue
		}
		factors := combo.Factors
		factors[loads.DeadCase], factors[loads.BuildingCase] = creep, creep
		e := s.Sum(factors)
		for i := range g.Stations {
			k.DeflectionMost[i] = max(k.DeflectionMost[i], measure.FromMetres(e.Most.Sag[i]/stiffness))
			k.DeflectLeast[i] = min(k.DeflectLeast[i], measure.FromMetres(e.Least.Sag[i]/stiffness))
		}
	}
	t.oneLoading(k, s, stiffness)
	return k
}

// supportName names a support of a joist by its line, of a beam by its pier.
func (t *Trial) supportName(s *statics.Bar, i int) string {
	if line, beam := strings.CutPrefix(s.ID, "beam."); beam {
		return fmt.Sprintf("%s%d", line, i+1)
	}
	return t.frame.Lines[i].Name
}

// oneLoading adds the curves of the plainest loading: own weight, what stands on
// the floor, and live load on every bay.
func (t *Trial) oneLoading(k *Curves, s *statics.Bar, stiffness float64) {
	k.Case = "own weight and live load on every bay"
	if t.Loads.Present[loads.BuildingCase] {
		k.Case = "own weight, building, and live load on every bay"
	}
	f := s.Gauge.NewEffect()
	for kind, e := range s.Cases {
		if loads.Case(kind) == loads.SnowCase || loads.Case(kind) == loads.RoofCase || e.Most.Shear == nil {
			continue
		}
		switch loads.Case(kind) {
		case loads.LiveCase: // the parts that lift on some stations belong to the whole
			f.Add(e.Most, 1)
			f.Add(e.Least, 1)
		case loads.BuildingCase:
			f.AddWhole(e)
		default:
			f.Add(e.Most, 1)
		}
	}
	for i := range s.Gauge.Stations {
		k.Moment = append(k.Moment, measure.Moment(f.Moment[i]))
		k.Deflection = append(k.Deflection, measure.FromMetres(f.Sag[i]/stiffness))
	}
}

// governing returns the bar with the greatest bending ratio.
func (t *Trial) governing(m Member, bars []statics.Bar) *statics.Bar {
	best, ratio := &bars[0], measure.Ratio(-1)
	for i := range bars {
		if r := m.Bending(&bars[i], t.combos).Check.Ratio; r > ratio {
			best, ratio = &bars[i], r
		}
	}
	return best
}
