package timber

import (
	"math"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Convention is a way of working a simple span that a published table was made
// with. Each is used by its name and never blended with another.
type Convention struct {
	Name                string
	TwoPly              measure.Ratio // factor on Fb of two plies in contact
	ThreePly            measure.Ratio // the same of three and more
	Shear               measure.Ratio // multiplier of the shear demand
	ShearRelief         bool          // load within a depth of the support left out of the shear, NDS 3.4.3.1
	ShearMatters        bool
	ExemptAfterIncising bool // wet-service exemption tested on Fb·CF·Ci
	Source              string
}

// The conventions. Numbers marked as inferred were found by fitting the printed
// spans, not read in a document.
var (
	// StrictNDS is plain NDS 2018 for a simple span: no increase for two plies.
	StrictNDS = Convention{Name: "strict NDS", TwoPly: 1, ThreePly: 1.15, Shear: 1, ShearRelief: true, ShearMatters: true,
		Source: "NDS 2018"}
	// FloorJoistTable made IRC R502.3.1 and R507.6: bending and deflection of a repetitive member.
	FloorJoistTable = Convention{Name: "joist tables", TwoPly: 1, ThreePly: 1.15, Shear: 1,
		Source: "IRC 2021 R502.3.1, R507.6"}
	// OlderDeckJoistTable made IRC 2018 R507.6; the order of the exemption is inferred.
	OlderDeckJoistTable = Convention{Name: "2018 deck-joist table", TwoPly: 1, ThreePly: 1.15, Shear: 1, ExemptAfterIncising: true,
		Source: "IRC 2018 R507.6"}
	// DeckBeamTable made IRC 2021 R507.5(1) to (4): 1.10 for two plies and 1.375 on shear are inferred.
	DeckBeamTable = Convention{Name: "deck-beam table", TwoPly: 1.10, ThreePly: 1.15, Shear: 1.375, ShearRelief: true, ShearMatters: true,
		Source: "IRC 2021 R507.5(1)-(4)"}
	// OlderDeckBeamTable made IRC 2018 R507.5 and DCA 6 Table 3A: 1.10, no relief and the exemption are inferred.
	OlderDeckBeamTable = Convention{Name: "2018 deck-beam table", TwoPly: 1.10, ThreePly: 1.15, Shear: 1, ShearMatters: true, ExemptAfterIncising: true,
		Source: "IRC 2018 R507.5, AWC DCA 6 (2012) Table 3A"}
	// GirderTable made IRC R602.7(2), one floor only: 1.10 is inferred.
	GirderTable = Convention{Name: "girder table", TwoPly: 1.10, ThreePly: 1.15, Shear: 1, ShearRelief: true, ShearMatters: true,
		Source: "IRC 2021 R602.7(2)"}
	// PorchGirderTable made IRC R602.7(3): strict NDS.
	PorchGirderTable = Convention{Name: "porch-girder table", TwoPly: 1, ThreePly: 1, Shear: 1, ShearRelief: true, ShearMatters: true,
		Source: "IRC 2021 R602.7(3)"}
)

// SimpleSpan is a member over one span under a uniform load.
type SimpleSpan struct {
	Reference   Reference
	Section     job.Section
	Wet         bool
	Incised     bool
	Repetitive  bool // joists at 24 in or less
	Total, Live measure.LineLoad
	Duration    Duration
	LimitRatio  int // deflection under Live to the span over this
}

// AllowableSpans are the spans that each kind of failure allows.
type AllowableSpans struct{ Bending, Deflection, Shear measure.Length }

// Least returns the least of the spans and what governs it.
func (s AllowableSpans) Least() (measure.Length, string) {
	least, governs := s.Bending, "bending"
	if s.Deflection < least {
		least, governs = s.Deflection, "deflection"
	}
	if s.Shear < least {
		least, governs = s.Shear, "shear"
	}
	return least, governs
}

// Spans returns the allowable spans of a member by the convention.
//
//	Lb = √(8·F'b·S/w)   Ld = (384·E'·I/(5·wl·n))^⅓   Ls = 2·V/(k·w) + 2·d,  V = F'v·A/1.5
//
// n is the deflection limit L/n, k the convention's shear multiplier; without
// relief the 2·d falls away. NDS 2018 3.3, 3.4, 3.5.
func (c Convention) Spans(m SimpleSpan) AllowableSpans {
	v := Adjust(m.Reference, m.Section, Service{Wet: m.Wet, Incised: m.Incised, Repetitive: m.Repetitive, ExemptAfterIncising: c.ExemptAfterIncising})
	b, d := m.Section.Across().Metres(), m.Section.Depth.Metres()
	bending := float64(v.Bending) * float64(c.plies(m.Section.Plies)) * float64(m.Duration)
	w, live := float64(m.Total), float64(m.Live)
	spans := AllowableSpans{
		Bending:    measure.FromMetres(math.Sqrt(8 * bending * b * d * d / 6 / w)),
		Deflection: measure.FromMetres(math.Cbrt(384 * float64(v.Elastic) * b * d * d * d / 12 / (5 * live * float64(m.LimitRatio)))),
		Shear:      math.MaxInt64,
	}
	if c.ShearMatters {
		shear := 2 * float64(v.Shear) * float64(m.Duration) * b * d / 1.5 / (w * float64(c.Shear))
		if c.ShearRelief {
			shear += 2 * d
		}
		spans.Shear = measure.FromMetres(shear)
	}
	return spans
}

func (c Convention) plies(n int) measure.Ratio {
	switch {
	case n >= 3:
		return c.ThreePly
	case n == 2:
		return c.TwoPly
	}
	return 1
}

// OverhangingJoistLoad returns what a beam gets from joists that span J from
// one side and run C past it, under a load on the area.
//
//	w = p·(J + C)²/(2·J)
//
// Statics. With C = J/4 it is 0.78125·p·J, the load of the deck-beam tables.
func OverhangingJoistLoad(load measure.Stress, span, overhang measure.Length) measure.LineLoad {
	j, c := span.Metres(), overhang.Metres()
	return measure.LineLoad(float64(load) * (j + c) * (j + c) / (2 * j))
}
