package timber

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Class is the kind of sawn timber that a table of design values speaks of.
type Class string

// The classes of the tables.
const (
	Dimension Class = "dimension" // 2 to 4 in thick, NDS Supplement Tables 4A and 4B
	Timbers   Class = "timbers"   // 5×5 and larger, at most 2 in wider than thick, Table 4D
	GivenWith Class = "given"     // values stand in the job file with their source
)

// Reference holds reference design values: for normal load duration, dry
// service, before any adjustment. All stresses in pascals.
type Reference struct {
	Species, Grade             string
	Class                      Class
	Bending, Tension, Shear    measure.Stress // Fb, Ft, Fv
	BearingAcross, Compression measure.Stress // Fc⊥, Fc
	Elastic, ElasticMin        measure.Stress // E, Emin
	SpecificGravity            measure.Ratio  // 0 when not known
	SizeSpecific               bool           // Table 4B: values already hold for the width
	Source                     string
	Memory                     bool
}

// lookUpError says which choices there would have been.
type lookUpError struct{ wrong, remedy, path string }

func (e lookUpError) Error() string { return e.wrong + "; " + e.remedy }

// LookUp returns the reference values of a section: those given in the job with
// their source, or those of the tables for species, grade and size. The error
// names the choices there are.
func LookUp(timber job.Timber, section job.Section) (Reference, error) {
	if timber.Values != nil {
		return given(timber)
	}
	species, ok := trade.FindSpecies(timber.Species)
	if !ok {
		return Reference{}, lookUpError{fmt.Sprintf("%q is not a species of the timber tables", timber.Species),
			"write one of " + strings.Join(trade.SpeciesNames(), ", ") + ", or give design values with their source", "species"}
	}
	class, err := classOf(section)
	if err != nil {
		return Reference{}, err
	}
	if g, ok := species.Values(timber.Grade, string(class), NominalWidth(section)); ok {
		return Reference{Species: species.ID, Grade: g.Name, Class: class, Bending: g.Bending, Tension: g.Tension, Shear: g.Shear,
			BearingAcross: g.BearingAcross, Compression: g.Compression, Elastic: g.Elastic, ElasticMin: g.ElasticMin,
			SpecificGravity: species.Gravity, SizeSpecific: g.Width != 0, Source: g.Source, Memory: g.Memory}, nil
	}
	return Reference{}, noValues(species, timber.Grade, class, section)
}

func given(timber job.Timber) (Reference, error) {
	v := timber.Values
	named := []struct {
		name  string
		value measure.Stress
	}{{"bending", v.Bending}, {"shear", v.Shear}, {"bearing across the grain", v.BearingAcross},
		{"compression", v.Compression}, {"elastic", v.Elastic}, {"least elastic", v.ElasticMin}}
	var missing []string
	for _, n := range named {
		if n.value <= 0 {
			missing = append(missing, n.name)
		}
	}
	if len(missing) > 0 {
		return Reference{}, lookUpError{"the given design values lack " + strings.Join(missing, ", "),
			"take all six from the standard that the source names", "values"}
	}
	ref := Reference{Class: GivenWith, Bending: v.Bending, Shear: v.Shear, BearingAcross: v.BearingAcross,
		Compression: v.Compression, Elastic: v.Elastic, ElasticMin: v.ElasticMin, Source: v.Source,
		Species: timber.Species, Grade: timber.Grade}
	if species, ok := trade.FindSpecies(timber.Species); ok {
		ref.SpecificGravity = species.Gravity
	}
	return ref, nil
}

// noValues tells why the tables hold nothing: the grade, or the size for the grade.
func noValues(species trade.Species, grade string, class Class, section job.Section) error {
	var grades []string
	for _, g := range species.Grades {
		if g.Class == string(class) && !slices.Contains(grades, g.Name) {
			grades = append(grades, g.Name)
		}
	}
	kind := map[Class]string{Dimension: "2 to 4 in thick", Timbers: "5×5 and larger"}[class]
	if len(grades) == 0 {
		return lookUpError{fmt.Sprintf("the timber tables hold no values of %s %s (%s)", species.ID, section.Size, kind),
			"choose another species or size, or give design values with their source", ""}
	}
	if !slices.ContainsFunc(grades, func(g string) bool { return trade.PlainName(g) == trade.PlainName(grade) }) {
		return lookUpError{fmt.Sprintf("the timber tables hold no grade %q of %s %s", grade, species.ID, kind),
			"write one of " + strings.Join(grades, ", ") + ", or give design values with their source", "grade"}
	}
	return lookUpError{fmt.Sprintf("the timber tables hold no values of %s %s in the size %s", species.ID, grade, section.Size),
		"choose a width up to 12 in, or give design values with their source", ""}
}

// classOf tells which table a section belongs to. Beams and stringers, 5 in and
// thicker and more than 2 in wider than thick, have a table that is not here.
func classOf(section job.Section) (Class, error) {
	thick, wide := min(section.Width, section.Depth), max(section.Width, section.Depth)
	switch {
	case thick <= 0:
		return "", lookUpError{fmt.Sprintf("the section %q has no width and depth", section.Size), "write a size such as 2x8, or width and depth", ""}
	case thick < 5*measure.Inch/4:
		return "", lookUpError{fmt.Sprintf("%s is under 1 1/4 in thick, too thin for the tables", section.Size), "choose a thicker section, or give design values with their source", ""}
	case thick < 4*measure.Inch+measure.Inch/2:
		return Dimension, nil
	case wide-thick <= 2*measure.Inch:
		return Timbers, nil
	}
	return "", lookUpError{fmt.Sprintf("%s is a beam-and-stringer size, for which the tables hold no values", section.Size),
		"choose a built-up beam, a section at most 2 in wider than thick, or give design values with their source", ""}
}

// NominalWidth returns the width in inches by which the tables know a section:
// the least nominal width whose dressed width is not below the section's own,
// which never flatters the size factor.
func NominalWidth(section job.Section) int {
	wide := max(section.Width, section.Depth)
	dressed := []struct {
		nominal int
		width   measure.Length
	}{{2, 3 * measure.Inch / 2}, {3, 5 * measure.Inch / 2}, {4, 7 * measure.Inch / 2}, {5, 9 * measure.Inch / 2}, {6, 11 * measure.Inch / 2},
		{8, 29 * measure.Inch / 4}, {10, 37 * measure.Inch / 4}, {12, 45 * measure.Inch / 4}}
	for _, d := range dressed {
		if wide <= d.width {
			return d.nominal
		}
	}
	return 14
}
