package timber

import (
	"math"
	"strconv"
	"sync"

	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

type factorKey struct{ factor, class, width string }

var factorTable = sync.OnceValue(func() map[factorKey]float64 {
	all := map[factorKey]float64{}
	for _, r := range readTable("factors.csv") {
		all[factorKey{r["factor"], r["class"], r["nominal_width"]}] = r.number("value")
	}
	return all
})

func factor(name, class, width string) float64 {
	v, ok := factorTable()[factorKey{name, class, width}]
	if !ok {
		panic("strength: no factor " + name + " for " + class + " " + width)
	}
	return v
}

// Duration is the load-duration factor CD of the shortest-lasting load in a
// combination. It never goes on E, Emin or Fc⊥. NDS Table 2.3.2.
type Duration = measure.Ratio

// The durations of NDS Table 2.3.2.
const (
	Permanent    Duration = 0.9  // dead load alone
	TenYears     Duration = 1.0  // floor live load
	TwoMonths    Duration = 1.15 // snow
	SevenDays    Duration = 1.25 // roof live load, construction
	TenMinutes   Duration = 1.6  // wind
	exemptionFb           = 1150 * float64(measure.PoundPerSquareIn)
	exemptionFc           = 750 * float64(measure.PoundPerSquareIn)
	roundingSlip          = 1 + 1e-9
)

// DurationOf returns the factor of a combination: that of the load in it that
// lasts shortest.
func DurationOf(c loads.Combination) measure.Ratio {
	switch f := c.Factors; {
	case f[loads.WindCase] != 0:
		return TenMinutes
	case f[loads.RoofCase] != 0:
		return SevenDays
	case f[loads.SnowCase] != 0:
		return TwoMonths
	case f[loads.LiveCase] != 0:
		return TenYears
	}
	return Permanent
}

// Service says how a member is used.
type Service struct {
	Wet, Incised bool
	Repetitive   bool // three or more members in contact or at most 24 in apart that share load, NDS 4.3.9
	// ExemptAfterIncising tests the wet-service exemption on Fb·CF·Ci. Some
	// published tables did; strict design tests Fb·CF.
	ExemptAfterIncising bool
}

// Factors are the adjustment factors of one member, but for load duration and
// stability, which belong to a combination and a check.
type Factors struct {
	BendingWet, ShearWet, AcrossWet, CompressionWet, ElasticWet measure.Ratio // CM
	BendingSize, CompressionSize                                measure.Ratio // CF
	Incising, ElasticIncising                                   measure.Ratio // Ci
	Repetitive                                                  measure.Ratio // Cr
	MemoryFrom                                                  string        // not empty when a factor is from memory
}

// FactorsOf returns the adjustment factors of a section.
//
// Values given in the job belong to a standard of their own: factors that would
// raise them (size, repetitive use) are left at one, those that lower them
// (wet, incised) are taken when the job says so.
//
// Source: NDS Supplement 2018 Tables 4A, 4B, 4D; NDS 2018 Table 4.3.8, 4.3.9.
func FactorsOf(ref Reference, section job.Section, service Service) Factors {
	f := Factors{1, 1, 1, 1, 1, 1, 1, 1, 1, 1, ""}
	if ref.Class == Dimension {
		f.sizeFactors(ref, section)
	}
	if ref.Class == Timbers && section.Depth > 12*measure.Inch {
		f.BendingSize = measure.Ratio(math.Pow(12/section.Depth.Inches(), 1.0/9))
	}
	if service.Repetitive && ref.Class == Dimension {
		f.Repetitive = 1.15
	}
	if service.Incised && ref.Class != Timbers {
		f.Incising = measure.Ratio(factor("Ci_Fb", "dimension", "all"))
		f.ElasticIncising = measure.Ratio(factor("Ci_E", "dimension", "all"))
	}
	if service.Wet {
		f.wetFactors(ref, service)
	}
	return f
}

func (f *Factors) sizeFactors(ref Reference, section job.Section) {
	wide := NominalWidth(section)
	thick := "2-3"
	if min(section.Width, section.Depth) >= 7*measure.Inch/2 {
		thick = "4"
	}
	if ref.SizeSpecific {
		if thick == "4" && wide >= 8 {
			f.BendingSize = 1.1
		}
		return
	}
	width := strconv.Itoa(max(4, wide))
	f.BendingSize = measure.Ratio(factor("CF_Fb", thick, width))
	f.CompressionSize = measure.Ratio(factor("CF_Fc", thick, width))
}

func (f *Factors) wetFactors(ref Reference, service Service) {
	class := string(Dimension)
	if ref.Class == Timbers {
		class = string(Timbers)
	}
	if ref.Class == Timbers && ref.Species == "southern_pine" {
		return // Table 4D: values hold wet or dry
	}
	take := func(name string) measure.Ratio { return measure.Ratio(factor("CM_"+name, class, "all")) }
	f.ShearWet, f.AcrossWet, f.ElasticWet = take("Fv"), take("Fcp"), take("E")
	f.BendingWet, f.CompressionWet = take("Fb"), take("Fc")
	if ref.Class != Dimension {
		return
	}
	tested := float64(ref.Bending) * float64(f.BendingSize)
	if service.ExemptAfterIncising {
		tested *= float64(f.Incising)
	}
	if tested <= exemptionFb*roundingSlip {
		f.BendingWet = 1
	}
	if float64(ref.Compression)*float64(f.CompressionSize) <= exemptionFc*roundingSlip {
		f.CompressionWet = 1
	}
}

// Adjusted holds a member's design values with every factor but load duration
// and stability in them.
type Adjusted struct {
	Reference
	Factors
	Bending, Shear, BearingAcross, Compression, Elastic, ElasticMin measure.Stress
}

// Adjust returns the adjusted design values.
//
//	Fb* = Fb·CM·CF·Ci·Cr   Fv' = Fv·CM·Ci   Fc⊥' = Fc⊥·CM   Fc* = Fc·CM·CF·Ci
//	E' = E·CM·Ci           Emin' = Emin·CM·Ci
func Adjust(ref Reference, section job.Section, service Service) Adjusted {
	f := FactorsOf(ref, section, service)
	times := func(s measure.Stress, factors ...measure.Ratio) measure.Stress {
		for _, x := range factors {
			s *= measure.Stress(x)
		}
		return s
	}
	return Adjusted{
		Reference: ref, Factors: f,
		Bending:       times(ref.Bending, f.BendingWet, f.BendingSize, f.Incising, f.Repetitive),
		Shear:         times(ref.Shear, f.ShearWet, f.Incising),
		BearingAcross: times(ref.BearingAcross, f.AcrossWet),
		Compression:   times(ref.Compression, f.CompressionWet, f.CompressionSize, f.Incising),
		Elastic:       times(ref.Elastic, f.ElasticWet, f.ElasticIncising),
		ElasticMin:    times(ref.ElasticMin, f.ElasticWet, f.ElasticIncising),
	}
}
