package job

import (
	"strconv"

	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

func rounded(v float64, digits int) string { return strconv.FormatFloat(v, 'f', digits, 64) }

const askOffice = practice + ": the building department gives the figure"

func siteKeys() []Key {
	answers := []string{"yes", "no", "unknown"}
	unknown := same("unknown", "our own wording: the job does not say")
	return []Key{
		{Path: "site.soil.class", Kind: Word, Choices: SoilNames(), Means: "class of the soil under the stone", put: func(j *Job, v value) { j.Site.Soil.Class = v.text }},
		{Path: "site.soil.bearing", Kind: Stress, Required: true, From: bearingOf, FromSays: "site.soil.class", Missing: "write site.soil.class, such as class: silty_sand; organic soil, peat and fill need a bearing from somebody who has tested them",
			Means: "pressure the soil may carry", put: func(j *Job, v value) { j.Site.Soil.Bearing = measure.Stress(v.number) }},
		{Path: "site.soil.swell", Kind: Ratio, From: swellOf, FromSays: "site.soil.class", Means: "loose volume of the spoil over its volume in the ground", put: func(j *Job, v value) { j.Site.Soil.Swell = measure.Ratio(v.number) }},
		{Path: "site.soil.packed", Kind: Ratio, From: packedOf, FromSays: "site.soil.class", Means: "volume of the spoil trodden down over its volume in the ground", put: func(j *Job, v value) { j.Site.Soil.Packed = measure.Ratio(v.number) }},
		{Path: "site.frost_depth", Kind: Distance, AtMost: deepest, Default: either(`12"`, "300 mm", "IRC 2021 R403.1.4, least depth of footings; the local frost depth governs and the building department gives it"),
			Means: "depth of frost", put: func(j *Job, v value) { j.Site.FrostDepth = v.length }},
		{Path: "site.frost", Kind: Word, Choices: []string{"report", "dig"}, Default: same("report", "IRC 2021 R403.1.4.1 lets small accessory buildings and free-standing decks off; the building department decides"),
			Means: "whether beds must reach frost depth: report says so only, dig digs to it", put: func(j *Job, v value) { j.Site.Frost = v.text }},
		{Path: "site.ground_snow", Kind: Load, Default: either("20 psf", "1.0 kPa", askOffice), Means: "snow load on the ground", put: func(j *Job, v value) { j.Site.GroundSnow = measure.Stress(v.number) }},
		{Path: "site.wind.pressure", Kind: Load, Means: "wind pressure, when it is given in place of a speed", put: func(j *Job, v value) { j.Site.Wind.Pressure = measure.Stress(v.number) }},
		{Path: "site.wind.speed", Kind: Speed, Default: memory(either("115 mph", "51 m/s", "ASCE 7-16 (2016), much of the inland United States, risk category II; the building department gives the figure")),
			When: func(j *Job) bool { return j.Site.Wind.Pressure == 0 }, Whose: "a site whose wind has no pressure given",
			Means: "basic wind speed, strength level", put: func(j *Job, v value) { j.Site.Wind.Speed = measure.Speed(v.number) }},
		{Path: "site.wind.exposure", Kind: Word, Choices: []string{"B", "C", "D"}, Default: memory(same("C", "ASCE 7-16 (2016), open ground: the safer of the two common ones; B is for built-up or wooded places")),
			When: func(j *Job) bool { return j.Site.Wind.Pressure == 0 }, Whose: "a site whose wind has no pressure given",
			Means: "exposure to the wind", put: func(j *Job, v value) { j.Site.Wind.Exposure = v.text }},
		{Path: "site.near.lot_line", Kind: Distance, Means: "distance to the lot line", put: func(j *Job, v value) { j.Site.NearLot = &v.length }},
		{Path: "site.near.building", Kind: Distance, Means: "distance to the next building", put: func(j *Job, v value) { j.Site.NearHouse = &v.length }},
		{Path: "site.has.septic", Kind: Word, Choices: answers, Default: unknown, Means: "a septic tank or field nearby", put: func(j *Job, v value) { j.Site.Septic = v.text }},
		{Path: "site.has.power", Kind: Word, Choices: answers, Default: unknown, Means: "power to the platform", put: func(j *Job, v value) { j.Site.Power = v.text }},
		{Path: "site.has.fill", Kind: Word, Choices: answers, Default: unknown, Means: "made ground under the platform", put: func(j *Job, v value) { j.Site.Fill = v.text }},
	}
}

// timberKeys are the keys of one timber: the job's, or one member's own.
func timberKeys(prefix string, of func(*Job) *Timber, member string) []Key {
	values := func(j *Job) *DesignValues { return of(j).Values }
	stress := func(name, means string, at func(*DesignValues) *measure.Stress) Key {
		return Key{Path: prefix + ".values." + name, Kind: Stress, Required: true, Missing: "write all design values, with their source", Means: means,
			put: func(j *Job, v value) { *at(values(j)) = measure.Stress(v.number) }}
	}
	fallback := func(own Default, job func(*Job) string) func(*Job) Default {
		return func(j *Job) Default {
			if member == "" {
				return own
			}
			return same(job(j), "our own choice: as the job's timber")
		}
	}
	return []Key{
		{Path: prefix + ".species", Kind: Word, Choices: trade.SpeciesNames(), Means: "species" + member, put: func(j *Job, v value) { of(j).Species = v.text }},
		{Path: prefix + ".grade", Kind: Word, Choices: trade.GradeNames(), Means: "grade" + member, put: func(j *Job, v value) { of(j).Grade = v.text }},
		stress("bending", "reference bending value for allowable-stress design", func(d *DesignValues) *measure.Stress { return &d.Bending }),
		stress("shear", "reference shear value", func(d *DesignValues) *measure.Stress { return &d.Shear }),
		stress("bearing_across", "reference bearing value across the grain", func(d *DesignValues) *measure.Stress { return &d.BearingAcross }),
		stress("compression", "reference compression value along the grain", func(d *DesignValues) *measure.Stress { return &d.Compression }),
		stress("elastic", "modulus of elasticity for deflection", func(d *DesignValues) *measure.Stress { return &d.Elastic }),
		stress("elastic_min", "modulus of elasticity for stability", func(d *DesignValues) *measure.Stress { return &d.ElasticMin }),
		{Path: prefix + ".values.source", Kind: Text, Letters: 160, Required: true, Missing: "write where the values stand: document, edition, table", Means: "source of the design values", put: func(j *Job, v value) { values(j).Source = v.text }},
		{Path: prefix + ".incised", Kind: YesNo, From: func(j *Job) Default { return incisedOf(of(j).Species) }, FromSays: "the species", Means: "whether the timber" + member + " was cut into all over (incised) to take the treatment",
			put: func(j *Job, v value) { of(j).Incised = v.yes }},
		{Path: prefix + ".wet", Kind: YesNo, From: fallback(same("yes", "IRC 2021 R507, tables, and NDS 2018 4.1.4: outdoor frames near the ground count as wet, above 19 per cent moisture"), func(j *Job) string { return yesNo(j.Timber.Wet) }),
			FromSays: "outdoor use", Means: "whether the timber" + member + " is wet in service", put: func(j *Job, v value) { of(j).Wet = v.yes }},
		{Path: prefix + ".density", Kind: Density, From: func(j *Job) Default { return densityOf(of(j).Species) }, FromSays: "the species", Means: "density" + member,
			put: func(j *Job, v value) { of(j).Density = measure.Density(v.number) }},
	}
}

func yesNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}
