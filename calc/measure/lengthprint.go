package measure

import (
	"fmt"
	"strconv"
	"strings"
)

// noBreak keeps the parts of a quantity on one line.
const noBreak = "\u00a0"

const minus = "−"

// inchesAlone is the greatest imperial length that prints in inches alone, as
// it is spoken: a spacing of 16 in or 24 in, a post of 14 1/2 in.
// Common practice, no source.
const inchesAlone = 24 * Inch

// String returns l exactly, as a job file would have it: in feet and inches
// when it is a whole number of sixty-fourths, else in millimetres.
// ParseLength(l.String()) is l.
func (l Length) String() string {
	size, sign := magnitude(int64(l)), ""
	if l < 0 {
		sign = "-"
	}
	if size == 0 {
		return "0"
	}
	if size%uint64(SixtyFourth) == 0 {
		return sign + feetAndInches(size, `'`, `"`, " ", uint64(Foot))
	}
	whole, rest := size/uint64(Millimetre), size%uint64(Millimetre)
	text := strconv.FormatUint(whole, 10)
	if rest > 0 {
		text += "." + strings.TrimRight(fmt.Sprintf("%06d", rest), "0")
	}
	return sign + text + " mm"
}

// Print returns l to the mark and the way of rounding that style asks for:
// 11′ 10 3/16″ or 3740 mm, with no-break spaces. Imperial lengths up to 24 in
// print in inches alone. A style without a fraction prints to the sixteenth.
func (l Length) Print(style Style) string {
	if style.System == Metric {
		return printMillimetres(style.round(l, Millimetre))
	}
	return printFeetAndInches(style.round(l, style.mark()), inchesAlone)
}

// mark returns the finest mark of imperial lengths.
func (s Style) mark() Length {
	if s.Fraction <= 0 {
		return Sixteenth
	}
	return s.Fraction
}

func (s Style) round(l, step Length) Length {
	switch s.Rounding {
	case Down:
		return l.RoundDownTo(step)
	case Up:
		return l.RoundUpTo(step)
	}
	return l.RoundTo(step)
}

func printMillimetres(l Length) string {
	text := strconv.FormatUint(magnitude(int64(l))/uint64(Millimetre), 10) + noBreak + "mm"
	if l < 0 {
		return minus + text
	}
	return text
}

func printFeetAndInches(l, alone Length) string {
	size := magnitude(int64(l))
	feetFrom := uint64(Foot)
	if size <= uint64(alone) {
		feetFrom = uint64(alone) + 1
	}
	text := feetAndInches(size, "′", "″", noBreak, feetFrom)
	if strings.HasSuffix(text, "′") {
		text += noBreak + "0″"
	}
	if l < 0 {
		return minus + text
	}
	return text
}

// feetAndInches writes size, in nanometres, with feet from feetFrom on and the
// fraction in lowest terms. No inches are written after whole feet.
func feetAndInches(size uint64, foot, inch, gap string, feetFrom uint64) string {
	feet := uint64(0)
	if size >= feetFrom {
		feet = size / uint64(Foot)
	}
	rest := size - feet*uint64(Foot)
	inches, part := rest/uint64(Inch), rest%uint64(Inch)
	var b strings.Builder
	if feet > 0 {
		b.WriteString(strconv.FormatUint(feet, 10) + foot)
		if rest == 0 {
			return b.String()
		}
		b.WriteString(gap)
	}
	if inches > 0 || part == 0 || feet > 0 {
		b.WriteString(strconv.FormatUint(inches, 10))
	}
	if part > 0 {
		if b.Len() > 0 && (inches > 0 || feet > 0) {
			b.WriteString(gap)
		}
		divisor := greatestCommonDivisor(part, uint64(Inch))
		fmt.Fprintf(&b, "%d/%d", part/divisor, uint64(Inch)/divisor)
	}
	return b.String() + inch
}

func greatestCommonDivisor(a, b uint64) uint64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// Base returns l in millimetres.
func (l Length) Base() (float64, string) { return l.Millimetres(), "mm" }
