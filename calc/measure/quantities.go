package measure

import "fmt"

// The derived quantities. Each is a float64 in the SI unit named, and each
// prints itself in the system that the job asks for.
type (
	// Area is in square metres.
	Area float64
	// Volume is in cubic metres.
	Volume float64
	// Mass is in kilograms.
	Mass float64
	// Force is in newtons.
	Force float64
	// Stress is in pascals: area loads and soil pressures, which print in psf
	// or kPa. [Stress.InTimber] prints in psi or MPa.
	Stress float64
	// TimberStress is a Stress that prints as timber values do, in psi or MPa.
	TimberStress float64
	// LineLoad is in newtons per metre.
	LineLoad float64
	// Moment is in newton metres.
	Moment float64
	// Density is in kilograms per cubic metre.
	Density float64
	// Speed is in metres per second.
	Speed float64
	// Ratio is a plain number: a factor, a fraction of one, a ratio of demand to capacity.
	Ratio float64
	// Percent is a fraction of one that prints as so many per cent.
	Percent float64
	// Hours are hours of work.
	Hours float64
	// Money is an amount in the currency of the yard's price list.
	Money float64
	// Count is a whole number of things.
	Count int
	// Word is a value that is a word or a name, not a number.
	Word string
)

// Units of the derived quantities in SI.
const (
	Pound             Mass    = 0.45359237
	PoundForce        Force   = 4.4482216152605
	Kilonewton        Force   = 1000
	Kilopascal        Stress  = 1000
	Megapascal        Stress  = 1e6
	PoundPerSquareIn  Stress  = 6894.757293168361
	PoundPerSquareFt  Stress  = 47.88025898033584
	CubicFoot         Volume  = 0.028316846592
	CubicYard         Volume  = 27 * CubicFoot
	SquareFoot        Area    = 0.09290304
	MilePerHour       Speed   = 0.44704
	PoundPerCubicFoot Density = 16.018463373960138
	// StandardGravity turns a mass into its weight, in m/s2 (CGPM 1901).
	StandardGravity = 9.80665
)

// Weight returns the force of gravity on m.
func (m Mass) Weight() Force { return Force(float64(m) * StandardGravity) }

// Mass returns the mass whose weight is f.
func (f Force) Mass() Mass { return Mass(float64(f) / StandardGravity) }

// Over returns the pressure of f spread over a.
func (f Force) Over(a Area) Stress { return Stress(float64(f) / float64(a)) }

// InTimber returns s as a stress in timber, which prints in psi or MPa.
func (s Stress) InTimber() TimberStress { return TimberStress(s) }

// On returns the force of the pressure s on a.
func (s Stress) On(a Area) Force { return Force(float64(s) * float64(a)) }

// Deep returns the volume of a slab of area a and thickness l.
func (a Area) Deep(l Length) Volume { return Volume(float64(a) * l.Metres()) }

// Of returns the mass of v at density d.
func (d Density) Of(v Volume) Mass { return Mass(float64(d) * float64(v)) }

// Over returns the volume that a weight takes at the other density over the one
// it takes at d: loosening and tamping change the volume and not the weight.
func (d Density) Over(other Density) Ratio { return Ratio(d / other) }

// Quantity is a value that knows its unit and how to print itself.
type Quantity interface {
	// Base returns the value in the unit that figures.json uses, with that unit:
	// mm, m2, m3, kg, N, kPa, N/m, N m, kg/m3, m/s, h, or "" for a plain number.
	Base() (value float64, unit string)
	// Print returns the value as the binder shows it, without line breaks.
	Print(Style) string
}

// System is the family of units a binder is printed in.
type System int

// The systems. The zero System is neither, so that a forgotten one shows.
const (
	Imperial System = iota + 1
	Metric
)

// Rounding says which way a printed length goes when it falls between two marks.
type Rounding int

// Cut lengths and targets go to the nearest mark; clearances and bearing
// lengths that must not be overstated go down; orders go up.
const (
	Nearest Rounding = iota
	Down
	Up
)

// Style says how quantities are printed.
type Style struct {
	System   System
	Fraction Length   // finest mark of an imperial length, such as Sixteenth; metric lengths print to Millimetre
	Rounding Rounding // for lengths only
	Rod      Rod      // how rod readings print
	Currency string   // what stands beside an amount of money: "$" or "EUR"
}

// Counted returns a number with what is counted: "1 set-up", "2 set-ups".
func Counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
