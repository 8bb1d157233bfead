package job

import (
	"slices"
	"strconv"

	"pierbook/calc/measure"
)

// sectionKeys are the keys of one member's cross-section.
func sectionKeys(prefix, member string, of func(*Job) *Section, size func(*Job) Default) []Key {
	bySize := func(j *Job) bool { return of(j).Size != "" || of(j).Pick || of(j).Width == 0 && of(j).Depth == 0 }
	timber := func(j *Job) *Timber { return of(j).Timber }
	return append([]Key{
		{Path: prefix + ".width", Kind: Length, AtMost: thickest, Means: "width of the " + member + ", of one ply, when no size is given", put: func(j *Job, v value) { of(j).Width = v.length }},
		{Path: prefix + ".depth", Kind: Length, AtMost: thickest, Means: "depth of the " + member + ", when no size is given", put: func(j *Job, v value) { of(j).Depth = v.length }},
		{Path: prefix + ".size", Kind: Size, Choices: []string{"pick"}, When: bySize, Whose: "a member without width and depth of its own", From: size, FromSays: "the system of units",
			Means: "size of the " + member + "; pick lets the program choose", put: func(j *Job, v value) { of(j).take(v) }},
		{Path: prefix + ".plies", Kind: Count, Least: 1, Most: 4, Default: same("1", "our own choice: one piece unless built up"), Means: "plies of the " + member, put: func(j *Job, v value) { of(j).Plies = v.count }},
	}, timberKeys(prefix+".timber", timber, " of the "+member)...)
}

// take sets the size of s and keeps its plies and timber.
func (s *Section) take(v value) {
	s.Pick, s.Size, s.Width, s.Depth = v.word == "pick", v.size.Size, v.size.Width, v.size.Depth
}

// shortestReason is why a post is no shorter: what pulls at the cap's screws pulls
// towards the post's top.
//
//	(10 + 5) × 0.164 in = 2.46 in, and 1/2 in for where the cap has its holes
const shortestReason = "derived: a cap's screws of 0.164 in, in bored holes, want 10 diameters of wood over them and 5 under them (AWC, NDS Commentary (2018), Table C12.1.6.6), 2 1/2 in, and 1/2 in is for where the cap has its holes; a shorter one splits"

func frameKeys() []Key {
	joists := func(j *Job) *Section { return &j.Frame.Joists.Section }
	beams := func(j *Job) *Section { return &j.Frame.Beams.Section }
	posts := func(j *Job) *Section { return &j.Frame.Posts.Section }
	rims := func(j *Job) *Section { return &j.Frame.Rims }
	fixed := func(d Default) func(*Job) Default { return func(*Job) Default { return d } }
	spaced := func(j *Job) bool { return j.Frame.Piers.Spacing == 0 }
	return slices.Concat(
		sectionKeys("frame.joists", "joists", joists, fixed(either("2x6", "45x145 mm", practice))),
		[]Key{
			{Path: "frame.joists.spacing", Kind: Length, Choices: []string{"pick"}, AtLeast: leastStep, AtMost: 2 * measure.Metre, Default: either(`16"`, "400 mm", "joists under panels: "+practice),
				Means: "spacing of the joists, centre to centre; pick lets the program choose", put: func(j *Job, v value) { j.Frame.Joists.Spacing = v.length }},
			{Path: "frame.joists.sit", Kind: Word, Choices: []string{"on_beams", "between_beams"}, Default: same("on_beams", practice), Means: "whether the joists sit on the beams or between them", put: func(j *Job, v value) { j.Frame.Joists.Sit = v.text }},
		},
		sectionKeys("frame.rims", "rims", rims, rimSize),
		sectionKeys("frame.beams", "beams", beams, fixed(either("4x6", "95x145 mm", practice))),
		[]Key{
			{Path: "frame.beams.lines", Kind: Count, Choices: []string{"pick"}, Least: 2, Most: 24, From: linesOf, FromSays: "platform.width", Means: "beam lines; pick lets the program choose", put: func(j *Job, v value) { j.Frame.Beams.Lines = v.count }},
			{Path: "frame.beams.inset", Kind: Distance, AtMost: longestSide, Default: same("0", practice), Means: "outer face of the first and last beam to the side of the frame", put: func(j *Job, v value) { j.Frame.Beams.Inset = v.length }},
			{Path: "frame.beams.set_back", Kind: Distance, AtMost: longestSide, Default: same("0", practice), Means: "beam end to the end of the frame", put: func(j *Job, v value) { j.Frame.Beams.SetBack = v.length }},
		},
		sectionKeys("frame.posts", "posts", posts, fixed(either("4x4", "95x95 mm", practice))),
		[]Key{
			{Path: "frame.posts.shortest", Kind: Length, AtMost: deepest, Default: memory(either(`3"`, "75 mm", shortestReason)), Means: "shortest post", put: func(j *Job, v value) { j.Frame.Posts.Shortest = v.length }},
			{Path: "frame.posts.longest", Kind: Length, AtMost: deepest, Default: memory(either(`24"`, "600 mm", "AWC DCA 6 (2015), post requirements: corner posts over 2 ft are braced")), Means: "longest post", put: func(j *Job, v value) { j.Frame.Posts.Longest = v.length }},
			{Path: "frame.posts.cap", Kind: Distance, AtMost: thickest, Default: either(`1/16"`, "2 mm", practice), Means: "what the cap adds between post and beam", put: func(j *Job, v value) { j.Frame.Posts.Cap = v.length }},
			{Path: "frame.piers.spacing", Kind: Length, AtLeast: leastStep * 3, AtMost: longestSide, Means: "greatest spacing of piers under a line, in place of per_line", put: func(j *Job, v value) { j.Frame.Piers.Spacing = v.length }},
			{Path: "frame.piers.per_line", Kind: Count, Choices: []string{"pick"}, Least: 2, Most: 60, When: spaced, Whose: "piers without a spacing", From: perLineOf, FromSays: "platform.length", Means: "piers under each line; pick lets the program choose", put: func(j *Job, v value) { j.Frame.Piers.PerLine = v.count }},
			{Path: "frame.piers.first", Kind: Distance, AtMost: longestSide, Means: "first pier's centre from the beam end; half a post when left out", put: func(j *Job, v value) { j.Frame.Piers.First = &v.length }},
			{Path: "frame.piers.last", Kind: Distance, AtMost: longestSide, Means: "last pier's centre from the beam end; half a post when left out", put: func(j *Job, v value) { j.Frame.Piers.Last = &v.length }},
			{Path: "frame.clear", Kind: Distance, AtMost: deepest, Default: either(`1"`, "25 mm", practice+"; beams under 12 in and joists under 18 in above the ground must be treated, IRC 2021 R317.1"), Means: "least gap from the ground to the underside of a beam", put: func(j *Job, v value) { j.Frame.Clear = v.length }},
		})
}

// rimSize makes the rims as the joists that end at them.
func rimSize(j *Job) Default {
	if j.Frame.Joists.Pick || j.Frame.Joists.Size == "" {
		return same("pick", "our own choice: as the joists")
	}
	return same(j.Frame.Joists.Size, "our own choice: as the joists")
}

// linesOf keeps joist spans at 6 ft or less, perLineOf piers at 4 ft or less.
func linesOf(j *Job) Default {
	return same(steps(j.Platform.Width, 6*measure.Foot), "joists spanning about 6 ft; "+practice)
}

func perLineOf(j *Job) Default {
	return same(steps(j.Platform.Length, 4*measure.Foot), "piers about 4 ft apart; "+practice)
}

// steps returns the marks of the fewest equal steps of at most step.
func steps(length, step measure.Length) string {
	if length <= 0 {
		return ""
	}
	return strconv.Itoa(max(2, int((length+step-1)/step)+1))
}

func blockKeys() []Key {
	bought := practice + ": measure the blocks that are bought"
	return []Key{
		{Path: "block.height", Kind: Length, AtMost: deepest, Default: either(`5"`, "125 mm", bought), Means: "height of the pier block", put: func(j *Job, v value) { j.Block.Height = v.length }},
		{Path: "block.seat_height", Kind: Length, AtMost: deepest, From: func(j *Job) Default { return same(j.Block.Height.String(), "our own choice: as the block's height") }, FromSays: "block.height", Means: "from the block's underside to where the post stands", put: func(j *Job, v value) { j.Block.SeatHeight = v.length }},
		{Path: "block.seat_width", Kind: Length, AtMost: deepest, Default: either(`3 1/2"`, "95 mm", bought), Means: "width of the seat", put: func(j *Job, v value) { j.Block.SeatWidth = v.length }},
		{Path: "block.base", Kind: Length, AtLeast: measure.Inch, AtMost: deepest, Default: either(`12"`, "300 mm", bought), Means: "side of the block's base", put: func(j *Job, v value) { j.Block.Base = v.length }},
		{Path: "block.weight", Kind: Mass, Default: either("48 lb", "22 kg", bought), Means: "weight of a block", put: func(j *Job, v value) { j.Block.Weight = measure.Mass(v.number) }},
		{Path: "block.rated_load", Kind: Force, Means: "load the maker rates the block for", put: func(j *Job, v value) { j.Block.RatedLoad = measure.Force(v.number) }},

		{Path: "stone.kind", Kind: Word, Choices: []string{"dense_graded", "open_graded"}, Default: same("dense_graded", "crushed, angular, with fines for a locked base; "+practice), Means: "kind of crushed stone", put: func(j *Job, v value) { j.Stone.Kind = v.text }},
		{Path: "stone.least", Kind: Length, AtMost: deepest, Default: either(`6"`, "150 mm", practice), Means: "least compacted bed", put: func(j *Job, v value) { j.Stone.Least = v.length }},
		{Path: "stone.most", Kind: Length, AtMost: deepest, Default: either(`12"`, "300 mm", practice), Means: "greatest compacted bed", put: func(j *Job, v value) { j.Stone.Most = v.length }},
		{Path: "stone.margin", Kind: Distance, AtMost: deepest, Default: either(`4"`, "100 mm", practice), Means: "hole beyond the block, each side", put: func(j *Job, v value) { j.Stone.Margin = v.length }},
		{Path: "stone.embed", Kind: Distance, AtMost: deepest, Default: either(`2"`, "50 mm", practice), Means: "top of the bed below the ground", put: func(j *Job, v value) { j.Stone.Embed = v.length }},
		{Path: "stone.above_ground", Kind: Distance, AtMost: deepest, Default: either(`1/2"`, "15 mm", practice), Means: "seat above the ground, at least", put: func(j *Job, v value) { j.Stone.AboveGround = v.length }},
		{Path: "stone.beside_block", Kind: Word, Choices: []string{"stone", "soil"}, Default: same("stone", practice), Means: "what fills the hole beside the block", put: func(j *Job, v value) { j.Stone.BesideBlock = v.text }},
		{Path: "stone.loose", Kind: Ratio, FromSays: "stone.kind", From: looseOf, Means: "loose volume of the stone over its compacted volume", put: func(j *Job, v value) { j.Stone.Loose = measure.Ratio(v.number) }},
		{Path: "stone.waste", Kind: Percent, Default: same("8%", practice), Means: "stone spilled and trodden in", put: func(j *Job, v value) { j.Stone.Waste = measure.Percent(v.number) }},
		{Path: "stone.sold_by", Kind: Volume, Default: either("1/2 yd3", "0.5 m3", practice), Means: "unit in which the stone is sold", put: func(j *Job, v value) { j.Stone.SoldBy = measure.Volume(v.number) }},
		{Path: "stone.density", Kind: Density, From: compactedOf, FromSays: "stone.kind", Means: "density of the compacted stone, dry", put: func(j *Job, v value) { j.Stone.Density = measure.Density(v.number) }},
		{Path: "stone.loose_density", Kind: Density, From: looseDensityOf, FromSays: "stone.kind", Means: "density of the loose stone, dry", put: func(j *Job, v value) { j.Stone.LooseDensity = measure.Density(v.number) }},
		{Path: "stone.water", Kind: Percent, Default: same("5%", practice+"; WSDOT Design Manual M 22-01 (2015), Exhibit 620-1, multiplies its dry weights by 1 + free water"), Means: "water in the stone as it is loaded, of its dry weight", put: func(j *Job, v value) { j.Stone.Water = measure.Percent(v.number) }},
		{Path: "stone.on_cloth", Kind: Distance, AtMost: measure.Foot, Default: same("0", practice+": for want of room under low beams"), Means: "clean stone spread over the ground cloth, as tipped; it takes its room from frame.clear", put: func(j *Job, v value) { j.Stone.OnCloth = v.length }},
		{Path: "stone.layer", Kind: Length, AtMost: deepest, Default: either(`3"`, "75 mm", practice+": hand tampers, layers of 2 to 4 in"), Means: "thickest loose layer to tamp at once", put: func(j *Job, v value) { j.Stone.LayerAtMost = v.length }},

		{Path: "dig.least", Kind: Distance, AtMost: deepest, Default: either(`6"`, "150 mm", practice+": through the topsoil, at least 6 in"), Means: "least depth of a hole", put: func(j *Job, v value) { j.Dig.Least = v.length }},
		{Path: "dig.deepest", Kind: Length, AtMost: deepest, Default: either(`20"`, "500 mm", practice), Means: "greatest depth of a hole", put: func(j *Job, v value) { j.Dig.Deepest = v.length }},

		{Path: "piers.*.bed", Stars: []string{"pier"}, Kind: Length, AtMost: deepest, Means: "least compacted bed at this pier", put: func(j *Job, v value) {
			j.exception(v, func(e *Exception) { e.Bed = &v.length })
		}},
		{Path: "piers.*.deepest", Stars: []string{"pier"}, Kind: Length, AtMost: deepest, Means: "greatest depth of the hole at this pier", put: func(j *Job, v value) {
			j.exception(v, func(e *Exception) { e.Deepest = &v.length })
		}},
		{Path: "piers.*.reason", Stars: []string{"pier"}, Kind: Text, Letters: 160, Means: "why this pier is different", put: func(j *Job, v value) { j.exception(v, func(e *Exception) { e.Reason = v.text }) }},
	}
}

const wsdot = "WSDOT Design Manual M 22-01 (2015), Exhibit 620-1: crushed surfacing top course 2850 lb/yd3 loose, 3700 compacted"

// The three values of a stone hang together, for its weight is the same loose
// and tamped: loose = density ÷ loose density. Of those that are not given, the
// factor comes first, then the one density from the other.

func looseOf(j *Job) Default {
	if j.Stone.Density > 0 && j.Stone.LooseDensity > 0 {
		return same(rounded(float64(j.Stone.Density.Over(j.Stone.LooseDensity)), 4), "derived from the two densities given: a weight is the same loose and tamped")
	}
	if j.Stone.Kind == "open_graded" {
		return same("1.09", practice+": clean 3/4 in stone settles about 1 in in a foot")
	}
	return same("1.30", wsdot)
}

const fromFactor = "derived from the other density given and stone.loose: a weight is the same loose and tamped"

// compactedOf returns the compacted density, from the loose one where that is given.
func compactedOf(j *Job) Default {
	switch {
	case j.Stone.LooseDensity > 0:
		return densities(j.Stone.LooseDensity*measure.Density(j.Stone.Loose), fromFactor)
	case j.Stone.Kind == "open_graded":
		return densities(cleanLoose*1.09, "derived: 1.09 × the loose density; the factor is "+practice)
	}
	return either("3700 lb/yd3", "2195 kg/m3", wsdot)
}

// looseDensityOf returns the loose density, from the compacted one where that
// is another than the table's.
func looseDensityOf(j *Job) Default {
	unset := Job{Units: j.Units, Stone: Stone{Kind: j.Stone.Kind}}
	if usual, err := measure.ParseDensity(compactedOf(&unset).text(j.Units)); err == nil && usual != j.Stone.Density {
		return densities(j.Stone.Density/measure.Density(j.Stone.Loose), fromFactor)
	}
	if j.Stone.Kind == "open_graded" {
		return densities(cleanLoose, "WSDOT Design Manual M 22-01 (2015), Exhibit 620-1: permeable ballast 2800 lb/yd3 loose")
	}
	return either("2850 lb/yd3", "1690 kg/m3", wsdot)
}

const (
	poundPerYard = measure.Density(measure.Pound) / measure.Density(measure.CubicYard)
	cleanLoose   = 2800 * poundPerYard
)

func densities(d measure.Density, source string) Default {
	return either(rounded(float64(d/poundPerYard), 1)+" lb/yd3", rounded(float64(d), 1)+" kg/m3", source)
}

func (j *Job) exception(v value, change func(*Exception)) {
	e := j.Piers[v.names[0]]
	change(&e)
	j.Piers = with(j.Piers, v.names[0], e)
}

// with puts a value into a map, which is made when it is nil.
func with[V any](m map[string]V, name string, v V) map[string]V {
	if m == nil {
		m = make(map[string]V)
	}
	m[name] = v
	return m
}
