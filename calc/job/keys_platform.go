package job

import (
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

func jobKeys() []Key {
	return []Key{
		{Path: "name", Kind: Text, Letters: 120, Required: true, Missing: "write a name: name: Garden shed", Means: "name of the job, on every sheet", put: func(j *Job, v value) { j.Name = v.text }},
		{Path: "client", Kind: Text, Letters: 80, Means: "for whom it is built", put: func(j *Job, v value) { j.Client = v.text }},
		{Path: "address", Kind: Text, Letters: 120, Means: "where it is built", put: func(j *Job, v value) { j.Address = v.text }},
		{Path: "revision", Kind: Text, Letters: 40, Default: same("A", "our own choice: the first issue"), Means: "letter of this issue of the binder", put: func(j *Job, v value) { j.Revision = v.text }},
		{Path: "issued", Kind: Date, Means: "date of this issue", put: func(j *Job, v value) { j.Issued = v.text }},
		{Path: "units", Kind: Word, Choices: []string{"imperial", "metric"}, Default: same("imperial", "our own choice: feet and inches unless the job says metric"),
			Means: "how the binder prints", put: func(j *Job, v value) { j.Units = systems[v.text] }},
		{Path: "fraction", Kind: Length, Default: same(`1/16"`, "the finest mark of a builder's tape; "+practice), AtMost: measure.Inch,
			Means: "finest printed mark of imperial lengths", put: func(j *Job, v value) { j.Fraction = v.length }},
		{Path: "pages", Kind: File, Letters: 200, Means: "folder with the shop's own pages", put: func(j *Job, v value) { j.Pages = v.text }},
	}
}

var systems = map[string]measure.System{"imperial": measure.Imperial, "metric": measure.Metric}

// Bounds of a platform that this kind of frame is meant for; they also keep a
// slip of the unit from asking for a million joists.
const (
	longestSide = 60 * measure.Metre
	leastSide   = 600 * measure.Millimetre
	leastStep   = 100 * measure.Millimetre
	thickest    = 600 * measure.Millimetre
	deepest     = 5 * measure.Metre
)

// wherePossible stands behind what is tried unless the job says that the place
// does not allow it.
const wherePossible = "our own choice: tried for what it would save; the place decides"

func platformKeys() []Key {
	return append([]Key{
		{Path: "platform.length", Kind: Length, Required: true, AtLeast: leastSide, AtMost: longestSide, Missing: "write the length along the beams, such as 16' or 4.8 m",
			Means: "length along the beams, outside faces of the frame", put: func(j *Job, v value) { j.Platform.Length = v.length }},
		{Path: "platform.width", Kind: Length, Required: true, AtLeast: leastSide, AtMost: longestSide, Missing: "write the width across the beams, such as 12' or 3.6 m",
			Means: "width along the joists, outside faces of the frame", put: func(j *Job, v value) { j.Platform.Width = v.length }},
		{Path: "platform.use", Kind: Word, Choices: UseNames(), Means: "use, which sets the floor load", put: func(j *Job, v value) { j.Platform.Use = v.text }},
		{Path: "platform.floor_load", Kind: Stress, Required: true, From: floorLoadOf, FromSays: "platform.use", Missing: "write platform.use, such as use: garden_room, or a floor_load such as 50 psf",
			Means: "live load of the floor", put: func(j *Job, v value) { j.Platform.FloorLoad = measure.Stress(v.number) }},
		{Path: "platform.floor.height", Kind: Height, Choices: []string{"lowest"}, Default: same("lowest", "our own choice: as low as the ground lets it, with the least timber and the lowest step"),
			Means: "top of the surface over the bench mark, or lowest", put: func(j *Job, v value) {
				j.Platform.Floor.Lowest, j.Platform.Floor.Height = v.word == "lowest", v.length
			}},
		{Path: "platform.floor.round_up", Kind: Distance, Default: same("0", "our own choice: the lowest whole mark"), When: func(j *Job) bool { return j.Platform.Floor.Lowest }, Whose: "a floor whose height is lowest", AtMost: measure.Metre,
			Means: "step that the lowest floor is rounded up to", put: func(j *Job, v value) { j.Platform.Floor.RoundUp = v.length }},
		{Path: "platform.floor.room", Kind: Distance, Default: either(`1"`, "25 mm", "our own limit: what a seat may come out higher or lower on site"), AtMost: 300 * measure.Millimetre,
			Means: "room of the seats at the shortest and the longest post; it lifts a lowest floor", put: func(j *Job, v value) { j.Platform.Floor.Room = v.length }},
		{Path: "platform.origin.corner", Kind: Text, Letters: 80, Default: same("where the tape hooks on", "our own wording: the job does not say which corner A1 is"), Means: "the corner beside A1, in words", put: func(j *Job, v value) { j.Platform.Origin.Corner = v.text }},
		{Path: "platform.origin.lines_go", Kind: Word, Choices: []string{"left", "right"}, Default: same("left", "our own choice: the job does not say"),
			Means: "hand on which line B lies, standing at A1 and facing along line A", put: func(j *Job, v value) { j.Platform.Origin.LinesGo = v.text }},
		{Path: "platform.freedom.turn", Kind: Count, Least: 0, Most: 45, Default: same("15", wherePossible), Means: "degrees that the place lets the platform be turned either way", put: func(j *Job, v value) { j.Platform.Freedom.Turn = v.count }},
		{Path: "platform.freedom.along", Kind: Distance, AtMost: longestSide, Default: either(`1'`, "300 mm", wherePossible), Means: "how far the place lets it be shifted along the lines, either way", put: func(j *Job, v value) { j.Platform.Freedom.Along = v.length }},
		{Path: "platform.freedom.across", Kind: Distance, AtMost: longestSide, Default: either(`1'`, "300 mm", wherePossible), Means: "how far the place lets it be shifted across the lines, either way", put: func(j *Job, v value) { j.Platform.Freedom.Across = v.length }},
		{Path: "platform.freedom.exchange", Kind: YesNo, Default: same("yes", wherePossible), Means: "whether length and width may change places", put: func(j *Job, v value) { j.Platform.Freedom.Exchange = v.yes }},
		{Path: "platform.door.side", Kind: Text, Letters: 40, Required: true, Missing: "write the side by its line or its row of piers: A, or 1", Means: "side of the door: a line's letter, or the number of a row of piers",
			put: func(j *Job, v value) { j.Platform.Door.Side = v.text }},
		{Path: "platform.door.from_1", Kind: Distance, Required: true, AtMost: longestSide, Missing: "write how far the door is from the corner at pier 1, or at line A",
			Means: "door's nearer edge from the corner at pier 1, or at line A", put: func(j *Job, v value) { j.Platform.Door.From1 = v.length }},
		{Path: "platform.door.width", Kind: Length, Default: either(`3'`, "900 mm", practice), AtMost: longestSide, Means: "width of the door", put: func(j *Job, v value) { j.Platform.Door.Width = v.length }},
	}, surfaceKeys()...)
}

const (
	panelSheet  = "PS 1-09 (2009), single-floor plywood: 23/32 panels are rated 24 in on centre, tongue-and-groove faces 47 1/2 in, lengths sized for spacing 95 7/8 in"
	panelGap    = "APA Engineered Wood Construction Guide, Form E30V (2011) p. 33: 1/8 in at all edges and ends"
	metricPanel = "common practice, no source: 22 mm tongue-and-groove floor panels, 2400 x 600 mm"
)

// metric gives a default another source for its metric value.
func metric(d Default, source string) Default { d.MetricSource = source; return d }

func surfaceKeys() []Key {
	panels := func(j *Job) bool { return j.Platform.Surface.Kind == "panels" }
	boards := func(j *Job) bool { return j.Platform.Surface.Kind == "boards" }
	byKind := func(panels, boards Default) func(*Job) Default {
		return func(j *Job) Default {
			if j.Platform.Surface.Kind == "boards" {
				return boards
			}
			return panels
		}
	}
	return []Key{
		{Path: "platform.surface.kind", Kind: Word, Choices: []string{"panels", "boards"}, From: surfaceByUse, FromSays: "platform.use", Means: "panels or boards", put: func(j *Job, v value) { j.Platform.Surface.Kind = v.text }},
		{Path: "platform.surface.thickness", Kind: Length, AtMost: thickest, FromSays: "platform.surface.kind",
			From:  byKind(metric(either(`23/32"`, "22 mm", panelSheet), metricPanel), metricPractice(either(`1"`, "28 mm", "PS 20-15 (2015): 5/4 decking dressed dry"))),
			Means: "thickness of the surface", put: func(j *Job, v value) { j.Platform.Surface.Thickness = v.length }},
		{Path: "platform.surface.gap", Kind: Distance, AtMost: measure.Inch, FromSays: "platform.surface.kind",
			From:  byKind(either(`1/8"`, "3 mm", panelGap), metricPractice(memory(either(`1/8"`, "5 mm", "AWC DCA 6 (2015), decking note")))),
			Means: "gap between panels or boards", put: func(j *Job, v value) { j.Platform.Surface.Gap = v.length }},
		{Path: ratingPath, Kind: Count, Least: 8, Most: 60, When: panels, Whose: "panels", From: ratingOf, FromSays: "platform.surface.thickness",
			Means: "greatest joist spacing of the panels, in inches", put: func(j *Job, v value) { j.Platform.Surface.SpanRating = v.count }},
		{Path: "platform.surface.edge", Kind: Word, Choices: []string{"tongue_and_groove", "square"}, When: panels, Whose: "panels", Default: metric(same("tongue_and_groove", panelSheet), metricPanel),
			Means: "long edges of the panels", put: func(j *Job, v value) { j.Platform.Surface.Edge = v.text }},
		{Path: "platform.surface.face.length", Kind: Length, AtLeast: leastStep, AtMost: longestSide, When: panels, Whose: "panels", Default: metric(either(`95 7/8"`, "2400 mm", panelSheet), metricPanel),
			Means: "length of a panel's face, along the strength axis", put: func(j *Job, v value) { j.Platform.Surface.FaceLength = v.length }},
		{Path: "platform.surface.face.width", Kind: Length, AtLeast: leastStep, AtMost: longestSide, When: panels, Whose: "panels", Default: metric(either(`47 1/2"`, "600 mm", panelSheet), metricPanel),
			Means: "width of a panel's face, without the tongue", put: func(j *Job, v value) { j.Platform.Surface.FaceWidth = v.length }},
		{Path: "platform.surface.width", Kind: Length, AtLeast: measure.Inch, AtMost: thickest, When: boards, Whose: "boards", Default: metricPractice(either(`5 1/2"`, "120 mm", "PS 20-15 (2015): 5/4x6 decking dressed dry")),
			Means: "width of a board", put: func(j *Job, v value) { j.Platform.Surface.BoardWidth = v.length }},
		{Path: "platform.surface.species", Kind: Word, Choices: trade.SpeciesNames(), When: boards, Whose: "boards", Means: "species of the boards, when not as the frame", put: func(j *Job, v value) { j.Platform.Surface.Species = v.text }},
		{Path: "platform.surface.grade", Kind: Word, Choices: trade.GradeNames(), When: boards, Whose: "boards", Means: "grade of the boards, when not as the frame", put: func(j *Job, v value) { j.Platform.Surface.Grade = v.text }},
		{Path: "platform.surface.density", Kind: Density, FromSays: "platform.surface.kind", From: surfaceDensity,
			Means: "density of the surface", put: func(j *Job, v value) { j.Platform.Surface.Density = measure.Density(v.number) }},
	}
}

func surfaceByUse(j *Job) Default {
	if j.Platform.Use == "deck" || j.Platform.Use == "public_terrace" {
		return same("boards", practice+": an open deck drains between boards")
	}
	return same("panels", practice+": a floor under a roof")
}

func surfaceDensity(j *Job) Default {
	if j.Platform.Surface.Kind != "boards" {
		return either("36 pcf", "577 kg/m3", "HUD Residential Structural Design Guide (2000) Table 3.3: plywood and OSB 36 pcf")
	}
	if j.Platform.Surface.Species != "" {
		return densityOf(j.Platform.Surface.Species)
	}
	return densityOf(j.Timber.Species)
}

func buildingKeys() []Key {
	return []Key{
		{Path: "building.weight.least", Kind: Force, FromSays: "the use and the floor area", From: leastWeight, Means: "least weight of the building, for uplift and sliding",
			put: func(j *Job, v value) { j.Building.WeightLeast = measure.Force(v.number) }},
		{Path: "building.weight.most", Kind: Force, FromSays: "the use and the floor area", From: mostWeight, Means: "greatest weight of the building, for all that carries it",
			put: func(j *Job, v value) { j.Building.WeightMost = measure.Force(v.number) }},
		{Path: "building.wall_height", Kind: Length, AtMost: 10 * measure.Metre, Default: either(`7'`, "2.1 m", practice), Means: "height of the walls", put: func(j *Job, v value) { j.Building.WallHeight = v.length }},
		{Path: "building.roof.shape", Kind: Word, Choices: []string{"gable", "shed", "hip", "flat"}, Default: same("gable", practice), Means: "shape of the roof", put: func(j *Job, v value) { j.Building.Roof.Shape = v.text }},
		{Path: "building.roof.eaves", Kind: Word, Choices: []string{"along_length", "along_width"}, Default: same("along_length", practice), Means: "sides that the eaves run along", put: func(j *Job, v value) { j.Building.Roof.Eaves = v.text }},
		{Path: "building.roof.overhang", Kind: Distance, AtMost: 3 * measure.Metre, Default: either(`6"`, "150 mm", practice), Means: "overhang of the roof beyond the walls", put: func(j *Job, v value) { j.Building.Roof.Overhang = v.length }},
		{Path: "building.roof.rise", Kind: Distance, AtMost: 10 * measure.Metre, Default: either(`3'`, "900 mm", practice), Means: "rise of the roof from eaves to ridge", put: func(j *Job, v value) { j.Building.Roof.Rise = v.length }},
		{Path: "building.enclosure", Kind: Word, Choices: []string{"enclosed", "partly_enclosed", "open"}, Default: same("enclosed", practice), Means: "how the walls meet the wind", put: func(j *Job, v value) { j.Building.Enclosure = v.text }},
	}
}
