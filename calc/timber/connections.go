package timber

import (
	"fmt"
	"math"

	"pierbook/calc/check"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Lateral returns the reference lateral value of a nail through a side member of
// thickness ls into a main member lm deep, both of specific gravity g.
//
// NDS 2018 12.3.1; the formulas are from memory, and 141 lb for a 16d common nail
// in Douglas fir-larch was read.
func Lateral(g measure.Ratio, nail trade.Nail, ls, lm measure.Length) measure.Force {
	fe := dowelBearing(g)
	return yieldLimit(nail, fe, fe, ls, lm)
}

// LateralSteel returns the reference lateral value of a nail or wood screw through
// a steel plate thinner than 1/4 in into timber of specific gravity g: Fes is
// 61,850 psi. NDS 2018 12.3.1 and Tables 12P and 12M, cells seen in another's notes.
func LateralSteel(g measure.Ratio, nail trade.Nail, plate, lm measure.Length) measure.Force {
	return yieldLimit(nail, dowelBearing(g), 61850, plate, lm)
}

// dowelBearing returns Fe in psi for fasteners under 1/4 in: 16600·G^1.84.
func dowelBearing(g measure.Ratio) float64 {
	return math.Round(16600*math.Pow(float64(g), 1.84)/50) * 50
}

// yieldLimit returns the least of the yield limits Im, Is, II, IIIm, IIIs and IV.
// A screw yields at the root of its thread, while its bending strength goes by its
// shank. Strengths are in psi.
func yieldLimit(nail trade.Nail, fem, fes float64, ls, lm measure.Length) measure.Force {
	shank, d, side, main := nail.Diameter.Inches(), nail.Root().Inches(), ls.Inches(), lm.Inches()
	fyb, kd := 70000.0, 10*d+0.5
	switch {
	case shank <= 0.142:
		fyb = 100000
	case shank <= 0.177:
		fyb = 90000
	case shank <= 0.236:
		fyb = 80000
	}
	if d <= 0.17 {
		kd = 2.2
	}
	re, rt := fem/fes, main/side
	k1 := (math.Sqrt(re+2*re*re*(1+rt+rt*rt)+rt*rt*re*re*re) - re*(1+rt)) / (1 + re)
	k2 := -1 + math.Sqrt(2*(1+re)+2*fyb*(1+2*re)*d*d/(3*fem*main*main))
	k3 := -1 + math.Sqrt(2*(1+re)/re+2*fyb*(2+re)*d*d/(3*fem*side*side))
	z := min(d*main*fem/kd, d*side*fes/kd, k1*d*side*fes/kd, k2*d*main*fem/((1+2*re)*kd), k3*d*side*fem/((2+re)*kd),
		d*d/kd*math.Sqrt(2*fem*fyb/(3*(1+re))))
	return measure.Force(z) * measure.PoundForce
}

// PenetrationFactor lowers a lateral value for a short point side: 1 from 10·D,
// by line to 6·D, and nothing below. NDS 2018 12.1.6.5.
func PenetrationFactor(penetration, diameter measure.Length) measure.Ratio {
	p := penetration.Inches() / diameter.Inches()
	switch {
	case p < 6:
		return 0
	case p >= 10:
		return 1
	}
	return measure.Ratio(p / 10)
}

const (
	toenailLateral = 0.83 // Ctn, NDS 2018 12.5.4.2, from memory
	wetNails       = 0.7  // CM of lateral values, NDS 2018 Table 11.3.3, from memory
)

// Toenails checks that wind across the joists does not push them off the
// beams: the toenails of the fastening schedule at each crossing, the wind shared
// by all crossings.
func (m Member) Toenails(push measure.Force, crossings int) check.Finding {
	g := m.Values.SpecificGravity
	if g == 0 {
		return check.Finding{}
	}
	each := push / measure.Force(crossings)
	joint := trade.JointFor("joist to beam", m.Section.Width)
	nail := joint.Nail
	point := nail.Length.Scale(2.0 / 3) // a third of the nail in the joist, along the slope
	z := Lateral(g, nail, nail.Length/3, point)
	wet := 1.0
	if m.Service.Wet {
		wet = wetNails
	}
	factor := float64(TenMinutes) * toenailLateral * wet * float64(PenetrationFactor(point, nail.Diameter))
	capacity := measure.Force(joint.Each) * z * measure.Force(factor)
	result := check.Check{ID: "joist.toenails", What: "joist to beam, sideways in wind", Demand: each, Capacity: capacity, Ratio: measure.Ratio(each / capacity), Combination: "0.6D + 0.6W",
		Clause: "NDS 2018 12.3, 12.5.4; " + joint.Source, Memory: true}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("H/crossings = %s/%d = %s", t.Force(float64(push)), crossings, t.Force(float64(each))),
			fmt.Sprintf("Z = %s for one %s in G %s", t.Force(float64(z)), nail.Called(t.Style.System), t.Factor(g)),
			fmt.Sprintf("n·Z·CD·Ctn·CM = %d × %s × %g × %g × %.2g = %s; ratio %s", joint.Each, t.Force(float64(z)), float64(TenMinutes), toenailLateral, wet, t.Force(float64(capacity)), t.Ratio(float64(result.Ratio))),
		}
	}}
}
