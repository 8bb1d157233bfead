package strength

import (
	"strings"
	"sync"

	"pierbook/calc/measure"
)

// SoilClass is one class of the presumptive table.
type SoilClass struct {
	ID, Name string
	Bearing  measure.Stress
	Friction measure.Ratio  // on dead load, allowable
	Cohesion measure.Stress // on the contact area, allowable, at most half of the dead load
	Source   string
}

// SoilClasses returns the presumptive classes of IBC Table 1806.2.
var SoilClasses = sync.OnceValue(func() []SoilClass {
	var all []SoilClass
	for _, r := range readTable("soils.csv") {
		all = append(all, SoilClass{r["class"], r["name"], psf(r.number("bearing_psf")), measure.Ratio(r.number("friction")), psf(r.number("cohesion_psf")), r["source"]})
	}
	return all
})

// SoilNames returns the ids of all classes, for a fault that lists the choices.
func SoilNames() string {
	var names []string
	for _, s := range SoilClasses() {
		names = append(names, s.ID)
	}
	return strings.Join(names, ", ")
}

// SoilOf returns the class of the table that a job's word for the soil falls
// in: by the leading kind of grain, for the words differ more than the table.
func SoilOf(word string) (SoilClass, bool) {
	w := strings.ToLower(word)
	for _, c := range []struct{ part, class string }{
		{"bedrock", "crystalline_bedrock"}, {"crystalline", "crystalline_bedrock"}, {"rock", "sedimentary_rock"},
		{"silty_sand", "sand"}, {"clayey_sand", "sand"}, {"silty_gravel", "sand"}, {"clayey_gravel", "sand"},
		{"gravel", "gravel"}, {"clay", "clay"}, {"silt", "clay"}, {"sand", "sand"},
	} {
		if strings.Contains(w, c.part) {
			return findSoil(c.class)
		}
	}
	return SoilClass{}, false
}

func findSoil(id string) (SoilClass, bool) {
	for _, s := range SoilClasses() {
		if s.ID == id {
			return s, true
		}
	}
	return SoilClass{}, false
}
