package timber

import (
	"strings"
	"sync"

	"pierbook/calc/measure"
)

// Species is one commercial species or group of the timber tables.
type Species struct {
	ID, Name         string
	SpecificGravity  measure.Ratio // oven-dry weight and volume, NDS Table 12.3.3A
	IncisedIfTreated bool          // whether the deck tables take it as incised when preservative-treated
	Source           string
}

// AllSpecies returns the species of the tables in their order.
var AllSpecies = sync.OnceValue(func() []Species {
	var all []Species
	for _, r := range readTable("species.csv") {
		all = append(all, Species{
			ID: r["species"], Name: r["name"],
			SpecificGravity:  measure.Ratio(r.number("specific_gravity")),
			IncisedIfTreated: r["incised_when_treated"] == "true",
			Source:           r["source"],
		})
	}
	return all
})

// FindSpecies returns the species with the id or name and whether there is one.
// Capitals, blanks and hyphens do not matter.
func FindSpecies(name string) (Species, bool) {
	wanted := plainName(name)
	for _, s := range AllSpecies() {
		if plainName(s.ID) == wanted || plainName(s.Name) == wanted {
			return s, true
		}
	}
	return Species{}, false
}

var marks = strings.NewReplacer(" ", "", "_", "", "-", "", ",", "", ".", "")

func plainName(s string) string { return marks.Replace(strings.ToLower(s)) }

// Density returns the density of the species at a moisture content in per cent
// of the oven-dry weight.
//
//	ρ = 62.4 · G / (1 + 0.009 · G · m) · (1 + m/100)   in lb/ft3
//
// Source: NDS Supplement section 3.1.3 form; checked against Wood Structural
// Design Data (1992), whose weights it gives at 15 per cent.
func (s Species) Density(moisture float64) measure.Density {
	g := float64(s.SpecificGravity)
	return measure.Density(62.4*g/(1+0.009*g*moisture)*(1+moisture/100)) * measure.PoundPerCubicFoot
}

// SpeciesNames returns the ids of all species, for a fault that lists the choices.
func SpeciesNames() []string {
	var names []string
	for _, s := range AllSpecies() {
		names = append(names, s.ID)
	}
	return names
}
