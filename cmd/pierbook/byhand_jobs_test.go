package main

// handJobs are the jobs worked by hand, by the path of their job file; the
// built-in sample has the path "".
var handJobs = map[string]handJob{
	"":                          sampleByHand,
	"birch-slope-workshop.yaml": birchSlopeByHand,
	"orchard-shed.yaml":         orchardByHand,
	"mill-bank-deck.yaml":       millBankByHand,
}

// feet returns a rod reading or height of feet and inches in millimetres.
func feet(ft, in float64) float64 { return ft*handFoot + in*handInch }

var sampleByHand = handJob{
	room: handInch, mark: handInch / 16,
	length: feet(16, 0), width: feet(11, 10.75),
	surface: feet(0, 23./32), joist: feet(0, 7.25), beam: feet(0, 5.5), cap: feet(0, 3./32),
	joistWidth: feet(0, 1.5), rimWidth: feet(0, 1.5), joistSpacing: feet(0, 16),
	beamWidth: feet(0, 3.5), lines: 3, perLine: 5, first: feet(0, 1.75), last: feet(0, 1.75),
	shortest: feet(0, 3), longest: feet(0, 24), clear: feet(0, 1),
	blockHeight: feet(0, 5), seat: feet(0, 5), base: feet(0, 12),
	leastStone: feet(0, 6), mostStone: feet(0, 12), margin: feet(0, 4), embed: feet(0, 2), aboveGrade: feet(0, 0.5),
	leastDig: feet(0, 4), deepest: feet(0, 20),
	swell:   1.12, // of silty sand: the soil table's, printed on the assumptions sheet
	roundUp: feet(0, 1./8),
	setUps: [][]handSight{
		{{"bench_mark", feet(4, 2.25)}, {"A1", feet(4, 6.375)}, {"A2", feet(4, 8.75)}, {"A3", feet(4, 11.25)}, {"A4", feet(5, 2)}, {"A5", feet(5, 4.375)},
			{"B1", feet(4, 1.25)}, {"B3", feet(4, 6.75)}, {"B5", feet(4, 11.5)}, {"E1", feet(5, 1.875)}, {"TP1", feet(3, 11)}},
		{{"TP1", feet(4, 5.5)}, {"C1", feet(4, 2.875)}, {"C3", feet(4, 7.5)}, {"C5", feet(5, 0.875)}, {"bench_mark", feet(4, 8.625)}},
	},
	spots: map[string][2]float64{"E1": {feet(8, 0), feet(-3, 0)}},
	probes: map[string]handProbe{"A1": {feet(0, 8.5), false}, "A3": {feet(0, 10.75), false}, "A5": {feet(0, 12.75), false},
		"B3": {feet(0, 9.75), false}, "C1": {feet(0, 7.5), true}, "C5": {feet(0, 10.25), false}},
	beds: map[string]float64{"C1": feet(0, 2)},
}

var birchSlopeByHand = handJob{
	room: 25, mark: 1,
	length: 4800, width: 3600,
	surface: 22, beam: 195, cap: 3,
	joistWidth: 45, rimWidth: 45, joistSpacing: 400, between: true,
	beamWidth: 95, inset: 45, lines: 3, perLine: 4, first: 47.5, last: 47.5,
	shortest: 80, longest: 700, clear: 50,
	blockHeight: 150, seat: 140, base: 300,
	leastStone: 150, mostStone: 350, margin: 100, embed: 40, aboveGrade: 20,
	leastDig: 120, deepest: 520, swell: 1.2, roundUp: 5,
	setUps: [][]handSight{
		{{"bench_mark", 1250}, {"A1", 1432}, {"TP1", 1388}},
		{{"TP1", 1201}, {"A4", 1555}, {"C2", 1018}, {"C1", 913}, {"C4", 1228}, {"bench_mark", 1060}},
	},
	probes: map[string]handProbe{"A1": {240, false}, "B3": {310, false}, "C2": {130, true}},
	beds:   map[string]float64{"C2": 60},
}

var orchardByHand = handJob{
	room: handInch, mark: handInch / 16,
	length: feet(14, 0), width: feet(10, 0),
	surface: feet(0, 1), joist: feet(0, 5.5), beam: feet(0, 5.5), cap: feet(0, 1./8),
	joistWidth: feet(0, 1.5), rimWidth: feet(0, 1.5), joistSpacing: feet(0, 16),
	beamWidth: feet(0, 3.5), inset: feet(0, 6), lines: 3, perLine: 4, first: feet(0, 10), last: feet(0, 8),
	shortest: feet(0, 4), longest: feet(0, 30), clear: feet(0, 2),
	blockHeight: feet(0, 8), seat: feet(0, 7.5), base: feet(0, 11),
	leastStone: feet(0, 4), mostStone: feet(0, 12), margin: feet(0, 3), embed: feet(0, 1.5), aboveGrade: feet(0, 1),
	soilBeside: true, leastDig: feet(0, 6), deepest: feet(0, 22), frost: feet(0, 10), swell: 1.25,
	roundUp: feet(0, 1./8), benchMark: feet(100, 0),
	setUps: [][]handSight{{{"bench_mark", feet(5, 0.5)},
		{"A1", feet(5, 8)}, {"A2", feet(5, 9.25)}, {"A3", feet(6, 0.125)}, {"A4", feet(6, 3.5)},
		{"B1", feet(5, 2.375)}, {"B2", feet(5, 4)}, {"B3", feet(5, 7.75)}, {"B4", feet(5, 11)},
		{"C1", feet(4, 10)}, {"C2", feet(4, 11.5)}, {"C3", feet(5, 2.25)}, {"C4", feet(5, 6.625)},
		{"K1", feet(4, 7.5)}, {"bench_mark", feet(5, 0.5)}}},
	spots: map[string][2]float64{"K1": {feet(8, 3), feet(7, 6)}},
	probes: map[string]handProbe{
		"A1": {feet(0, 12), false}, "A2": {feet(0, 9), false}, "A3": {feet(0, 14.5), false}, "A4": {feet(0, 18), false},
		"B1": {feet(0, 8), false}, "B2": {feet(0, 10), true}, "B3": {feet(0, 11.25), false}, "B4": {feet(0, 15.75), false},
		"C1": {feet(0, 7), false}, "C2": {feet(0, 6), false}, "C3": {feet(0, 16), false}, "C4": {feet(0, 13.375), false}},
}

// Beside what the file says, Mill Bank takes the defaults of the table of keys.
var millBankByHand = handJob{
	room: handInch, mark: handInch / 16,
	length: feet(12, 0), width: feet(8, 0),
	surface: feet(0, 1), joist: feet(0, 5.5), beam: feet(0, 5.5), cap: feet(0, 1./16),
	joistWidth: feet(0, 1.5), rimWidth: feet(0, 1.5), joistSpacing: feet(0, 16),
	beamWidth: feet(0, 3.5), lines: 3, perLine: 5, first: feet(0, 1.75), last: feet(0, 1.75),
	shortest: feet(0, 3), longest: feet(0, 20), clear: feet(0, 1),
	blockHeight: feet(0, 5), seat: feet(0, 5), base: feet(0, 12),
	leastStone: feet(0, 6), mostStone: feet(0, 12), margin: feet(0, 4), embed: feet(0, 2), aboveGrade: feet(0, 0.5),
	leastDig: feet(0, 6), deepest: feet(0, 24), swell: 1.12, floor: feet(0, 25), floorGiven: true,
	setUps: [][]handSight{{{"bench_mark", feet(4, 0)}, {"A1", feet(4, 0)}, {"A5", feet(4, 10)}, {"C1", feet(3, 11)}, {"C5", feet(4, 8.5)}, {"bench_mark", feet(4, 1./16)}}},
	probes: map[string]handProbe{"A5": {feet(0, 13), false}, "C5": {feet(0, 14), false}},
}
