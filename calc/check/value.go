package check

import (
	"slices"

	"pierbook/calc/measure"
)

// DesignValue is one design value of a kind of member with every factor on it, for the
// check of that kind that comes nearest to its limit.
type DesignValue struct {
	Member, What, Symbol string // joist, bending, Fb
	Reference, Adjusted  measure.TimberStress
	Factors              []Factor // in the order of its standard; those not listed do not apply
	Check                string   // id of that check, empty when none was made
	Source               string
	Memory               bool
}

// Factor returns a factor by its symbol and whether it applies to the value.
func (v DesignValue) Factor(symbol string) (measure.Ratio, bool) {
	at := slices.IndexFunc(v.Factors, func(f Factor) bool { return f.Symbol == symbol })
	if at < 0 {
		return 0, false
	}
	return v.Factors[at].Value, true
}
