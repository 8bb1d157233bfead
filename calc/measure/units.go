package measure

import (
	"fmt"
	"strings"
)

// kind is one sort of quantity that is read as a number and a unit.
type kind struct {
	name   string // "a load on an area"
	remedy string
	units  map[string]float64 // plain unit to SI
	bare   float64            // factor of a number without a unit; 0 when it must have one
}

var (
	volumeKind = kind{"a volume", "write a volume with its unit, such as 1/2 yd3 or 0.5 m3", map[string]float64{
		"yd3": float64(CubicYard), "cu yd": float64(CubicYard), "cy": float64(CubicYard), "yd": float64(CubicYard),
		"ft3": float64(CubicFoot), "cu ft": float64(CubicFoot), "m3": 1, "cu m": 1, "l": 1e-3, "litres": 1e-3, "liters": 1e-3}, 0}
	massKind = kind{"a weight", "write a weight with its unit, such as 48 lb or 22 kg", map[string]float64{
		"lb": float64(Pound), "lbs": float64(Pound), "kg": 1, "t": 1000, "n": 1 / StandardGravity, "kn": 1000 / StandardGravity}, 0}
	forceKind = kind{"a force", "write a force with its unit, such as 2000 lb or 9 kN", map[string]float64{
		"lb": float64(PoundForce), "lbs": float64(PoundForce), "lbf": float64(PoundForce), "kip": 1000 * float64(PoundForce), "kips": 1000 * float64(PoundForce),
		"n": 1, "kn": 1000, "kg": StandardGravity, "t": 1000 * StandardGravity}, 0}
	stressKind = kind{"a pressure or stress", "write it with its unit, such as 50 psf, 2.4 kPa, 850 psi or 24 MPa", map[string]float64{
		"psf": float64(PoundPerSquareFt), "lb/ft2": float64(PoundPerSquareFt), "ksf": 1000 * float64(PoundPerSquareFt),
		"psi": float64(PoundPerSquareIn), "lb/in2": float64(PoundPerSquareIn), "ksi": 1000 * float64(PoundPerSquareIn),
		"pa": 1, "n/m2": 1, "kpa": 1e3, "kn/m2": 1e3, "mpa": 1e6, "n/mm2": 1e6, "mn/m2": 1e6, "gpa": 1e9, "kn/mm2": 1e9, "kg/m2": StandardGravity}, 0}
	densityKind = kind{"a density", "write it with its unit, such as 35 pcf or 560 kg/m3", map[string]float64{
		"pcf": float64(PoundPerCubicFoot), "lb/ft3": float64(PoundPerCubicFoot), "lb/yd3": float64(PoundPerCubicFoot) / 27, "kg/m3": 1}, 0}
	speedKind = kind{"a speed", "write it with its unit, such as 115 mph or 51 m/s", map[string]float64{
		"mph": float64(MilePerHour), "m/s": 1, "km/h": 1 / 3.6, "kph": 1 / 3.6}, 0}
	percentKind = kind{"a percentage", "write it with its sign, such as 8%", map[string]float64{"%": 0.01, "percent": 0.01}, 0}
	hoursKind   = kind{"a time", "write hours, such as 2.5 or 2.5 h", map[string]float64{
		"h": 1, "hr": 1, "hrs": 1, "hour": 1, "hours": 1, "min": 1.0 / 60, "minutes": 1.0 / 60}, 1}
	ratioKind = kind{"a plain number", "write a number without a unit, such as 1.3", nil, 1}
	moneyKind = kind{"an amount of money", "write an amount without its currency, such as 7.20", nil, 1}
)

// unitMarks brings raised digits and other marks of a unit to plain ones.
var unitMarks = strings.NewReplacer("^", "", "²", "2", "³", "3", "·", " ")

// parse reads a number, or a mixed number or fraction, and its unit.
func (k kind) parse(text string) (float64, error) {
	s := scanner{rest: plain(text)}
	sign := 1.0
	if strings.HasPrefix(s.rest, "-") {
		sign, s.rest = -1, s.rest[1:]
	}
	n, ok := s.number()
	if !ok {
		return 0, k.wrong(text, "is not "+k.name)
	}
	s.blanks()
	unit := strings.Join(strings.Fields(unitMarks.Replace(s.rest)), " ")
	switch {
	case unit == "" && k.bare != 0:
		return sign * n.float() * k.bare, nil
	case unit == "" && n.numerator == 0:
		return 0, nil
	case unit == "":
		return 0, k.wrong(text, "has no unit")
	case strings.HasPrefix(unit, ","):
		return 0, &ParseError{fmt.Sprintf("%q has a comma in a number", text), "write a decimal point, and no mark between thousands"}
	}
	factor, known := k.units[unit]
	if !known {
		return 0, k.wrong(text, "is not "+k.name)
	}
	return sign * n.float() * factor, nil
}

func (k kind) wrong(text, what string) error {
	return &ParseError{fmt.Sprintf("%q %s", text, what), k.remedy}
}

// ParseVolume reads yd3, ft3, m3 and litres, as in 1/2 yd3.
func ParseVolume(text string) (Volume, error) {
	v, err := volumeKind.parse(text)
	return Volume(v), err
}

// ParseMass reads lb, kg, t, and the mass that weighs so many N or kN.
func ParseMass(text string) (Mass, error) { v, err := massKind.parse(text); return Mass(v), err }

// ParseForce reads lb, kip, N, kN, and the weight of so many kg or t.
func ParseForce(text string) (Force, error) { v, err := forceKind.parse(text); return Force(v), err }

// ParseStress reads psf, psi, ksi, kPa, kN/m2, MPa, N/mm2, GPa.
func ParseStress(text string) (Stress, error) {
	v, err := stressKind.parse(text)
	return Stress(v), err
}

// ParseDensity reads pcf, lb/ft3, lb/yd3, kg/m3.
func ParseDensity(text string) (Density, error) {
	v, err := densityKind.parse(text)
	return Density(v), err
}

// ParseSpeed reads mph, m/s, km/h.
func ParseSpeed(text string) (Speed, error) { v, err := speedKind.parse(text); return Speed(v), err }

// ParsePercent reads 8%.
func ParsePercent(text string) (Percent, error) {
	v, err := percentKind.parse(text)
	return Percent(v), err
}

// ParseHours reads 2.5, 2.5 h or 40 min.
func ParseHours(text string) (Hours, error) { v, err := hoursKind.parse(text); return Hours(v), err }

// ParseRatio reads a number without a unit.
func ParseRatio(text string) (Ratio, error) { v, err := ratioKind.parse(text); return Ratio(v), err }

// ParseMoney reads an amount without its currency.
func ParseMoney(text string) (Money, error) { v, err := moneyKind.parse(text); return Money(v), err }

// ParseAccuracy reads how far an instrument may be off over a distance:
// 1/8" in 100', or 3 mm in 30 m.
func ParseAccuracy(text string) (off, over Length, err error) {
	remedy := `write it as a length in a length, such as 1/8" in 100' or 3 mm in 30 m`
	for at := range len(text) {
		if !strings.HasPrefix(text[at:], " in ") {
			continue
		}
		off, err = ParseLength(text[:at])
		if err != nil {
			continue // the "in" may have been inches
		}
		if over, err = ParseLength(text[at+4:]); err != nil || off < 0 || over <= 0 {
			break
		}
		return off, over, nil
	}
	return 0, 0, &ParseError{fmt.Sprintf("%q is not an accuracy", text), remedy}
}
