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

// Combinations are the downward combinations of ASCE 7-16 section 2.4.1, numbers 1
// to 6, without rain, of which a job says nothing. Wind acts on piers only and
// stands for 0.6W already. Number 7, 0.6D + 0.6W, is that of the checks in wind.
var Combinations = []Combination{
	{"D", [CaseCount]float64{1, 1}},
	{"D + L", [CaseCount]float64{1, 1, 1}},
	{"D + S", [CaseCount]float64{1, 1, 0, 1}},
	{"D + Lr", [CaseCount]float64{1, 1, 0, 0, 1}},
	{"D + 0.75L + 0.75S", [CaseCount]float64{1, 1, .75, .75}},
	{"D + 0.75L + 0.75Lr", [CaseCount]float64{1, 1, .75, 0, .75}},
	{"D + 0.6W", [CaseCount]float64{1, 1, 0, 0, 0, 1}},
	{"D + 0.75L + 0.75(0.6W)", [CaseCount]float64{1, 1, .75, 0, 0, .75}},
	{"D + 0.75L + 0.75S + 0.75(0.6W)", [CaseCount]float64{1, 1, .75, .75, 0, .75}},
	{"D + 0.75L + 0.75Lr + 0.75(0.6W)", [CaseCount]float64{1, 1, .75, 0, .75, .75}},
}

// Relevant returns the combinations that have no load that is not there, so that
// no name speaks of snow where none falls.
func Relevant(present [CaseCount]bool, withWind bool) []Combination {
	var kept []Combination
	present[BuildingCase] = true // D is the own weight, with a building or without
	for _, c := range Combinations {
		if c.Within(present) && (withWind || c.Factors[WindCase] == 0) {
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
	{"0.75L + 0.75Lr", [CaseCount]float64{LiveCase: .75, RoofCase: .75}},
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
