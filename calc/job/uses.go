package job

import "pierbook/calc/trade"

// UseNames returns the uses that the floor load is known for.
func UseNames() []string {
	var names []string
	for _, u := range trade.Uses() {
		names = append(names, u.Name)
	}
	return names
}

func floorLoadOf(j *Job) Default {
	u, _ := trade.FindUse(j.Platform.Use)
	return Default{Imperial: u.Load.Imperial, Metric: u.Load.Metric, Source: u.Source, Memory: u.Memory}
}

// SoilNames returns the classes of soil.
func SoilNames() []string {
	var names []string
	for _, s := range trade.Soils() {
		names = append(names, s.Class)
	}
	return names
}

func bearingOf(j *Job) Default {
	s, _ := trade.FindSoil(j.Site.Soil.Class)
	return Default{Imperial: s.Bearing.Imperial, Metric: s.Bearing.Metric, Source: "presumptive value for the class: " + s.Source + "; the ground itself decides"}
}

// packedOf returns what the three volumes of earthwork tables say of soil put
// back and compacted: sand keeps 95 parts of 100 of its bank volume, loam and
// clay 90; blasted rock takes 130.
func packedOf(j *Job) Default {
	packed := "0.90"
	if s, known := trade.FindSoil(j.Site.Soil.Class); known {
		packed = s.Packed
	}
	return Default{Imperial: packed, Metric: packed, Memory: true,
		Source: "FM 5-434, Earthmoving Operations (2000), table 1-1: compacted over bank volume (sand 0.95, loam and clay 0.90, blasted rock 1.30); states differ widely, and soil only trodden down packs less"}
}

func swellOf(j *Job) Default {
	swell := "1.25"
	if s, known := trade.FindSoil(j.Site.Soil.Class); known {
		swell = s.Swell
	}
	return Default{Imperial: swell, Metric: swell, Source: practice + ": clay swells by 40 per cent, loam by 25, sand and gravel by 12, rock by 65; tables differ widely"}
}

func densityOf(name string) Default {
	if s, known := trade.FindSpecies(name); known {
		return Default{Imperial: s.Density.Imperial, Metric: s.Density.Metric, Source: "Wood Structural Design Data (1992 revisions), weight at 15 per cent moisture; freshly treated timber is heavier"}
	}
	return Default{Imperial: "35 pcf", Metric: "560 kg/m3", Source: "common practice, no source: softwood at 15 to 20 per cent moisture"}
}

func incisedOf(name string) Default {
	s, known := trade.FindSpecies(name)
	switch {
	case !known:
		return same("no", "our own choice: design values given in the job are taken as they stand")
	case s.Incised:
		return same("yes", incisedSource)
	}
	return same("no", incisedSource)
}

const incisedSource = "IRC 2021 R507.5 and R507.6, footnotes: treated Douglas Fir-Larch, Hem-Fir and Spruce-Pine-Fir count as incised"
