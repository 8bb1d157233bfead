package strength

import (
	"strings"

	"pierbook/calc/measure"
)

// Case is one kind of load, by how long it lasts and when it is there.
type Case int

const (
	deadCase     Case = iota // own weight of platform
	buildingCase             // weight of what stands on it, at its most
	liveCase                 // on the floor, patterned
	snowCase                 // on the roof, or on an open floor
	roofCase                 // people on the roof
	windCase                 // pushes the leeward piers down
	caseCount
)

var caseNames = [caseCount]string{"own weight", "building", "floor live load", "snow", "roof live load", "wind"}

// Combination is one way in which loads act together.
type Combination struct {
	Name    string // D + 0.75L + 0.75S
	Factors [caseCount]float64
}

// combinations are the downward combinations of ASCE 7-16 section 2.4.1. Wind
// acts on piers only and stands for 0.6W already.
var combinations = []Combination{
	{"D", [caseCount]float64{1, 1}},
	{"D + L", [caseCount]float64{1, 1, 1}},
	{"D + S", [caseCount]float64{1, 1, 0, 1}},
	{"D + Lr", [caseCount]float64{1, 1, 0, 0, 1}},
	{"D + 0.75L + 0.75S", [caseCount]float64{1, 1, .75, .75}},
	{"D + 0.75L + 0.75Lr", [caseCount]float64{1, 1, .75, 0, .75}},
	{"D + 0.6W", [caseCount]float64{1, 1, 0, 0, 0, 1}},
	{"D + 0.75L + 0.75S + 0.75(0.6W)", [caseCount]float64{1, 1, .75, .75, 0, .75}},
}

// Relevant returns the combinations that have no load that is not there.
func Relevant(present [caseCount]bool, withWind bool) []Combination {
	var kept []Combination
	for _, c := range combinations {
		ok := withWind || c.Factors[windCase] == 0
		if c.Name == "D + 0.75L + 0.75S + 0.75(0.6W)" {
			ok = ok && present[windCase]
		} else {
			for k, f := range c.Factors {
				ok = ok && (f == 0 || present[k] || Case(k) == buildingCase)
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
		name := caseNames[kind]
		if f != 1 {
			name = measure.Ratio(f).Print(measure.Style{}) + " × " + name
		}
		parts = append(parts, name)
	}
	return strings.Join(parts, " + "), c.Factors[windCase] != 0
}

// ShortTerm are the loads that come and go, alone and together, for deflection.
var ShortTerm = []Combination{
	{"L", [caseCount]float64{liveCase: 1}},
	{"S", [caseCount]float64{snowCase: 1}},
	{"Lr", [caseCount]float64{roofCase: 1}},
	{"0.75L + 0.75S", [caseCount]float64{liveCase: .75, snowCase: .75}},
}

// Within says whether every load of a combination is among those present.
func (c Combination) Within(present [caseCount]bool) bool {
	for kind, f := range c.Factors {
		if f != 0 && !present[kind] {
			return false
		}
	}
	return true
}
