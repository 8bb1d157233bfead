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
	for i, x := range g.Run.Supports {
		k.Supports = append(k.Supports, measure.FromMetres(x))
		k.Names = append(k.Names, c.supportName(s, i))
		if g.Run.Hinges[i] && i > 0 && i < len(g.Run.Supports)-1 {
			k.Hinges = append(k.Hinges, measure.FromMetres(x))
		}
	}
	stiffness := float64(s.member.Values.Elastic) * s.inertia()
	k.MomentMost, k.MomentLeast = make([]measure.Moment, len(g.Stations)), make([]measure.Moment, len(g.Stations))
	k.DeflectionMost, k.DeflectLeast = make([]measure.Length, len(g.Stations)), make([]measure.Length, len(g.Stations))
	for _, st := range g.Stations {
		k.X = append(k.X, measure.FromMetres(st.X))
	}
	for n := range c.combos {
		e := s.under(c.combos, n)
		for i := range g.Stations {
			k.MomentMost[i] = max(k.MomentMost[i], measure.Moment(e.Most.Moment[i]))
			k.MomentLeast[i] = min(k.MomentLeast[i], measure.Moment(e.Least.Moment[i]))
		}
	}
	for _, combo := range shortTerm {
		if !c.anyPresent(combo) {
			continue
		}
		factors := combo.factors
		factors[deadCase], factors[buildingCase] = s.creep(), s.creep()
		e := s.combined(factors)
		for i := range g.Stations {
			k.DeflectionMost[i] = max(k.DeflectionMost[i], measure.FromMetres(e.Most.Sag[i]/stiffness))
			k.DeflectLeast[i] = min(k.DeflectLeast[i], measure.FromMetres(e.Least.Sag[i]/stiffness))
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
	f := s.gauge.NewField()
	for kind, e := range s.cases {
		if loadCase(kind) == snowCase || loadCase(kind) == roofCase || e.Most.Shear == nil {
			continue
		}
		switch loadCase(kind) {
		case liveCase: // the parts that lift on some stations belong to the whole
			f.Add(e.Most, 1)
			f.Add(e.Least, 1)
		case buildingCase:
			f.AddWhole(e)
		default:
			f.Add(e.Most, 1)
		}
	}
	for i := range s.gauge.Stations {
		k.Moment = append(k.Moment, measure.Moment(f.Moment[i]))
		k.Deflection = append(k.Deflection, measure.FromMetres(f.Sag[i]/stiffness))
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
