package measure_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
)

var (
	imperial = measure.Style{System: measure.Imperial, Fraction: measure.Sixteenth}
	metric   = measure.Style{System: measure.Metric}
)

func TestPrintedQuantities(t *testing.T) {
	for _, row := range []struct {
		value            measure.Quantity
		imperial, metric string
	}{
		{11*measure.Foot + 10*measure.Inch + 3*measure.Sixteenth, "11′\u00a010\u00a03/16″", "3612\u00a0mm"},
		{measure.Length(0), "0″", "0\u00a0mm"},
		{16 * measure.Foot, "16′\u00a00″", "4877\u00a0mm"},
		{16*measure.Foot + measure.Inch/8, "16′\u00a00\u00a01/8″", "4880\u00a0mm"},
		{24 * measure.Inch, "24″", "610\u00a0mm"},
		{24*measure.Inch + measure.Sixteenth, "2′\u00a00\u00a01/16″", "611\u00a0mm"},
		{14*measure.Inch + measure.Inch/2, "14\u00a01/2″", "368\u00a0mm"},
		{measure.Inch / 2, "1/2″", "13\u00a0mm"},
		{-3*measure.Foot - 6*measure.Inch, "−3′\u00a06″", "−1067\u00a0mm"},
		{-measure.Inch / 100, "0″", "0\u00a0mm"},
		{11*measure.Foot + 11*measure.Inch + 31*measure.Inch/32, "12′\u00a00″", "3657\u00a0mm"},
		{measure.Reading(4*measure.Foot + 2*measure.Inch + measure.Inch/4), "4′\u00a02\u00a01/4″", "1276\u00a0mm"},
		{192 * measure.SquareFoot, "192\u00a0ft²", "17.8\u00a0m²"},
		{measure.CubicYard / 2, "0.50\u00a0yd³", "0.38\u00a0m³"},
		{measure.CubicFoot, "1.0\u00a0ft³", "0.028\u00a0m³"},
		{measure.Volume(2.5), "3.27\u00a0yd³", "2.50\u00a0m³"},
		{48 * measure.Pound, "48\u00a0lb", "22\u00a0kg"},
		{12000 * measure.Pound, "12,000\u00a0lb", "5443\u00a0kg"},
		{2000 * measure.PoundForce, "2000\u00a0lb", "8.90\u00a0kN"},
		{-10 * measure.PoundForce, "−10\u00a0lb", "−44\u00a0N"},
		{50 * measure.PoundPerSquareFt, "50\u00a0psf", "2.39\u00a0kPa"},
		{(850 * measure.PoundPerSquareIn).InTimber(), "850\u00a0psi", "5.86\u00a0MPa"},
		{(1_300_000 * measure.PoundPerSquareIn).InTimber(), "1,300,000\u00a0psi", "8963\u00a0MPa"},
		{measure.LineLoad(1000), "68.5\u00a0plf", "1.00\u00a0kN/m"},
		{measure.Moment(1355.8179483314004), "1000\u00a0ft·lb", "1.36\u00a0kN·m"},
		{35 * measure.PoundPerCubicFoot, "35.0\u00a0pcf", "561\u00a0kg/m³"},
		{115 * measure.MilePerHour, "115\u00a0mph", "51\u00a0m/s"},
		{measure.Ratio(0.87), "0.87", "0.87"},
		{measure.Ratio(1.0004), "1.0004", "1.0004"},
		{measure.Ratio(0.9961), "0.996", "0.996"},
		{measure.Ratio(1), "1.00", "1.00"},
		{measure.Ratio(math.Inf(1)), "without limit", "without limit"},
		{measure.Percent(0.08), "8%", "8%"},
		{measure.Percent(0.075), "7.5%", "7.5%"},
		{measure.Hours(2.5), "2.5\u00a0h", "2.5\u00a0h"},
		{measure.Money(7.2), "7.20", "7.20"},
		{measure.Money(-12345.678), "−12,345.68", "−12\u202f345.68"},
		{measure.Count(15), "15", "15"},
		{measure.Word("rock"), "rock", "rock"},
	} {
		assert.Equal(t, row.imperial, row.value.Print(imperial))
		assert.Equal(t, row.metric, row.value.Print(metric))
	}
}

func TestRoundingOfPrintedLengths(t *testing.T) {
	length := 3*measure.Inch + 3*measure.Inch/32
	for rounding, want := range map[measure.Rounding]string{measure.Nearest: "3\u00a01/8″", measure.Down: "3\u00a01/16″", measure.Up: "3\u00a01/8″"} {
		assert.Equal(t, want, length.Print(measure.Style{System: measure.Imperial, Rounding: rounding}))
	}
	assert.Equal(t, "3\u00a03/32″", length.Print(measure.Style{System: measure.Imperial, Fraction: measure.Inch / 32}))
	assert.Equal(t, "78\u00a0mm", length.Print(measure.Style{System: measure.Metric, Rounding: measure.Down}))
	assert.Equal(t, "79\u00a0mm", length.Print(measure.Style{System: measure.Metric, Rounding: measure.Up}))
}

func TestReadingsPrintAsTheRodReads(t *testing.T) {
	reading := measure.Reading(1_277_112_000) // 4.19 ft
	for rod, want := range map[measure.Rod]string{
		measure.FeetInchesRod: "4′\u00a02\u00a01/4″", measure.TenthsRod: "4.19\u00a0ft", measure.MillimetreRod: "1277\u00a0mm"} {
		assert.Equal(t, want, reading.Print(measure.Style{System: measure.Imperial, Rod: rod}))
	}
	assert.Equal(t, "−0.05\u00a0ft", measure.Reading(-measure.Foot/20).Print(measure.Style{System: measure.Imperial, Rod: measure.TenthsRod}))
	assert.Equal(t, "1′\u00a04″", measure.Reading(16*measure.Inch).Print(imperial), "a rod has feet on it")
	assert.Equal(t, "11\u00a01/2″", measure.Reading(11*measure.Inch+measure.Inch/2).Print(imperial))
}

func TestMoneyStandsBesideItsCurrency(t *testing.T) {
	assert.Equal(t, "$7.20", measure.Money(7.2).Print(measure.Style{System: measure.Imperial, Currency: "$"}))
	assert.Equal(t, "7.20\u00a0EUR", measure.Money(7.2).Print(measure.Style{System: measure.Metric, Currency: "EUR"}))
}

// Factors: NIST Special Publication 811 (2008), appendix B.8 (memory: true).
func TestQuantitiesInBothSystems(t *testing.T) {
	for _, row := range []struct {
		name string
		got  func() (float64, error)
		want float64
	}{
		{"50 psf", func() (float64, error) { v, err := measure.ParseStress("50 psf"); return float64(v), err }, 2394.0129490},
		{"2.4 kPa", func() (float64, error) { v, err := measure.ParseStress("2.4 kPa"); return float64(v), err }, 2400},
		{"2.4 kN/m²", func() (float64, error) { v, err := measure.ParseStress("2.4 kN/m²"); return float64(v), err }, 2400},
		{"850 psi", func() (float64, error) { v, err := measure.ParseStress("850 psi"); return float64(v), err }, 5860543.6992},
		{"24 N/mm2", func() (float64, error) { v, err := measure.ParseStress("24 N/mm2"); return float64(v), err }, 24e6},
		{"11 GPa", func() (float64, error) { v, err := measure.ParseStress("11 GPa"); return float64(v), err }, 11e9},
		{"2000 lb force", func() (float64, error) { v, err := measure.ParseForce("2000 lb"); return float64(v), err }, 8896.443230521},
		{"9 kN", func() (float64, error) { v, err := measure.ParseForce("9 kN"); return float64(v), err }, 9000},
		{"100 kg weight", func() (float64, error) { v, err := measure.ParseForce("100 kg"); return float64(v), err }, 980.665},
		{"48 lb mass", func() (float64, error) { v, err := measure.ParseMass("48 lb"); return float64(v), err }, 21.77243376},
		{"115 mph", func() (float64, error) { v, err := measure.ParseSpeed("115 mph"); return float64(v), err }, 51.4096},
		{"51 m/s", func() (float64, error) { v, err := measure.ParseSpeed("51 m/s"); return float64(v), err }, 51},
		{"180 km/h", func() (float64, error) { v, err := measure.ParseSpeed("180 km/h"); return float64(v), err }, 50},
		{"1/2 yd3", func() (float64, error) { v, err := measure.ParseVolume("1/2 yd3"); return float64(v), err }, 0.382277428992},
		{"½ cu yd", func() (float64, error) { v, err := measure.ParseVolume("½ cu yd"); return float64(v), err }, 0.382277428992},
		{"0.5 m³", func() (float64, error) { v, err := measure.ParseVolume("0.5 m³"); return float64(v), err }, 0.5},
		{"62.4 pcf", func() (float64, error) { v, err := measure.ParseDensity("62.4 pcf"); return float64(v), err }, 999.552115},
		{"2850 lb/yd3", func() (float64, error) { v, err := measure.ParseDensity("2850 lb/yd3"); return float64(v), err }, 1690.837802},
		{"8%", func() (float64, error) { v, err := measure.ParsePercent("8%"); return float64(v), err }, 0.08},
		{"2.5", func() (float64, error) { v, err := measure.ParseHours("2.5"); return float64(v), err }, 2.5},
		{"90 min", func() (float64, error) { v, err := measure.ParseHours("90 min"); return float64(v), err }, 1.5},
		{"1.30", func() (float64, error) { v, err := measure.ParseRatio("1.30"); return float64(v), err }, 1.3},
		{"7.20", func() (float64, error) { v, err := measure.ParseMoney("7.20"); return float64(v), err }, 7.2},
	} {
		got, err := row.got()
		require.NoError(t, err, row.name)
		assert.InEpsilon(t, row.want, got, 1e-8, row.name)
	}
}

func TestUnitsThatDoNotFit(t *testing.T) {
	for _, row := range []struct {
		parse func(string) error
		text  string
		wrong string
	}{
		{func(s string) error { _, err := measure.ParseStress(s); return err }, "50", `"50" has no unit`},
		{func(s string) error { _, err := measure.ParseStress(s); return err }, "50 lb", `"50 lb" is not a pressure or stress`},
		{func(s string) error { _, err := measure.ParseStress(s); return err }, "1,500 psf", `"1,500 psf" has a comma in a number`},
		{func(s string) error { _, err := measure.ParseForce(s); return err }, "heavy", `"heavy" is not a force`},
		{func(s string) error { _, err := measure.ParsePercent(s); return err }, "8", `"8" has no unit`},
		{func(s string) error { _, err := measure.ParseRatio(s); return err }, "1.3 m", `"1.3 m" is not a plain number`},
		{func(s string) error { _, err := measure.ParseRatio(s); return err }, ".nan", `".nan" is not a plain number`},
		{func(s string) error { _, err := measure.ParseRatio(s); return err }, "0x10", `"0x10" is not a plain number`},
		{func(s string) error { _, _, err := measure.ParseAccuracy(s); return err }, "good", `"good" is not an accuracy`},
		{func(s string) error { _, _, err := measure.ParseAccuracy(s); return err }, `1/8" in 0`, `"1/8\" in 0" is not an accuracy`},
	} {
		require.EqualError(t, row.parse(row.text), row.wrong)
	}
}

func TestAccuracyOfAnInstrument(t *testing.T) {
	for _, text := range []string{`1/8" in 100'`, `1/8 in in 100 ft`} {
		off, over, err := measure.ParseAccuracy(text)
		require.NoError(t, err, text)
		assert.Equal(t, measure.Inch/8, off)
		assert.Equal(t, 100*measure.Foot, over)
	}
}

func TestNoPrintedQuantityBreaksOrShowsANegativeZero(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1e9, 1e9).Draw(t, "value")
		for _, q := range []measure.Quantity{measure.Area(v), measure.Volume(v), measure.Mass(v), measure.Force(v), measure.Stress(v),
			measure.TimberStress(v), measure.LineLoad(v), measure.Moment(v), measure.Density(v), measure.Speed(v), measure.Ratio(v),
			measure.Percent(v), measure.Hours(v), measure.Money(v), measure.Length(v), measure.Reading(v)} {
			for _, style := range []measure.Style{imperial, metric} {
				text := q.Print(style)
				require.NotContains(t, text, " ")
				require.NotRegexp(t, `^−[0.,]*($|[^0-9.,/])`, text, "%T %v", q, v)
			}
		}
	})
}

func ExampleLength_Print() {
	joist, _ := measure.ParseLength(`142.2 in`)
	plainBlanks := strings.NewReplacer("\u00a0", " ")
	fmt.Println(plainBlanks.Replace(joist.Print(measure.Style{System: measure.Imperial, Fraction: measure.Sixteenth})))
	fmt.Println(plainBlanks.Replace(joist.Print(measure.Style{System: measure.Metric})))
	// Output:
	// 11′ 10 3/16″
	// 3612 mm
}
