package measure

import "math"

// Exact is a length that is a size, not a measure to work to: the thickness of
// a panel, a gap, a kerf. It prints as it is and not to the style's mark, since
// a panel of 23/32 in must not be ordered as one of 3/4 in.
type Exact Length

// Base returns e in millimetres.
func (e Exact) Base() (float64, string) { return Length(e).Base() }

// Print returns e to the sixty-fourth of an inch in imperial text when it is a
// whole number of them, and with as many decimals of a millimetre as it has,
// three at most, in metric text. Other lengths print as [Length.Print] does.
func (e Exact) Print(style Style) string {
	l := Length(e)
	switch {
	case style.System == Metric && l%Millimetre != 0 && l%Micrometre == 0:
		return trimmed(l.Millimetres()) + noBreak + "mm"
	case style.System != Metric && l%SixtyFourth == 0:
		return printFeetAndInches(l, inchesAlone)
	}
	return l.Print(style)
}

// trimmed writes millimetres without zeros at the end.
func trimmed(millimetres float64) string {
	for digits := 1; digits < 3; digits++ {
		scale := math.Pow10(digits)
		if math.Round(millimetres*scale)/scale == millimetres {
			return decimals(millimetres, digits, Metric)
		}
	}
	return decimals(millimetres, 3, Metric)
}
