package order

import (
	"fmt"
	"math"
	"strconv"

	"pierbook/calc/measure"
)

// Nail is a kind of nail or screw.
type Nail struct {
	Key      string // stable, as a part of a figure's key: "8d-common"
	Trade    string // what imperial jobs call it: "8d common nail"
	Kind     string // what metric jobs call it, after its size: "nail"
	Finish   string // what keeps it from rusting, as it follows on its size: ", hot-dip galvanised"
	Length   measure.Length
	Diameter measure.Length
	Screw    bool   // sold and priced as screws
	Source   string // of its size
	Memory   bool
}

func thousandths(inch float64) measure.Length { return measure.Length(inch * float64(measure.Inch)) }

const (
	galvanised = ", hot-dip galvanised"
	stainless  = ", stainless or coated for treated timber"
)

// The nails of the fastening schedule. Sizes by ASTM F1667 as the model codes'
// nailing tables print them; finishes that treated timber does not eat are
// common practice, no source.
var (
	nail6dCommon  = common(6, 2, 0.113, "IRC 2021 Table R602.3(1)", false)
	nail8dCommon  = common(8, 2.5, 0.131, "IBC 2018 Table 2304.10.1", false)
	nail10dCommon = common(10, 3, 0.148, "IBC 2018 Table 2304.10.1", false)
	nail16dCommon = common(16, 3.5, 0.162, "IBC 2018 Table 2304.10.1", false)
	nail20dCommon = common(20, 4, 0.192, "ASTM F1667 (2015)", true)
	nail30dCommon = common(30, 4.5, 0.207, "ASTM F1667 (2015)", true)
	nail40dCommon = common(40, 5, 0.225, "ASTM F1667 (2015)", true)
	nail60dCommon = common(60, 6, 0.263, "ASTM F1667 (2015)", true)
	nail10dBox    = Nail{Key: "10d-box", Trade: "10d box nail", Kind: "nail", Finish: galvanised, Length: thousandths(3), Diameter: thousandths(0.128), Source: "IBC 2018 Table 2304.10.1"}
	nail8dRing    = Nail{Key: "8d-ring", Trade: "8d ring-shank nail", Kind: "ring-shank nail", Finish: galvanised, Length: thousandths(2.5), Diameter: thousandths(0.131), Source: "ASTM F1667 (2015), ring shank RSRS-03", Memory: true}
	nailHanger    = Nail{Key: "hanger", Trade: "hanger nail", Kind: "hanger nail", Finish: galvanised, Length: thousandths(1.5), Diameter: thousandths(0.148), Source: "common practice, no source"}
	screwCap      = Nail{Key: "cap-screw", Trade: "structural screw", Kind: "structural screw", Finish: galvanised, Length: thousandths(1.5), Diameter: thousandths(0.164), Screw: true, Source: "common practice, no source"}
	screwBoard    = Nail{Key: "deck-screw", Trade: "no. 8 decking screw", Kind: "decking screw", Finish: stainless, Length: thousandths(2.5), Diameter: thousandths(0.164), Screw: true, Source: "IRC 2021 Table R507.7, notes: no. 8 screws"}
	screwThick    = Nail{Key: "long-deck-screw", Trade: "no. 10 decking screw", Kind: "decking screw", Finish: stainless, Length: thousandths(3), Diameter: thousandths(0.19), Screw: true, Source: "common practice, no source"}
	screwBatter   = Nail{Key: "batter-screw", Trade: "no. 8 wood screw", Kind: "wood screw", Length: thousandths(2), Diameter: thousandths(0.164), Screw: true, Source: "common practice, no source"}
)

func common(penny int, length, diameter float64, source string, memory bool) Nail {
	name := strconv.Itoa(penny) + "d"
	return Nail{Key: name + "-common", Trade: name + " common nail", Kind: "nail", Finish: galvanised, Length: thousandths(length), Diameter: thousandths(diameter), Source: source, Memory: memory}
}

// Called returns what the nail is called in the middle of a sentence: "8d
// common nail", or "64 × 3.3 mm nail" in a metric job.
func (n Nail) Called(system measure.System) string {
	if system == measure.Metric {
		return fmt.Sprintf("%.0f\u00a0×\u00a0%.1f\u00a0mm %s", n.Length.Millimetres(), n.Diameter.Millimetres(), n.Kind)
	}
	return n.Trade
}

// Name returns what stands on the order: kind, size and finish.
func (n Nail) Name(style measure.Style) string {
	if style.System == measure.Metric {
		return n.Called(measure.Metric) + n.Finish
	}
	return fmt.Sprintf("%s, %s\u00a0×\u00a00.%03.0f\u00a0in%s", n.Trade, n.Length.Print(style), n.Diameter.Metres()/measure.Inch.Metres()*1000, n.Finish)
}

// steel is the density of steel wire, 0.2836 lb/in3.
const steel measure.Density = 7850

// Mass returns the weight of one nail, taken as a cylinder without its head.
// For the common sizes this is within 3 per cent of the classic counts to the
// pound.
func (n Nail) Mass() measure.Mass {
	radius := n.Diameter.Metres() / 2
	return steel.Of(measure.Volume(math.Pi * radius * radius * n.Length.Metres()))
}

// fullHold is how deep a nail or screw must reach into the second piece, in
// its own diameters, to hold with its full value sideways: NDS 2018 12.1.6.5;
// six is the least.
const fullHold = 10

// through returns the thinnest of the common nails that reaches through a piece
// and far enough into the next one.
func through(thickness measure.Length) Nail {
	all := []Nail{nail16dCommon, nail20dCommon, nail30dCommon, nail40dCommon, nail60dCommon}
	for _, n := range all {
		if n.Length-thickness >= fullHold*n.Diameter {
			return n
		}
	}
	return all[len(all)-1]
}

// Thicknesses at which the schedule changes nails, with a 32nd for what the
// panel's category and its real thickness differ by.
const (
	halfInch       = measure.Inch/2 + measure.Inch/32
	threeQuarterIn = measure.Inch*3/4 + measure.Inch/32
	wholeInch      = measure.Inch + measure.Inch/32
	fiveQuarterIn  = measure.Inch*5/4 + measure.Inch/32
)

// panelNail returns the nail for a floor panel by its thickness, with the row
// of the schedule.
func panelNail(thickness measure.Length) (Nail, string, bool) {
	switch {
	case thickness <= halfInch:
		return nail6dCommon, "IRC 2021 Table R602.3(1), subfloor to 1/2 in", true
	case thickness <= threeQuarterIn:
		return nail8dRing, "IRC 2021 Table R602.3(1), single floor to 3/4 in: 8d common or 2 in deformed", false
	case thickness <= wholeInch:
		return nail8dRing, "IRC 2021 Table R602.3(1), single floor 7/8 to 1 in: 8d common or 2 1/2 in deformed", false
	default:
		return nail10dCommon, "IRC 2021 Table R602.3(1), single floor of 1 1/8 in and more: 10d common or 2 1/2 in deformed", false
	}
}

// boardScrew returns the screw for a floor board by its thickness.
func boardScrew(thickness measure.Length) (Nail, string, bool) {
	if thickness <= fiveQuarterIn {
		return screwBoard, "IRC 2021 Table R507.7, notes: two ring-shank 8d nails or two no. 8 screws at each joist", false
	}
	return screwThick, "IRC 2021 Table R507.7, notes: two screws at each joist; their length is common practice, no source", false
}

// plyNail returns the nail that joins plies of a built-up beam.
func plyNail(ply measure.Length) (Nail, string) {
	const rule = "IRC 2018 R507.5: two rows of 10d (3 × 0.128 in) nails, at most 16 in apart along each edge"
	if ply <= measure.Inch*13/8 {
		return nail10dBox, rule
	}
	return through(ply), rule + "; a longer nail for thicker plies"
}

// box is how nails are sold: by the pound, or by the half kilogram.
func box(system measure.System) (measure.Mass, string) {
	if system == measure.Metric {
		return 0.5, "boxes of 0.5 kg"
	}
	return measure.Pound, "boxes of 1 lb"
}
