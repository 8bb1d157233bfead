package measure_test

import (
	"errors"
	"math"
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
)

// The inch is 25.4 mm exactly (international yard and pound agreement, 1959).
var goodLengths = []struct {
	text string
	want measure.Length
}{
	{`16'`, 16 * measure.Foot},
	{`12' 3 1/2"`, 12*measure.Foot + 3*measure.Inch + measure.Inch/2},
	{`12'-3 1/2"`, 12*measure.Foot + 3*measure.Inch + measure.Inch/2},
	{`12'3-1/2"`, 12*measure.Foot + 3*measure.Inch + measure.Inch/2},
	{`12 ft 3-1/2 in`, 12*measure.Foot + 3*measure.Inch + measure.Inch/2},
	{`12 FT. 3-1/2 IN.`, 12*measure.Foot + 3*measure.Inch + measure.Inch/2},
	{`12 feet 3 inches`, 12*measure.Foot + 3*measure.Inch},
	{`147.5 in`, 147*measure.Inch + measure.Inch/2},
	{`4.19 ft`, 1_277_112_000},
	{`.5"`, measure.Inch / 2},
	{`3 1/2"`, 3*measure.Inch + measure.Inch/2},
	{`23/32"`, 23 * measure.Inch / 32},
	{`1/3"`, 8_466_667},
	{`3740 mm`, 3740 * measure.Millimetre},
	{`3740mm`, 3740 * measure.Millimetre},
	{`3.74 m`, 3740 * measure.Millimetre},
	{`120 cm`, 1200 * measure.Millimetre},
	{`0`, 0},
	{`-0`, 0},
	{`0.0`, 0},
	{`-3 1/2"`, -(3*measure.Inch + measure.Inch/2)},
	{`−3′ 6″`, -(3*measure.Foot + 6*measure.Inch)},
	{`5’ 6½”`, 5*measure.Foot + 6*measure.Inch + measure.Inch/2},
	{`½″`, measure.Inch / 2},
	{`5' 6'' `, 5*measure.Foot + 6*measure.Inch},
	{`3⅛"`, 3*measure.Inch + measure.Inch/8},
	{`3 7⁄8 in`, 3*measure.Inch + 7*measure.Inch/8},
	{"11′\u00a010\u00a03/16″", 11*measure.Foot + 10*measure.Inch + 3*measure.Sixteenth},
	{"3740\u00a0mm", 3740 * measure.Millimetre},
}

func TestLengthsAsPeopleWriteThem(t *testing.T) {
	for _, row := range goodLengths {
		got, err := measure.ParseLength(row.text)
		require.NoError(t, err, row.text)
		assert.Equal(t, row.want, got, row.text)
	}
}

func TestTextsThatAreNotLengths(t *testing.T) {
	for _, row := range []struct{ text, wrong string }{
		{``, `"" is not a length`},
		{`15 o.c`, `"15 o.c" is not a length`},
		{`16`, `"16" has no unit`},
		{`-3 1/2`, `"-3 1/2" has no unit`},
		{`5' 6`, `"5' 6" has no unit after the feet`},
		{`5'-6 1/2`, `"5'-6 1/2" has no unit after the feet`},
		{`4.5' 3"`, `"4.5' 3\"" has a fraction of a foot and inches too`},
		{`5' 12"`, `"5' 12\"" has 12 inches or more beside the feet`},
		{`3,74 m`, `"3,74 m" has a comma in a number`},
		{`1,200 mm`, `"1,200 mm" has a comma in a number`},
		{`3 m 20 cm`, `"3 m 20 cm" is not a length`},
		{`6" 5'`, `"6\" 5'" is not a length`},
		{`5' 6 mm`, `"5' 6 mm" is not a length`},
		{`3 5/4"`, `"3 5/4\"" is not a length`},
		{`1/0"`, `"1/0\"" is not a length`},
		{`1/-2"`, `"1/-2\"" is not a length`},
		{`5.`, `"5." is not a length`},
		{`+5"`, `"+5\"" is not a length`},
		{`--5"`, `"--5\"" is not a length`},
		{`1e3 mm`, `"1e3 mm" is not a length`},
		{`0x10 mm`, `"0x10 mm" is not a length`},
		{`1_000 mm`, `"1_000 mm" is not a length`},
		{`5 6"`, `"5 6\"" is not a length`},
		{`12 lb`, `"12 lb" is not a length`},
		{`999999999999 m`, `"999999999999 m" is too long to be a length here`},
		{`9999999999999999 mm`, `"9999999999999999 mm" is too long to be a length here`},
		{`99999999999999999999 mm`, `"99999999999999999999 mm" is not a length`},
		{`5³"`, `"5³\"" is not a length`},
	} {
		_, err := measure.ParseLength(row.text)
		var fault *measure.ParseError
		require.True(t, errors.As(err, &fault), row.text)
		assert.Equal(t, row.wrong, err.Error())
		assert.NotEmpty(t, fault.Remedy)
	}
}

func TestBareNumbersInABlockWithAUnit(t *testing.T) {
	got, err := measure.ParseLengthIn("1276", measure.Millimetre)
	require.NoError(t, err)
	assert.Equal(t, 1276*measure.Millimetre, got)
	got, err = measure.ParseLengthIn("4.19", measure.Foot)
	require.NoError(t, err)
	assert.Equal(t, measure.Length(1_277_112_000), got)
	got, err = measure.ParseLengthIn(`4"`, measure.Millimetre)
	require.NoError(t, err)
	assert.Equal(t, 4*measure.Inch, got, "a unit that is written wins")
}

func TestReadingAfterPrintingExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := measure.Length(rapid.Int64Range(-math.MaxInt64, math.MaxInt64).Draw(t, "nanometres"))
		if rapid.Bool().Draw(t, "on a mark") {
			want = want.RoundDownTo(measure.SixtyFourth) / 4
		}
		got, err := measure.ParseLength(want.String())
		require.NoError(t, err)
		require.Equal(t, want, got, want.String())
	})
}

func TestReadingWhatWasPrintedGivesTheRoundedLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := measure.Length(rapid.Int64Range(-int64(measure.Metre)*1000, int64(measure.Metre)*1000).Draw(t, "nanometres"))
		mark := measure.Inch / measure.Length(rapid.SampledFrom([]int64{1, 2, 4, 8, 16, 32, 64}).Draw(t, "fraction"))
		style := measure.Style{
			System:   rapid.SampledFrom([]measure.System{measure.Imperial, measure.Metric}).Draw(t, "system"),
			Fraction: mark,
			Rounding: rapid.SampledFrom([]measure.Rounding{measure.Nearest, measure.Down, measure.Up}).Draw(t, "rounding"),
		}
		if style.System == measure.Metric {
			mark = measure.Millimetre
		}
		want := map[measure.Rounding]measure.Length{
			measure.Nearest: length.RoundTo(mark), measure.Down: length.RoundDownTo(mark), measure.Up: length.RoundUpTo(mark)}[style.Rounding]
		got, err := measure.ParseLength(length.Print(style))
		require.NoError(t, err, length.Print(style))
		require.Equal(t, want, got, length.Print(style))
	})
}

func TestDecimalsAreReadWithoutAFloat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9]{1,7}\.[0-9]{1,7}`).Draw(t, "number")
		unit := rapid.SampledFrom([]measure.Length{measure.Foot, measure.Inch, measure.Millimetre, measure.Metre}).Draw(t, "unit")
		exact, _ := new(big.Rat).SetString(text)
		exact.Mul(exact, new(big.Rat).SetInt64(int64(unit)))
		exact.Add(exact, big.NewRat(1, 2))
		want := new(big.Int).Quo(exact.Num(), exact.Denom()).Int64()
		got, err := measure.ParseLengthIn(text, unit)
		require.NoError(t, err)
		require.Equal(t, measure.Length(want), got)
	})
}

func FuzzParseLength(f *testing.F) {
	for _, row := range goodLengths {
		f.Add(row.text)
	}
	for _, text := range []string{"", "15 o.c", "5' 6", "1/0\"", "9999999999999999999 m", "3 1/1024\"", "½½\"", "-", "'", "\"", "1''"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		length, err := measure.ParseLength(text)
		if err != nil {
			var fault *measure.ParseError
			if !errors.As(err, &fault) || fault.Wrong == "" || fault.Remedy == "" {
				t.Fatalf("%q: an error without its two texts: %v", text, err)
			}
			return
		}
		again, err := measure.ParseLength(length.String())
		if err != nil || again != length {
			t.Fatalf("%q is %d, written %s, read as %d (%v)", text, length, length, again, err)
		}
		if !strings.ContainsAny(text, "0123456789¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞↉") {
			t.Fatalf("%q has no digit and was read as %s", text, length)
		}
	})
}

func BenchmarkParseLength(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := measure.ParseLength(`12' 3 1/2"`); err != nil {
			b.Fatal(err)
		}
	}
}
