package job

import (
	"pierbook/calc/measure"
)

// readingUnits are the units that a block of readings may name once.
var readingUnits = map[string]measure.Length{"mm": measure.Millimetre, "cm": 10 * measure.Millimetre, "m": measure.Metre, "in": measure.Inch, "ft": measure.Foot}

var readingUnitNames = []string{"mm", "cm", "m", "in", "ft"}

func unitKey(path string) Key {
	return Key{Path: path, Kind: Word, Choices: readingUnitNames, Means: "unit of the lengths in this block that have none", put: func(j *Job, v value) {
		if path == "ground.unit" {
			j.Ground.Unit = v.text
		}
	}}
}

func groundKeys() []Key {
	return []Key{
		unitKey("ground.unit"),
		{Path: "ground.instrument.kind", Kind: Word, Choices: []string{"rotary_laser", "line_laser", "builders_level", "water_level", "string_level"}, Default: same("rotary_laser", practice),
			Means: "what the heights are read with", put: func(j *Job, v value) { j.Ground.Instrument.Kind = v.text }},
		{Path: "ground.instrument.error", Kind: Accuracy, From: accuracyOf, FromSays: "ground.instrument.kind", Means: "how far the instrument may be off over a distance",
			put: func(j *Job, v value) { j.Ground.Instrument.Error, j.Ground.Instrument.Over = v.length, v.over }},
		{Path: "ground.instrument.reads", Kind: Word, Choices: []string{"feet_inches", "tenths", "millimetres"}, Default: either("feet_inches", "millimetres", "our own choice: as the binder prints"), Means: "how the rod is marked", put: func(j *Job, v value) { j.Ground.Instrument.Reads = v.text }},
		pegKey("middle_a", "reading on peg A from the middle between the pegs", func(p *PegReadings) *measure.Length { return &p.MiddleA }),
		pegKey("middle_b", "reading on peg B from the middle between the pegs", func(p *PegReadings) *measure.Length { return &p.MiddleB }),
		pegKey("near_a", "reading on peg A from the second stand, near it", func(p *PegReadings) *measure.Length { return &p.NearA }),
		pegKey("far_b", "reading on peg B from the second stand", func(p *PegReadings) *measure.Length { return &p.FarB }),
		{Path: "ground.instrument.pegs.to_a", Kind: Distance, Default: same("0", "our own choice: the second stand is close to peg A"), Means: "distance of the second stand from peg A", put: func(j *Job, v value) { j.Ground.Instrument.Pegs.ToA = v.length }},
		{Path: "ground.instrument.pegs.to_b", Kind: Length, Required: true, Missing: "write the distance of the second stand from peg B", Means: "distance of the second stand from peg B", put: func(j *Job, v value) { j.Ground.Instrument.Pegs.ToB = v.length }},
		{Path: "ground.instrument.wall.distance", Kind: Length, Required: true, Missing: "write the distance of the wall", Means: "distance of the wall that the tool was turned about before", put: func(j *Job, v value) { j.Ground.Instrument.Wall.Distance = v.length }},
		{Path: "ground.instrument.wall.gap", Kind: Distance, Required: true, Missing: "write the height between the two marks", Means: "height between the marks before and after the tool was turned half round", put: func(j *Job, v value) { j.Ground.Instrument.Wall.Gap = v.length }},
		{Path: "ground.instrument.wall.across", Kind: Distance, Means: "the same with the tool turned a quarter first", put: func(j *Job, v value) { j.Ground.Instrument.Wall.Across = &v.length }},
		{Path: "ground.instrument.ends", Kind: Distance, Means: "height between the water at both ends of the tube, held side by side", put: func(j *Job, v value) { j.Ground.Instrument.Ends = &v.length }},
		{Path: "ground.bench_mark.where", Kind: Text, Letters: 120, Default: same("not chosen yet", "our own wording: the job does not say"), Means: "the bench mark, in words", put: func(j *Job, v value) { j.Ground.BenchMark.Where = v.text }},
		{Path: "ground.bench_mark.height", Kind: Height, Default: same("0", "our own choice: all heights count from the bench mark"), Means: "height of the bench mark", put: func(j *Job, v value) { j.Ground.BenchMark.Height = v.length }},
		{Path: "ground.spots.*", Stars: []string{"spot"}, Kind: SpotAt, Choices: []string{"turning_point"}, Means: "a spot that is no pier: its place, a further bench mark with its known height, or a turning point", put: func(j *Job, v value) {
			v.spot.TurningPoint = v.word == "turning_point"
			j.Ground.Spots = with(j.Ground.Spots, v.names[0], v.spot)
		}},
		{Path: "ground.sights", Kind: Sights, Means: "rod readings, one list for each set-up", put: func(j *Job, v value) { j.Ground.SetUps = v.setUps }},
		{Path: "ground.probes.*.depth", Stars: []string{"pier"}, Kind: Distance, AtMost: deepest, Required: true, Missing: "write the depth at which the bar stopped", Means: "depth of firm ground at this pier", put: func(j *Job, v value) {
			p := j.Ground.Probes[v.names[0]]
			p.Depth = v.length
			j.Ground.Probes = with(j.Ground.Probes, v.names[0], p)
		}},
		{Path: "ground.probes.*.found", Stars: []string{"pier"}, Kind: Word, Choices: foundWords, Required: true, Missing: "write firm, rock or water", Means: "what the bar met at this pier", put: func(j *Job, v value) {
			p := j.Ground.Probes[v.names[0]]
			p.Found = v.text
			j.Ground.Probes = with(j.Ground.Probes, v.names[0], p)
		}},
		{Path: "ground.close_to", Kind: Length, AtMost: measure.Foot, Default: either(`3/16"`, "5 mm", "derived: two readings a set-up of standard deviation 1/16 in, two standard deviations; near the 5 mm root-N of building surveys"),
			Means: "misclosure allowed for one set-up; times the root of their number", put: func(j *Job, v value) { j.Ground.CloseTo = v.length }},
	}
}

// pegKey is the key of one reading of the check on two pegs.
func pegKey(name, means string, at func(*PegReadings) *measure.Length) Key {
	return Key{Path: "ground.instrument.pegs." + name, Kind: Reading, Required: true, Missing: "write the four readings on the two pegs",
		Means: means, put: func(j *Job, v value) { *at(j.Ground.Instrument.Pegs) = v.length }}
}

// accuracyOf returns what makers of each instrument commonly promise.
func accuracyOf(j *Job) Default {
	switch j.Ground.Instrument.Kind {
	case "line_laser":
		return either(`1/8" in 32'`, "3 mm in 10 m", practice+": 0.3 mm in a metre")
	case "water_level":
		return memory(either(`1/8" in 100'`, "3 mm in 30 m", practice+": a water level without air in the tube"))
	case "string_level":
		return memory(either(`1/2" in 20'`, "12 mm in 6 m", practice))
	}
	return memory(either(`1/8" in 100'`, "3 mm in 30 m", practice+": the maker's sheet decides"))
}

func measuredKeys() []Key {
	reading := func(path, star, means string, at func(*Job) *map[string]measure.Length) Key {
		return Key{Path: path + ".*", Stars: []string{star}, Kind: Reading, Means: means, put: func(j *Job, v value) { *at(j) = with(*at(j), v.names[0], v.length) }}
	}
	length := func(path, star, means string, at func(*Job) *map[string]measure.Length) Key {
		k := reading(path, star, means, at)
		k.Kind, k.AtMost = Length, 2*longestSide
		return k
	}
	hole := func(j *Job, name string, change func(*Probe)) {
		p := j.Measured.Holes[name]
		change(&p)
		j.Measured.Holes = with(j.Measured.Holes, name, p)
	}
	return []Key{
		unitKey("measured.unit"),
		unitKey("measured.strings.unit"),
		length("measured.strings", "side", "side or diagonal of the strings", func(j *Job) *map[string]measure.Length { return &j.Measured.Strings }),
		unitKey("measured.frame.unit"),
		length("measured.frame", "side", "side or diagonal of the frame", func(j *Job) *map[string]measure.Length { return &j.Measured.FrameSides }),
		length("measured.timber.beams", "line", "depth of the beam of this line", func(j *Job) *map[string]measure.Length { return &j.Measured.Timber.Beams }),
		{Path: "measured.timber.joists", Kind: Length, AtMost: thickest, Means: "depth of the joists as delivered", put: func(j *Job, v value) { j.Measured.Timber.Joists = &v.length }},
		unitKey("measured.holes.unit"),
		{Path: "measured.holes.*.depth", Stars: []string{"pier"}, Kind: Distance, AtMost: deepest, Required: true, Missing: "write the depth of the hole", Means: "depth of the hole as dug", put: func(j *Job, v value) {
			hole(j, v.names[0], func(p *Probe) { p.Depth = v.length })
		}},
		{Path: "measured.holes.*.found", Stars: []string{"pier"}, Kind: Word, Choices: foundWords, Required: true, Missing: "write firm, rock or water", Means: "what the hole ends in", put: func(j *Job, v value) {
			hole(j, v.names[0], func(p *Probe) { p.Found = v.text })
		}},
		unitKey("measured.seats.unit"),
		reading("measured.seats", "reading", "rod reading in the seat", func(j *Job) *map[string]measure.Length { return &j.Measured.Seats }),
		unitKey("measured.posts_cut.unit"),
		length("measured.posts_cut", "pier", "length of the post as cut", func(j *Job) *map[string]measure.Length { return &j.Measured.PostsCut }),
		{Path: "measured.stock.*", Stars: []string{"size"}, Kind: Lengths, Means: "sticks and offcuts in hand", put: func(j *Job, v value) { j.Measured.Stock = with(j.Measured.Stock, v.names[0], v.lengths) }},
		{Path: "measured.delivered.*", Stars: []string{"good"}, Kind: Goods, Means: "what has come: sticks of a size, or how many of a line of the order, such as block; it leaves the order", put: func(j *Job, v value) {
			j.Measured.Delivered = with(j.Measured.Delivered, v.names[0], Delivery{Sticks: v.lengths, Count: v.count})
		}},
		unitKey("measured.finished.unit"),
		reading("measured.finished", "reading", "rod reading on the finished floor", func(j *Job) *map[string]measure.Length { return &j.Measured.Finished }),
		{Path: "measured.hours.*", Stars: []string{"step"}, Kind: Hours, Means: "hours that the step took", put: func(j *Job, v value) { j.Measured.Hours = with(j.Measured.Hours, v.names[0], measure.Hours(v.number)) }},
	}
}
