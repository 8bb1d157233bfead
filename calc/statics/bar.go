package statics

import (
	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// Bar is one continuous member under its loads: a joist, or one ply of a beam.
// Lengths are in metres.
type Bar struct {
	ID, What     string // joist, beam.B; a joist, the joist under the stove
	Gauge        *Gauge
	Cases        [loads.CaseCount]Envelope
	Width, Depth float64
	Braced       float64 // width that resists buckling sideways: all plies together
	Held         string  // what holds the compression edge
	SideLoaded   bool    // joists hang on its side

	start, end float64 // of the timber, where the run goes on past it; else both 0
	sums       []Envelope
}

// Ends returns where the member begins and ends: its run may go on past it.
func (b *Bar) Ends() (start, end float64) {
	if b.start < b.end {
		return b.start, b.end
	}
	return b.Gauge.Run.Start, b.Gauge.Run.End
}

// newBar returns a member without loads. Width is of one ply.
func newBar(id, what string, g *Gauge, width, depth, braced measure.Length, held string) Bar {
	return Bar{ID: id, What: what, Gauge: g, Width: width.Metres(), Depth: depth.Metres(), Braced: braced.Metres(), Held: held}
}

// Inertia returns I = b·d³/12.
func (b *Bar) Inertia() float64 { return b.Width * b.Depth * b.Depth * b.Depth / 12 }

// Modulus returns S = b·d²/6.
func (b *Bar) Modulus() float64 { return b.Width * b.Depth * b.Depth / 6 }

// Sum returns what the cases do together, each by a factor.
func (b *Bar) Sum(factors [loads.CaseCount]float64) Envelope {
	e := b.Gauge.Empty()
	for kind, f := range factors {
		if f != 0 && b.Cases[kind].Most.Shear != nil {
			e.Include(b.Cases[kind], f)
		}
	}
	return e
}

// Under returns what the i-th of the combinations does, worked out once.
func (b *Bar) Under(combos []loads.Combination, i int) Envelope {
	if b.sums == nil {
		b.sums = make([]Envelope, len(combos))
	}
	if b.sums[i].Most.Shear == nil {
		b.sums[i] = b.Sum(combos[i].Factors)
	}
	return b.sums[i]
}

// Longest returns the longest part that is no overhang, and the longest overhang.
func (b *Bar) Longest() (span, overhang float64) {
	for i, p := range b.Gauge.Parts {
		if b.Gauge.Overhang(i) {
			overhang = max(overhang, p.Long)
		} else {
			span = max(span, p.Long)
		}
	}
	return span, overhang
}

// Beside returns the length of the span beside an overhang.
func (b *Bar) Beside(overhang int) float64 {
	parts := b.Gauge.Parts
	return parts[max(1, min(overhang, len(parts)-2))].Long
}

// End returns the greatest that the member puts on a support: where members end
// at it, the greater of the two that meet there.
func (b *Bar) End(e Envelope, support int) float64 {
	if b.RunsOver(support) {
		return e.Most.Reactions[support]
	}
	left, right := b.Gauge.Beside(support)
	_, last := b.Gauge.EndsOf(left)
	first, _ := b.Gauge.EndsOf(right)
	return max(-e.Least.Shear[last], e.Most.Shear[first])
}

// RunsOver tells supports with one member on them from those over which two meet.
func (b *Bar) RunsOver(support int) bool {
	r := b.Gauge.Run
	return !r.Hinges[support] || support == 0 || support == len(r.Supports)-1
}

// bear adds a load that is there with its case.
func (b *Bar) bear(kind loads.Case, unit Effect, size float64) {
	if b.Cases[kind].Most.Shear == nil {
		b.Cases[kind] = b.Gauge.Empty()
	}
	b.Cases[kind].Always(unit, size)
}
