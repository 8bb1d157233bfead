package job

// use is a way to use the platform, with the live load of its floor.
type use struct {
	name             string
	imperial, metric string // the load rounded up in the other system
	source           string
	memory           bool
}

const (
	ircR301    = "IRC 2000 Table R301.4, minimum uniform live loads"
	nfbc       = "National Farm Building Code of Canada 1995, Table 2.3.2.1"
	ep378      = "ASAE EP378.3 (Dec 1997) Table 1"
	asceMemory = "ASCE 7-16 (2016) Table 4.3-1"
)

var uses = []use{
	{"deck", "40 psf", "1.92 kPa", ircR301 + ": decks; some places ask for 60 psf", false},
	{"garden_room", "40 psf", "1.92 kPa", ircR301 + ": rooms other than sleeping rooms", false},
	{"summerhouse", "40 psf", "1.92 kPa", ircR301 + ": rooms other than sleeping rooms", false},
	{"playhouse", "40 psf", "1.92 kPa", ircR301 + ": rooms other than sleeping rooms", false},
	{"sleeping_room", "30 psf", "1.44 kPa", ircR301 + ": sleeping rooms", false},
	{"shed", "40 psf", "1.92 kPa", "household tools and mowers only, as " + ircR301 + ": rooms; stacked goods are light_storage", true},
	{"workshop", "50 psf", "2.40 kPa", "our own choice, for no row names a home workshop: the 50 psf row of " + ircR301, true},
	{"light_storage", "125 psf", "5.99 kPa", asceMemory + ": light storage", true},
	{"heavy_storage", "250 psf", "11.98 kPa", asceMemory + ": heavy storage, as in an exercise of R. C. Hibbeler, Structural Analysis, 8th ed. (2012), chapter 1", false},
	{"public_terrace", "100 psf", "4.79 kPa", asceMemory + ": yards and terraces for pedestrians", true},
	{"greenhouse", "52.3 psf", "2.5 kPa", nfbc + ": greenhouse floor", false},
	{"hen_house", "41.8 psf", "2.0 kPa", nfbc + ": poultry house floor", false},
	{"sheep_house", "52.3 psf", "2.5 kPa", nfbc + ": sheep floor", false},
	{"stable", "104.5 psf", "5.0 kPa", nfbc + ": horse floor", false},
	{"calf_house", "50 psf", "2.40 kPa", ep378 + ": calves to 300 lb", false},
}

// UseNames returns the uses that the floor load is known for.
func UseNames() []string {
	names := make([]string, len(uses))
	for i, u := range uses {
		names[i] = u.name
	}
	return names
}

func floorLoadOf(j *Job) Default {
	for _, u := range uses {
		if u.name == j.Platform.Use {
			return Default{Imperial: u.imperial, Metric: u.metric, Source: u.source, Memory: u.memory}
		}
	}
	return Default{}
}

// soil is a class of soil with what the model codes presume of it.
type soil struct {
	name             string
	imperial, metric string // presumptive bearing, rounded down in metric; empty when there is none
	swell, packed    string // loose, and trodden down, over the volume in the bank
}

var soils = []soil{
	{"bedrock", "12000 psf", "574 kPa", "1.65", "1.30"},
	{"sedimentary_rock", "4000 psf", "191 kPa", "1.65", "1.30"},
	{"sandy_gravel", "3000 psf", "143 kPa", "1.12", "0.95"},
	{"gravel", "3000 psf", "143 kPa", "1.12", "0.95"},
	{"sand", "2000 psf", "95 kPa", "1.12", "0.95"},
	{"silty_sand", "2000 psf", "95 kPa", "1.12", "0.95"},
	{"clayey_sand", "2000 psf", "95 kPa", "1.25", "0.90"},
	{"silty_gravel", "2000 psf", "95 kPa", "1.12", "0.95"},
	{"clayey_gravel", "2000 psf", "95 kPa", "1.40", "0.90"},
	{"silt", "1500 psf", "71 kPa", "1.25", "0.90"},
	{"clay", "1500 psf", "71 kPa", "1.40", "0.90"},
	{"sandy_clay", "1500 psf", "71 kPa", "1.40", "0.90"},
	{"organic", "", "", "1.25", "0.90"},
	{"peat", "", "", "1.25", "0.90"},
	{"fill", "", "", "1.25", "0.90"},
}

// SoilNames returns the classes of soil.
func SoilNames() []string {
	names := make([]string, len(soils))
	for i, s := range soils {
		names[i] = s.name
	}
	return names
}

func soilOf(j *Job) soil {
	for _, s := range soils {
		if s.name == j.Site.Soil.Class {
			return s
		}
	}
	return soil{}
}

func bearingOf(j *Job) Default {
	s := soilOf(j)
	return Default{Imperial: s.imperial, Metric: s.metric, Source: "presumptive value for the class: IBC 2012 Table 1806.2, IRC 2021 Table R401.4.1; the ground itself decides"}
}

// packedOf returns what the three volumes of earthwork tables say of soil put
// back and compacted: sand keeps 95 parts of 100 of its bank volume, loam and
// clay 90; blasted rock takes 130.
func packedOf(j *Job) Default {
	s := soilOf(j)
	if s.packed == "" {
		s.packed = "0.90"
	}
	return Default{Imperial: s.packed, Metric: s.packed, Memory: true,
		Source: "FM 5-434, Earthmoving Operations (2000), table 1-1: compacted over bank volume (sand 0.95, loam and clay 0.90, blasted rock 1.30); states differ widely, and soil only trodden down packs less"}
}

func swellOf(j *Job) Default {
	s := soilOf(j)
	if s.swell == "" {
		s.swell = "1.25"
	}
	return Default{Imperial: s.swell, Metric: s.swell, Source: practice + ": clay swells by 40 per cent, loam by 25, sand and gravel by 12, rock by 65; tables differ widely"}
}

// species is a commercial species or group of the timber tables.
type species struct {
	name             string
	incised          string
	imperial, metric string // density at 15 per cent moisture
}

// Source of the weights: Wood Structural Design Data, 1992 revisions; they are
// 62.4 G (1 + m/100) / (1 + 0.009 G m) with m = 15. Incising: footnotes of IRC
// R507.5 and R507.6, which assume it for the first three.
var allSpecies = []species{
	{"douglas_fir_larch", "yes", "33.6 pcf", "538 kg/m3"},
	{"hem_fir", "yes", "29.2 pcf", "468 kg/m3"},
	{"spruce_pine_fir", "yes", "28.5 pcf", "457 kg/m3"},
	{"southern_pine", "no", "36.7 pcf", "588 kg/m3"},
	{"redwood_open_grain", "no", "25.3 pcf", "405 kg/m3"},
	{"redwood", "no", "29.8 pcf", "477 kg/m3"},
	{"western_cedars", "no", "24.6 pcf", "394 kg/m3"},
	{"northern_species", "no", "24.0 pcf", "384 kg/m3"},
}

// SpeciesNames returns the species of the timber tables.
func SpeciesNames() []string {
	names := make([]string, len(allSpecies))
	for i, s := range allSpecies {
		names[i] = s.name
	}
	return names
}

// GradeNames returns the visual grades of the timber tables.
func GradeNames() []string { return []string{"Select Structural", "No.1", "No.2", "No.3"} }

func densityOf(name string) Default {
	for _, s := range allSpecies {
		if s.name == name {
			return Default{Imperial: s.imperial, Metric: s.metric, Source: "Wood Structural Design Data (1992 revisions), weight at 15 per cent moisture; freshly treated timber is heavier"}
		}
	}
	return Default{Imperial: "35 pcf", Metric: "560 kg/m3", Source: "common practice, no source: softwood at 15 to 20 per cent moisture"}
}

func incisedOf(name string) Default {
	d := Default{Imperial: "no", Metric: "no", Source: "our own choice: design values given in the job are taken as they stand"}
	for _, s := range allSpecies {
		if s.name == name {
			d = Default{Imperial: s.incised, Metric: s.incised, Source: "IRC 2021 R507.5 and R507.6, footnotes: treated Douglas Fir-Larch, Hem-Fir and Spruce-Pine-Fir count as incised"}
		}
	}
	return d
}
