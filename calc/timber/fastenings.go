package timber

import (
	"fmt"
	"math"

	"pierbook/calc/check"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
	"pierbook/calc/trade"
)

const (
	toenailWithdrawal = 0.67                   // Ctn, NDS 2018 12.5.4.1; CM is not applied to toenails in withdrawal
	lightest          = 0.36                   // G of the lightest softwoods, for timber whose own is not known
	capGauge          = 6 * measure.Inch / 100 // 16 gauge
	strapWide         = 5 * measure.Inch / 4
	strapThick        = 36 * measure.Inch / 1000 // 20 gauge
)

// Withdrawal returns the reference withdrawal value of a smooth nail in side grain,
// for each length of it in the main member: W = 1380·G^2.5·D in pounds per inch.
// NDS 2018 12.2-3; cells of Table 12.2C seen in another's notes.
func Withdrawal(g measure.Ratio, nail trade.Nail, in measure.Length) measure.Force {
	return measure.Force(1380*math.Pow(float64(g), 2.5)*nail.Diameter.Inches()*in.Inches()) * measure.PoundForce
}

// ToenailReach returns how much of a toenail is in the main member: started a third
// of its length from the end and driven at 30 degrees to the member,
// pt = (L·cos 30° − L/3)/cos 30°. NDS 2018 12.1.6.3 and C12.5.4, seen in another's notes.
func ToenailReach(nail trade.Nail) measure.Length {
	cos := math.Sqrt(3) / 2
	return nail.Length.Scale((cos - 1.0/3) / cos)
}

// gravity returns the specific gravity that fastenings count on.
func (m Member) gravity() measure.Ratio {
	if m.Values.SpecificGravity > 0 {
		return m.Values.SpecificGravity
	}
	return lightest
}

// ToenailLift is what the toenails of a joist on a beam hold against lift.
func (m Member) ToenailLift() check.Fastening {
	row := trade.JointFor("joist to beam", m.Section.Width)
	return check.Fastening{What: "toenails of a joist", Count: row.Each, One: Withdrawal(m.gravity(), row.Nail, ToenailReach(row.Nail)), Symbol: "W·pt",
		Factors: []check.Factor{{Symbol: "Ctn", Value: toenailWithdrawal}}, Clause: "NDS 2018 12.2-3, 12.5.4.1", Memory: true}
}

// CapLift is what the screws of a post cap hold against lift: half of them stand in
// the beam and half in the post. The cap's steel is its maker's to state.
func (m Member) CapLift() check.Fastening {
	row := trade.JointFor("post cap", 0)
	f := m.throughSteel(row.Nail, capGauge)
	f.What, f.Count = "screws of the cap in the post", row.Each/2
	return f
}

// StrapLimb is what one end of the strap under a block holds: its nails in the post,
// or its steel. The strap is 1 1/4 in × 20 gauge, Grade 33:
//
//	gross 33 ksi·b·t/1.67, net 45 ksi·(b − hole)·t/2.00, hole 3/16 in
//
// AISI S100 (2016) D2 and D3, from memory; size and grade as the frame manual of the
// American Wood Council (AWC) has them for straps.
func (m Member) StrapLimb(nails int) check.Fastening {
	row := trade.JointFor("strap", 0)
	f := m.throughSteel(row.Nail, strapThick)
	f.What, f.Count = "nails of the strap, each end", nails
	f.Steel = StrapSteel(strapWide, strapThick)
	return f
}

// BraceEnd is what the screws in one end of a brace 2 in nominal thick hold, along it.
func (m Member) BraceEnd(screws int) check.Fastening {
	row, side := trade.JointFor("brace", 0), 3*measure.Inch/2
	reach := row.Nail.Length - side
	f := check.Fastening{What: "screws in each end of a brace", Count: screws, One: Lateral(m.gravity(), row.Nail, side, reach-row.Nail.Root()), Symbol: "Z", Clause: "NDS 2018 12.3.1, 11.3.3; statics", Memory: true}
	return m.inService(f, reach, row.Nail)
}

// StrapSteel returns what a strap of Grade 33 with one row of nails allows.
func StrapSteel(wide, thick measure.Length) measure.Force {
	const ksi = 1000 * float64(measure.PoundPerSquareIn)
	hole := measure.Inch.Scale(0.1935)
	gross := 33 * ksi * float64(wide.Times(thick)) / 1.67
	net := 45 * ksi * float64((wide - hole).Times(thick)) / 2
	return measure.Force(math.Min(gross, net))
}

// throughSteel is one nail or screw through a steel plate into the side of the member.
func (m Member) throughSteel(nail trade.Nail, plate measure.Length) check.Fastening {
	reach := nail.Length - plate
	f := check.Fastening{Count: 1, One: LateralSteel(m.gravity(), nail, plate, reach-nail.Root()), Symbol: "Z", Clause: "NDS 2018 12.3.1, 11.3.3", Memory: true}
	return m.inService(f, reach, nail)
}

// inService puts the factors of short penetration and wet service on a lateral value.
func (m Member) inService(f check.Fastening, reach measure.Length, nail trade.Nail) check.Fastening {
	if short := PenetrationFactor(reach, nail.Diameter); short < 1 {
		f.Factors = append(f.Factors, check.Factor{Symbol: "p/10D", Value: short})
	}
	if m.Service.Wet {
		f.Factors = append(f.Factors, check.Factor{Symbol: "CM", Value: wetNails})
	}
	return f
}

// Stiffness returns EI of the member the weaker way, N·m2.
func (m Member) Stiffness() float64 {
	wide, deep := m.Section.Width.Metres(), m.Section.Depth.Metres()
	return float64(m.Values.Elastic) * max(wide, deep) * math.Pow(min(wide, deep), 3) / 12
}

// LiftOff checks joists that loads elsewhere lift off a beam against their toenails:
// the least reaction of each combination. Joists that stay pressed down get no check.
func (m Member) LiftOff(b *statics.Bar, combos []loads.Combination, seats []statics.Seat) check.Finding {
	w := worstAt{ratio: -1}
	nails := m.ToenailLift()
	for n, combo := range combos {
		least := b.Under(combos, n).Least.Reactions
		for i := range seats {
			if least[i] < -1e-6 {
				w.try(combo, i, -least[i], float64(nails.Holds(DurationOf(combo))))
			}
		}
	}
	if w.ratio < 0 {
		return check.Finding{}
	}
	result := check.Check{ID: "joist.lift", What: "loads elsewhere lifting " + b.What + " off the beam", Demand: measure.Force(w.demand), Capacity: measure.Force(w.capacity), Ratio: measure.Ratio(w.ratio),
		Combination: w.combo.Name, Clause: nails.Clause, Memory: nails.Memory}
	if !result.Holds() {
		result.Needs = "metal ties, joist to beam, that the engineer or their maker's table has for the lift on the sheet Checks"
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("lift = %s at line %s (%s)", t.Force(w.demand), seats[w.station].Line, w.combo.Name),
			nails.Working(t, DurationOf(w.combo)) + "; CM is not applied to toenails in withdrawal",
			fmt.Sprintf("lift/held = %s", t.Ratio(w.ratio)),
		}
	}}
}
