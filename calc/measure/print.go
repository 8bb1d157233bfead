package measure

import (
	"math"
	"strconv"
	"strings"
)

// decimals writes v with so many digits after the point, without a negative
// zero, with groups of three from 10 000 on: a comma in imperial text, a narrow
// no-break space in metric text.
func decimals(v float64, digits int, system System) string {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return "without limit"
	}
	text := strconv.FormatFloat(math.Abs(v), 'f', digits, 64)
	whole, part, _ := strings.Cut(text, ".")
	if len(whole) > 4 {
		whole = grouped(whole, system)
	}
	if part != "" {
		whole += "." + part
	}
	if v < 0 && strings.Trim(text, "0.") != "" {
		return minus + whole
	}
	return whole
}

func grouped(whole string, system System) string {
	mark := ","
	if system == Metric {
		mark = "\u202f"
	}
	var b strings.Builder
	for i, digit := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteString(mark)
		}
		b.WriteRune(digit)
	}
	return b.String()
}

// significant writes v to so many significant digits, all digits before the
// point kept.
func significant(v float64, digits int, system System) string {
	after := 0
	if size := math.Abs(v); size > 0 && !math.IsInf(v, 0) {
		after = min(max(0, digits-1-int(math.Floor(math.Log10(size)))), 6)
	}
	return decimals(v, after, system)
}

// in writes v over unit with the unit's name.
func in(v, unit float64, digits int, name string, system System) string {
	return significant(v/unit, digits, system) + noBreak + name
}

// Print returns a in ft² or m².
func (a Area) Print(s Style) string {
	if s.System == Metric {
		return in(float64(a), 1, 3, "m²", s.System)
	}
	return in(float64(a), float64(SquareFoot), 3, "ft²", s.System)
}

// Print returns v in m³, or in yd³, and in ft³ below a quarter of a yd³.
func (v Volume) Print(s Style) string {
	switch {
	case s.System == Metric:
		return in(float64(v), 1, 2+whole(float64(v)), "m³", s.System)
	case Volume(math.Abs(float64(v))) < CubicYard/4:
		return in(float64(v), float64(CubicFoot), 2, "ft³", s.System)
	}
	return in(float64(v), float64(CubicYard), 2+whole(float64(v/CubicYard)), "yd³", s.System)
}

// whole returns 1 for values of one and more: one more digit is of use there.
func whole(v float64) int {
	if math.Abs(v) >= 1 {
		return 1
	}
	return 0
}

// Print returns m in lb or kg.
func (m Mass) Print(s Style) string {
	if s.System == Metric {
		return in(float64(m), 1, 2, "kg", s.System)
	}
	return in(float64(m), float64(Pound), 2, "lb", s.System)
}

// Print returns f in lb, or in kN, and in N below 100 N.
func (f Force) Print(s Style) string {
	switch {
	case s.System != Metric:
		return in(float64(f), float64(PoundForce), 2, "lb", s.System)
	case Force(math.Abs(float64(f))) < Kilonewton/10:
		return in(float64(f), 1, 2, "N", s.System)
	}
	return in(float64(f), float64(Kilonewton), 3, "kN", s.System)
}

// Print returns p as a load on an area, in psf or kPa.
func (p Stress) Print(s Style) string {
	if s.System == Metric {
		return in(float64(p), float64(Kilopascal), 3, "kPa", s.System)
	}
	return in(float64(p), float64(PoundPerSquareFt), 2, "psf", s.System)
}

// Print returns t in psi or MPa.
func (t TimberStress) Print(s Style) string {
	if s.System == Metric {
		return in(float64(t), float64(Megapascal), 3, "MPa", s.System)
	}
	return in(float64(t), float64(PoundPerSquareIn), 3, "psi", s.System)
}

// Print returns w in plf or kN/m.
func (w LineLoad) Print(s Style) string {
	if s.System == Metric {
		return in(float64(w), 1000, 3, "kN/m", s.System)
	}
	return in(float64(w), float64(PoundForce)/0.3048, 3, "plf", s.System)
}

// Print returns m in ft·lb or kN·m.
func (m Moment) Print(s Style) string {
	if s.System == Metric {
		return in(float64(m), 1000, 3, "kN·m", s.System)
	}
	return in(float64(m), float64(PoundForce)*0.3048, 3, "ft·lb", s.System)
}

// Print returns d in pcf or kg/m³.
func (d Density) Print(s Style) string {
	if s.System == Metric {
		return in(float64(d), 1, 3, "kg/m³", s.System)
	}
	return in(float64(d), float64(PoundPerCubicFoot), 3, "pcf", s.System)
}

// Print returns v in mph or m/s.
func (v Speed) Print(s Style) string {
	if s.System == Metric {
		return in(float64(v), 1, 2, "m/s", s.System)
	}
	return in(float64(v), float64(MilePerHour), 2, "mph", s.System)
}

// Print returns r to two decimals, or to as many as show that it is not 1.
func (r Ratio) Print(s Style) string {
	digits := 2
	for digits < 6 && r != 1 && decimals(float64(r), digits, s.System) == decimals(1, digits, s.System) {
		digits++
	}
	return decimals(float64(r), digits, s.System)
}

// Print returns p as 8%, or 7.5% when it is not whole.
func (p Percent) Print(s Style) string {
	hundredths := float64(p) * 100
	if math.Abs(hundredths-math.Round(hundredths)) < 0.05 {
		return decimals(hundredths, 0, s.System) + "%"
	}
	return decimals(hundredths, 1, s.System) + "%"
}

// Print returns h to a tenth of an hour.
func (h Hours) Print(s Style) string { return decimals(float64(h), 1, s.System) + noBreak + "h" }

// Print returns m to two decimals: a sign stands before it, the letters of a
// currency behind.
func (m Money) Print(s Style) string {
	amount := decimals(float64(m), 2, s.System)
	switch {
	case s.Currency == "":
		return amount
	case 'A' <= s.Currency[0] && s.Currency[0] <= 'z':
		return amount + noBreak + s.Currency
	}
	return s.Currency + amount
}

// Print returns c in digits.
func (c Count) Print(s Style) string { return decimals(float64(c), 0, s.System) }

// Print returns the word.
func (w Word) Print(Style) string { return string(w) }
