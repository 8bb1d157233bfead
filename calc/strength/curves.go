package strength

import (
	"fmt"
	"strings"

	"pierbook/calc/measure"
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

// curves draws the envelope of a member.
func (c *checker) curves(s *subject) *Curves {
	g := s.gauge
	k := &Curves{What: s.what, Capacity: measure.Moment(float64(s.member.Values.Bending) * s.modulus())}
	for i, x := range g.run.supports {
		k.Supports = append(k.Supports, measure.FromMetres(x))
		k.Names = append(k.Names, c.supportName(s, i))
		if g.run.hinges[i] && i > 0 && i < len(g.run.supports)-1 {
			k.Hinges = append(k.Hinges, measure.FromMetres(x))
		}
	}
	stiffness := float64(s.member.Values.Elastic) * s.inertia()
	k.MomentMost, k.MomentLeast = make([]measure.Moment, len(g.stations)), make([]measure.Moment, len(g.stations))
	k.DeflectionMost, k.DeflectLeast = make([]measure.Length, len(g.stations)), make([]measure.Length, len(g.stations))
	for _, st := range g.stations {
		k.X = append(k.X, measure.FromMetres(st.x))
	}
	for n := range c.combos {
		e := s.under(c.combos, n)
		for i := range g.stations {
			k.MomentMost[i] = max(k.MomentMost[i], measure.Moment(e.most.moment[i]))
			k.MomentLeast[i] = min(k.MomentLeast[i], measure.Moment(e.least.moment[i]))
		}
	}
	for _, combo := range shortTerm {
		if !c.anyPresent(combo) {
			continue
		}
		factors := combo.factors
		factors[deadCase], factors[buildingCase] = s.creep(), s.creep()
		e := s.combined(factors)
		for i := range g.stations {
			k.DeflectionMost[i] = max(k.DeflectionMost[i], measure.FromMetres(e.most.sag[i]/stiffness))
			k.DeflectLeast[i] = min(k.DeflectLeast[i], measure.FromMetres(e.least.sag[i]/stiffness))
		}
	}
	c.oneLoading(k, s, stiffness)
	return k
}

// supportName names a support of a joist by its line, of a beam by its pier.
func (c *checker) supportName(s *subject, i int) string {
	if line, beam := strings.CutPrefix(s.id, "beam."); beam {
		return fmt.Sprintf("%s%d", line, i+1)
	}
	return c.frame.Lines[i].Name
}

// oneLoading adds the curves of the plainest loading: own weight, what stands on
// the floor, and live load on every bay.
func (c *checker) oneLoading(k *Curves, s *subject, stiffness float64) {
	k.Case = "own weight and live load on every bay"
	if c.loads.present[buildingCase] {
		k.Case = "own weight, building, and live load on every bay"
	}
	f := newField(len(s.gauge.stations), len(s.gauge.run.supports))
	for kind, e := range s.cases {
		if loadCase(kind) == snowCase || loadCase(kind) == roofCase || e.most.shear == nil {
			continue
		}
		switch loadCase(kind) {
		case liveCase: // the parts that lift on some stations belong to the whole
			f.add(e.most, 1)
			f.add(e.least, 1)
		case buildingCase:
			f.addWhole(e)
		default:
			f.add(e.most, 1)
		}
	}
	for i := range s.gauge.stations {
		k.Moment = append(k.Moment, measure.Moment(f.moment[i]))
		k.Deflection = append(k.Deflection, measure.FromMetres(f.sag[i]/stiffness))
	}
}

// governing returns the subject with the greatest bending ratio.
func (c *checker) governing(subjects []subject) *subject {
	best := &subjects[0]
	ratio := bending(c, best).check.Ratio
	for i := range subjects[1:] {
		if r := bending(c, &subjects[i+1]).check.Ratio; r > ratio {
			best, ratio = &subjects[i+1], r
		}
	}
	return best
}
