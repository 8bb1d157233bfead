package loads

import (
	"strings"

	"pierbook/calc/measure"
)

// Case is one kind of load, by how long it lasts and when it is there.
type Case int

const (
	DeadCase     Case = iota // own weight of platform
	BuildingCase             // weight of what stands on it, at its most
	LiveCase                 // on the floor, patterned
	SnowCase                 // on the roof, or on an open floor
	RoofCase                 // people on the roof
	WindCase                 // pushes the leeward piers down
	CaseCount
)

var CaseNames = [CaseCount]string{"own weight", "building", "floor live load", "snow", "roof live load", "wind"}

// Combination is one way in which loads act together.
type Combination struct {
	Name    string // D + 0.75L + 0.75S
	Factors [CaseCount]float64
}

// Combinations are the downward combinations of ASCE 7-16 section 2.4.1. Wind
// acts on piers only and stands for 0.6W already.
var Combinations = []Combination{
	{"D", [CaseCount]float64{1, 1}},
	{"D + L", [CaseCount]float64{1, 1, 1}},
	{"D + S", [CaseCount]float64{1, 1, 0, 1}},
	{"D + Lr", [CaseCount]float64{1, 1, 0, 0, 1}},
	{"D + 0.75L + 0.75S", [CaseCount]float64{1, 1, .75, .75}},
	{"D + 0.75L + 0.75Lr", [CaseCount]float64{1, 1, .75, 0, .75}},
	{"D + 0.6W", [CaseCount]float64{1, 1, 0, 0, 0, 1}},
	{"D + 0.75L + 0.75S + 0.75(0.6W)", [CaseCount]float64{1, 1, .75, .75, 0, .75}},
}

// Relevant returns the combinations that have no load that is not there.
func Relevant(present [CaseCount]bool, withWind bool) []Combination {
	var kept []Combination
	for _, c := range Combinations {
		ok := withWind || c.Factors[WindCase] == 0
		if c.Name == "D + 0.75L + 0.75S + 0.75(0.6W)" {
			ok = ok && present[WindCase]
		} else {
			for k, f := range c.Factors {
				ok = ok && (f == 0 || present[k] || Case(k) == BuildingCase)
			}
		}
		if ok {
			kept = append(kept, c)
		}
	}
	return kept
}

// Counts says by which factor a combination takes each kind of load, in words,
// and whether it is looked at on piers alone.
func (c Combination) Counts() (loads string, piersAlone bool) {
	var parts []string
	for kind, f := range c.Factors {
		if f == 0 {
			continue
		}
		name := CaseNames[kind]
		if f != 1 {
			name = measure.Ratio(f).Print(measure.Style{}) + " × " + name
		}
		parts = append(parts, name)
	}
	return strings.Join(parts, " + "), c.Factors[WindCase] != 0
}

// ShortTerm are the loads that come and go, alone and together, for deflection.
var ShortTerm = []Combination{
	{"L", [CaseCount]float64{LiveCase: 1}},
	{"S", [CaseCount]float64{SnowCase: 1}},
	{"Lr", [CaseCount]float64{RoofCase: 1}},
	{"0.75L + 0.75S", [CaseCount]float64{LiveCase: .75, SnowCase: .75}},
}

// Within holds for a combination of which every load is present.
func (c Combination) Within(present [CaseCount]bool) bool {
	for kind, f := range c.Factors {
		if f != 0 && !present[kind] {
			return false
		}
	}
	return true
}
