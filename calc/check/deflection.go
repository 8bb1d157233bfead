package check

import "pierbook/calc/measure"

// Deflection is how far a member sags, in metres: it prints finer than a length
// that is cut or measured.
type Deflection float64

// Base returns d in millimetres.
func (d Deflection) Base() (float64, string) { return float64(d) * 1000, "mm" }

// Print returns d in thousandths of an inch or tenths of a millimetre.
func (d Deflection) Print(s measure.Style) string { return Words{s}.Small(float64(d)) }
