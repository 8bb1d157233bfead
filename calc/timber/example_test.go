package timber_test

import (
	"fmt"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/timber"
)

// A 4×4 post of southern pine No.2, ten feet tall: AWC Structural Wood Design
// Examples, 2015/2018, E1.4, printed pages 23 to 27: CP 0.232, F'c 336 psi.
func ExampleColumnFactor() {
	const psi = measure.PoundPerSquareIn
	cp, critical := timber.ColumnFactor(510000*psi, 1450*psi, 120/3.5)
	fmt.Printf("FcE %.0f psi, CP %.3f, F'c %.0f psi\n", float64(critical/psi), float64(cp), 1450*float64(cp))
	// Output: FcE 357 psi, CP 0.232, F'c 336 psi
}

// A southern pine No.2 joist 2×10 at 16 in under 40 + 10 psf: 14-0 in IRC 2021
// Table R502.3.1(2).
func ExampleConvention_Spans() {
	section, _ := sample.Section("2x10", 1), true
	ref, err := timber.LookUp(job.Timber{Species: "southern_pine", Grade: "No.2"}, section)
	if err != nil {
		fmt.Println(err)
		return
	}
	load := func(psf float64) measure.LineLoad {
		return measure.LineLoad(psf * float64(measure.PoundPerSquareFt) * (16 * measure.Inch).Metres())
	}
	spans := timber.FloorJoistTable.Spans(timber.SimpleSpan{Reference: ref, Section: section, Repetitive: true,
		Total: load(50), Live: load(40), Duration: timber.TenYears, LimitRatio: 360})
	least, governs := spans.Least()
	fmt.Println(least.RoundTo(measure.Inch).String(), "by", governs)
	// Output: 14' by bending
}
