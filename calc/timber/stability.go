package timber

import (
	"math"

	"pierbook/calc/measure"
)

// ColumnFactor returns CP of a sawn column.
//
//	FcE = 0.822·Emin'/(le/d)²   x = (1 + FcE/Fc*)/(2c)   CP = x − √(x² − (FcE/Fc*)/c)   c = 0.8
//
// Slenderness is le/d about the axis that governs. NDS 2018 3.7.1.
func ColumnFactor(elasticMin, compression measure.Stress, slenderness measure.Ratio) (cp measure.Ratio, critical measure.Stress) {
	if slenderness <= 0 {
		return 1, measure.Stress(math.Inf(1))
	}
	const c = 0.8
	critical = 0.822 * elasticMin / measure.Stress(slenderness*slenderness)
	a := float64(critical / compression)
	x := (1 + a) / (2 * c)
	return measure.Ratio(x - math.Sqrt(x*x-a/c)), critical
}

// HoggingFactor returns CL of a rectangular beam that runs on over its supports, whose lower edge is
// free over a stretch beside them and along an overhang.
//
//	stretch    le = 2.06·lu when lu/d < 7, 1.63·lu + 3·d to 14.3, 1.84·lu above
//	overhang   le = 1.87·lu when lu/d < 7, else 1.44·lu + 3·d
//
// The stretch falls under any other loading, the overhang is taken as a cantilever with
// its load at the tip, the worse of its two rows. NDS 2018 3.3.3, Table 3.3.3 and its
// footnote; the rows other than the uniform are from memory.
func HoggingFactor(elasticMin, bending measure.Stress, stretch, overhang, d, b measure.Length) measure.Ratio {
	depth := d.Metres()
	le := 2.06 * stretch.Metres()
	switch slender := stretch.Metres() / depth; {
	case slender > 14.3:
		le = 1.84 * stretch.Metres()
	case slender >= 7:
		le = 1.63*stretch.Metres() + 3*depth
	}
	tip := 1.87 * overhang.Metres()
	if overhang.Metres()/depth >= 7 {
		tip = 1.44*overhang.Metres() + 3*depth
	}
	return stability(elasticMin, bending, max(le, tip), d, b)
}

// stability returns CL for an effective length.
//
//	RB = √(le·d/b²)   FbE = 1.20·Emin'/RB²   x = (1 + FbE/Fb*)/1.9   CL = x − √(x² − (FbE/Fb*)/0.95)
//
// A beam no deeper than wide has CL 1. RB above 50 is not allowed and gives 0.
// NDS 2018 3.3.3.
func stability(elasticMin, bending measure.Stress, le float64, d, b measure.Length) measure.Ratio {
	if d <= b || le <= 0 {
		return 1
	}
	rb2 := le * d.Metres() / (b.Metres() * b.Metres())
	if rb2 > 50*50 {
		return 0
	}
	a := 1.20 * float64(elasticMin) / rb2 / float64(bending)
	x := (1 + a) / 1.9
	return measure.Ratio(x - math.Sqrt(x*x-a/0.95))
}

// BearingFactor returns Cb for a bearing of length lb.
//
//	Cb = (lb + 0.375 in)/lb
//
// It is 1 at the end of a member (nearer than 3 in) and for 6 in or more.
// NDS 2018 3.10.4; the 3 in and 6 in are from memory.
func BearingFactor(lb, toEnd measure.Length) measure.Ratio {
	if lb >= 6*measure.Inch || toEnd < 3*measure.Inch || lb <= 0 {
		return 1
	}
	return measure.Ratio((lb + 3*measure.Inch/8).Inches() / lb.Inches())
}
