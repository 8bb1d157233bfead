package trade

import (
	"slices"
	"strings"

	"pierbook/calc/measure"
)

// Species is one commercial species or group.
type Species struct {
	ID, Name string
	Gravity  measure.Ratio // oven-dry weight and volume
	Incised  bool          // whether the deck tables take it as incised when preservative-treated
	Density  Both          // as bought
	Grades   []Grade
	Source   string // of the gravity
}

// Grade holds the reference design values of one grade and class of a species:
// for normal load duration, dry service, before any adjustment.
type Grade struct {
	Name                       string
	Class                      string // dimension or timbers
	Width                      int    // nominal, in inches; 0 when the values hold for all
	Bending, Tension, Shear    measure.Stress
	BearingAcross, Compression measure.Stress
	Elastic, ElasticMin        measure.Stress
	Source                     string
	Memory                     bool
}

func readSpecies(rows []row) []Species {
	list := make([]Species, len(rows))
	for i, r := range rows {
		list[i] = Species{ID: r.text("species"), Name: r.text("name"), Gravity: r.ratio("gravity"), Incised: r.yes("incised"), Density: r.both("density"), Source: r.text("source")}
		for _, g := range r.under {
			psi := func(column string) measure.Stress { return measure.Stress(g.whole(column)) * measure.PoundPerSquareIn }
			list[i].Grades = append(list[i].Grades, Grade{Name: g.text("grade"), Class: g.text("class"), Width: g.whole("width"),
				Bending: psi("Fb"), Tension: psi("Ft"), Shear: psi("Fv"), BearingAcross: psi("Fcp"), Compression: psi("Fc"), Elastic: psi("E"), ElasticMin: psi("Emin"),
				Source: g.text("source"), Memory: g.yes("memory")})
		}
	}
	return list
}

// AllSpecies returns the species in the order of their table.
func AllSpecies() []Species { return facts().species }

// FindSpecies returns the species with the id or name and whether there is one.
// Capitals, blanks and hyphens do not matter.
func FindSpecies(name string) (Species, bool) {
	wanted := PlainName(name)
	return find(facts().species, func(s Species) bool { return PlainName(s.ID) == wanted || PlainName(s.Name) == wanted })
}

// SpeciesNames returns the ids of all species.
func SpeciesNames() []string { return names(AllSpecies(), func(s Species) string { return s.ID }) }

// GradeNames returns the grades of all species, each once.
func GradeNames() []string {
	var list []string
	for _, s := range AllSpecies() {
		for _, g := range s.Grades {
			if !slices.Contains(list, g.Name) {
				list = append(list, g.Name)
			}
		}
	}
	return list
}

// Values returns the design values of a grade and class at a nominal width in
// inches and whether the table has them.
func (s Species) Values(grade, class string, width int) (Grade, bool) {
	wanted := PlainName(grade)
	return find(s.Grades, func(g Grade) bool {
		return PlainName(g.Name) == wanted && g.Class == class && (g.Width == 0 || g.Width == width)
	})
}

// DensityAt returns the density of the species at a moisture content in per cent
// of the oven-dry weight.
//
//	ρ = 62.4 · G / (1 + 0.009 · G · m) · (1 + m/100)   in lb/ft3
//
// Source: NDS Supplement section 3.1.3 form; checked against Wood Structural
// Design Data (1992), whose weights it gives at 15 per cent.
func (s Species) DensityAt(moisture float64) measure.Density {
	g := float64(s.Gravity)
	return measure.Density(62.4*g/(1+0.009*g*moisture)*(1+moisture/100)) * measure.PoundPerCubicFoot
}

var marks = strings.NewReplacer(" ", "", "_", "", "-", "", ",", "", ".", "")

// PlainName strips a name of capitals, blanks and marks, for comparing.
func PlainName(name string) string { return marks.Replace(strings.ToLower(name)) }
