package support

import (
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// A pressure that the job allows above what the codes presume is printed beside
// it, wherever its check is.

// above says that a given pressure passes a presumed one, by more than the two
// systems round it differently.
func above(given, presumed measure.Stress) bool { return given > presumed*1.005 }

func (b PierBlock) onStoneBy() string {
	const source = "IBC 2012 Table 1806.2, gravel; compacted bed"
	given, usual := b.Rules.StoneBearing, check.DefaultRules().StoneBearing
	if !above(given, usual) {
		return source
	}
	return fmt.Sprintf("%s as given, above the %s of %s", b.Words.Pressure(given), b.Words.Pressure(usual), source)
}

func (b PierBlock) onSoilBy() string {
	const spread = "; spread 2:1"
	soil, known := trade.FindSoil(b.Class)
	given := b.Words.Pressure(b.Soil)
	switch {
	case !known:
		return given + " as given, of soil without a class" + spread
	case !soil.HasPresumed():
		return given + " as given, where the codes presume none (" + soil.Source + ")" + spread
	case above(b.Soil, soil.Presumed):
		return fmt.Sprintf("%s as given, above the %s presumed of %s (IRC 2021 Table R401.4.1)", given, b.Words.Pressure(soil.Presumed), soil.Class) + spread
	}
	return "IRC 2021 Table R401.4.1 or as given" + spread
}
