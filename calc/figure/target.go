package figure

import "pierbook/calc/measure"

// Target is a number to hit on site and how near is near enough.
type Target struct {
	Key    string           // of the wanted figure
	What   string           // "diagonal of the frame"
	Wanted measure.Quantity //
	Do     measure.Length   // work to within this
	Accept measure.Length   // up to this the work may stand
	Stop   measure.Length   // beyond this stop and fetch somebody
	Basis  string           // where the three limits come from
}
