package strength

// loadCase is one kind of load, by how long it lasts and when it is there.
type loadCase int

const (
	deadCase     loadCase = iota // own weight of platform
	buildingCase                 // weight of what stands on it, at its most
	liveCase                     // on the floor, patterned
	snowCase                     // on the roof, or on an open floor
	roofCase                     // people on the roof
	windCase                     // pushes the leeward piers down
	caseCount
)

var caseNames = [caseCount]string{"own weight", "building", "floor live load", "snow", "roof live load", "wind"}

// Combination is one way in which loads act together.
type Combination struct {
	Name     string // D + 0.75L + 0.75S
	Duration Duration
	factors  [caseCount]float64
}

// combinations are the downward combinations of ASCE 7-16 section 2.4.1, with
// the duration factor of the shortest-lasting load in each (NDS Table 2.3.2).
// Wind acts on piers only and stands for 0.6W already.
var combinations = []Combination{
	{"D", Permanent, [caseCount]float64{1, 1}},
	{"D + L", TenYears, [caseCount]float64{1, 1, 1}},
	{"D + S", TwoMonths, [caseCount]float64{1, 1, 0, 1}},
	{"D + Lr", SevenDays, [caseCount]float64{1, 1, 0, 0, 1}},
	{"D + 0.75L + 0.75S", TwoMonths, [caseCount]float64{1, 1, .75, .75}},
	{"D + 0.75L + 0.75Lr", SevenDays, [caseCount]float64{1, 1, .75, 0, .75}},
	{"D + 0.6W", TenMinutes, [caseCount]float64{1, 1, 0, 0, 0, 1}},
	{"D + 0.75L + 0.75S + 0.75(0.6W)", TenMinutes, [caseCount]float64{1, 1, .75, .75, 0, .75}},
}

// relevant returns the combinations that have no load that is not there.
func relevant(present [caseCount]bool, withWind bool) []Combination {
	var kept []Combination
	for _, c := range combinations {
		ok := withWind || c.factors[windCase] == 0
		if c.Name == "D + 0.75L + 0.75S + 0.75(0.6W)" {
			ok = ok && present[windCase]
		} else {
			for k, f := range c.factors {
				ok = ok && (f == 0 || present[k] || loadCase(k) == buildingCase)
			}
		}
		if ok {
			kept = append(kept, c)
		}
	}
	return kept
}
