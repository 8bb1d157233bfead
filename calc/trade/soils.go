package trade

import "pierbook/calc/measure"

// Soil is a class of soil with what the model codes presume of it and how its
// volume changes when it is dug.
type Soil struct {
	Class         string
	Row           string // the row of the code's table that the class falls in
	Bearing       Both   // presumptive, rounded down in metric; empty when the code gives none
	Presumed      measure.Stress
	Friction      measure.Ratio  // on dead load, allowable
	Cohesion      measure.Stress // on the area of contact, allowable, at most half of the dead load
	Swell, Packed string         // loose, and put back and compacted, over the volume in the bank
	Source        string         // of the presumptive values
}

func readSoils(rows []row) []Soil {
	list := make([]Soil, len(rows))
	for i, r := range rows {
		list[i] = Soil{Class: r.text("class"), Row: r.text("row"), Bearing: r.both("bearing"), Presumed: r.stress("bearing"), Friction: r.ratio("friction"), Cohesion: r.stress("cohesion"),
			Swell: r.text("swell"), Packed: r.text("packed"), Source: r.text("source")}
	}
	return list
}

// Soils returns the classes of soil.
func Soils() []Soil { return facts().soils }

// FindSoil returns the class of a name and whether there is one.
func FindSoil(class string) (Soil, bool) {
	return find(facts().soils, func(s Soil) bool { return s.Class == class })
}

// HasPresumed says whether the codes presume a bearing of the class.
func (s Soil) HasPresumed() bool { return s.Presumed > 0 }

// SteepGround is the slope past which piers on it or beside it are a matter of
// setbacks and of an engineer: 1 in 3. IRC 2021 R403.1.7.
const SteepGround measure.Percent = 1. / 3
