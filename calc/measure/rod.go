package measure

import "strconv"

// Rod says how the levelling rod of a job is marked.
type Rod int

// The rods. The zero Rod follows the system of the style.
const (
	RodBySystem Rod = iota
	FeetInchesRod
	TenthsRod // feet, tenths and hundredths
	MillimetreRod
)

// Reading is a length that is read off the rod, and prints as the rod reads.
type Reading Length

// Base returns r in millimetres.
func (r Reading) Base() (float64, string) { return Length(r).Base() }

// Print returns r as the style's rod reads: 4′ 2 1/4″, 4.19 ft or 1276 mm.
func (r Reading) Print(style Style) string {
	rod := style.Rod
	if rod == RodBySystem && style.System == Metric {
		rod = MillimetreRod
	}
	switch rod {
	case TenthsRod:
		return printTenths(style.round(Length(r), Foot/100))
	case MillimetreRod:
		return printMillimetres(style.round(Length(r), Millimetre))
	}
	return printFeetAndInches(style.round(Length(r), style.mark()), Foot-1)
}

func printTenths(l Length) string {
	hundredths := magnitude(int64(l)) / uint64(Foot/100)
	part := strconv.FormatUint(100+hundredths%100, 10)[1:]
	text := strconv.FormatUint(hundredths/100, 10) + "." + part + noBreak + "ft"
	if l < 0 {
		return minus + text
	}
	return text
}
