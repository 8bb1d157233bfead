// Package figure holds the figures of a job: every number or word that a page,
// a drawing, figures.json or the assumptions sheet may show, each with its key,
// its value and where it came from.
package figure

import (
	"pierbook/calc/fault"
	"pierbook/calc/measure"
)

// Origin says where a figure came from.
type Origin string

// The origins. They are written into figures.json, so their text is a contract.
const (
	Given    Origin = "given"    // stands in the job file
	Shop     Origin = "shop"     // stands in the shop's file laid under the job
	Assumed  Origin = "assumed"  // the program's default, with its source
	Computed Origin = "computed" // worked out from other figures
	Measured Origin = "measured" // read on site and written into the job file
)

// Figure is one value with its key and its pedigree. It carries all that
// "where does this come from" needs.
type Figure struct {
	Key      string           // stable, dotted, such as pier.A1.post
	Means    string           // what it is, in a few words: "length of the post at A1"
	Value    measure.Quantity //
	Rounding measure.Rounding // how a length is printed
	Origin   Origin
	At       fault.Place // where it stands, for given, shop and measured figures
	Source   string      // document, edition and clause, or the basis of an assumption
	Memory   bool        // the value or its source is from memory, unconfirmed: marked wherever it is printed
	Formula  string      // for computed figures: the rule in symbols, "post = F − t − b"
	Working  string      // the same with this job's numbers in it
	From     []string    // keys of the figures it was worked out from
	Brief    string      // told in one line in place of all that, where it comes from too many figures to follow
}

// Text returns the value as the binder prints it, or "" when there is none yet.
func (f Figure) Text(style measure.Style) string {
	if f.Value == nil {
		return ""
	}
	style.Rounding = f.Rounding
	return f.Value.Print(style)
}

// Holds says whether the figure has a value that counts as a yes: present, not
// zero, and not one of the words "", "no", "none" and "unknown".
func (f Figure) Holds() bool {
	switch v := f.Value.(type) {
	case nil:
		return false
	case measure.Word:
		return v != "" && v != "no" && v != "none" && v != "unknown"
	default:
		value, _ := v.Base()
		return value != 0
	}
}
