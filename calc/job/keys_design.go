package job

import "pierbook/calc/measure"

// Design holds the limits that the strength checks keep to.
type Design struct {
	LiveLimit, TotalLimit int            // deflection: the span over these
	BracedAbove           measure.Length // post from which it is braced both ways
	NotSizedAbove         measure.Length // block and post together, from which an engineer sizes the pier
	StoneBearing          measure.Stress // what the compacted bed may carry
	RiskCategory          string         // I to IV
	Editions              string         // of the standards that the checks follow
}

// PatchLoad is a heavy thing at a place of the floor: a stove, a tank.
type PatchLoad struct {
	X, Y, Length, Width measure.Length // its corner next to the origin, and its size along x and y
	Load                measure.Force
}

// Wall is a wall of the building that is given by itself.
type Wall struct {
	Runs         string // "along_length" or "along_width"
	At, From, To measure.Length
	Roof         bool // it carries the roof
}

func designKeys() []Key {
	return []Key{
		{Path: "design.live_deflection", Kind: Count, Least: 120, Most: 1000, Default: same("360", "IRC 2021 R301.7, floors"), Means: "deflection under live load: at most the span over this", put: func(j *Job, v value) { j.Design.LiveLimit = v.count }},
		{Path: "design.total_deflection", Kind: Count, Least: 120, Most: 1000, Default: same("240", "IRC 2021 R301.7, as printed with floor tables"), Means: "lasting and live deflection: at most the span over this", put: func(j *Job, v value) { j.Design.TotalLimit = v.count }},
		{Path: "design.braced_above", Kind: Length, AtMost: deepest, Default: either(`24"`, "600 mm", practice), Means: "post above which bracing is wanted both ways", put: func(j *Job, v value) { j.Design.BracedAbove = v.length }},
		{Path: "design.not_sized_above", Kind: Length, AtMost: deepest, Default: either(`36"`, "900 mm", "24 CFR 3285.306 (2015): single stacks of blocks end at 36 in"), Means: "block and post above which an engineer sizes the pier", put: func(j *Job, v value) { j.Design.NotSizedAbove = v.length }},
		{Path: "design.stone_bearing", Kind: Stress, Default: either("3000 psf", "143 kPa", "IBC 2012 Table 1806.2, gravel"), Means: "pressure the compacted bed may carry", put: func(j *Job, v value) { j.Design.StoneBearing = measure.Stress(v.number) }},
		{Path: "design.risk_category", Kind: Word, Choices: []string{"I", "II", "III", "IV"}, Default: memory(same("II", "ASCE 7-16 Table 1.5-1: buildings that are none of the others")), Means: "risk category: raises the snow; the wind speed is given for it", put: func(j *Job, v value) { j.Design.RiskCategory = v.text }},
		{Path: "design.editions", Kind: Word, Choices: []string{"NDS 2018, ASCE 7-16, IRC 2021"}, Default: same("NDS 2018, ASCE 7-16, IRC 2021", "our own choice: the editions of the tables here; the adopted local code governs"), Means: "editions of the standards that the checks follow", put: func(j *Job, v value) { j.Design.Editions = v.text }},
	}
}

// patchKeys are the keys of heavy things on the floor.
func patchKeys() []Key {
	star := []string{"spot"}
	put := func(change func(*PatchLoad, value)) func(*Job, value) {
		return func(j *Job, v value) {
			p := j.Platform.Loads[v.names[0]]
			change(&p, v)
			j.Platform.Loads = with(j.Platform.Loads, v.names[0], p)
		}
	}
	return []Key{
		{Path: "platform.loads.*.x", Stars: star, Kind: Distance, Required: true, AtMost: longestSide, Missing: "write how far its nearer end is from the frame end by A1", Means: "nearer end of this load, along the beams", put: put(func(p *PatchLoad, v value) { p.X = v.length })},
		{Path: "platform.loads.*.y", Stars: star, Kind: Distance, Required: true, AtMost: longestSide, Missing: "write how far its nearer side is from the side of line A", Means: "nearer side of this load, across the beams", put: put(func(p *PatchLoad, v value) { p.Y = v.length })},
		{Path: "platform.loads.*.length", Stars: star, Kind: Length, Required: true, AtMost: longestSide, Missing: "write its size along the beams", Means: "size of this load along the beams", put: put(func(p *PatchLoad, v value) { p.Length = v.length })},
		{Path: "platform.loads.*.width", Stars: star, Kind: Length, Required: true, AtMost: longestSide, Missing: "write its size across the beams", Means: "size of this load across the beams", put: put(func(p *PatchLoad, v value) { p.Width = v.length })},
		{Path: "platform.loads.*.load", Stars: star, Kind: Force, Required: true, Missing: "write its weight, such as 600 lb or 2.7 kN", Means: "weight of this load at its heaviest", put: put(func(p *PatchLoad, v value) { p.Load = measure.Force(v.number) })},
	}
}

// wallKeys are the keys of walls that are not the four outer ones.
func wallKeys() []Key {
	star := []string{"spot"}
	put := func(change func(*Wall, value)) func(*Job, value) {
		return func(j *Job, v value) {
			w := j.Building.Walls[v.names[0]]
			change(&w, v)
			j.Building.Walls = with(j.Building.Walls, v.names[0], w)
		}
	}
	return []Key{
		{Path: "building.walls.*.runs", Stars: star, Kind: Word, Choices: []string{"along_length", "along_width"}, Required: true, Missing: "write along_length or along_width", Means: "which way this wall runs; without walls of its own a building has four outer ones", put: put(func(w *Wall, v value) { w.Runs = v.text })},
		{Path: "building.walls.*.at", Stars: star, Kind: Distance, Required: true, AtMost: longestSide, Missing: "write how far its middle is from the side of line A, or from the end by A1", Means: "middle of this wall, from the side of line A or from the end by A1", put: put(func(w *Wall, v value) { w.At = v.length })},
		{Path: "building.walls.*.from", Stars: star, Kind: Distance, Required: true, AtMost: longestSide, Missing: "write where it begins", Means: "where this wall begins", put: put(func(w *Wall, v value) { w.From = v.length })},
		{Path: "building.walls.*.to", Stars: star, Kind: Length, Required: true, AtMost: longestSide, Missing: "write where it ends", Means: "where this wall ends", put: put(func(w *Wall, v value) { w.To = v.length })},
		{Path: "building.walls.*.roof", Stars: star, Kind: YesNo, Means: "whether this wall carries the roof; no when left out", put: put(func(w *Wall, v value) { w.Roof = v.yes })},
	}
}
