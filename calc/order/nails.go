package order

import (
	"math"
	"strings"

	"pierbook/calc/measure"
)

// Nail is a kind of nail or screw.
type Nail struct {
	Name     string
	Length   measure.Length
	Diameter measure.Length
	Source   string
	Memory   bool
}

func thousandths(inch float64) measure.Length { return measure.Length(inch * float64(measure.Inch)) }

// The nails of the fastening schedule. Sizes by ASTM F1667 as the model codes'
// nailing tables print them.
var (
	nail8dCommon  = Nail{Name: "8d common nail, 2 1/2 × 0.131 in (64 × 3.3 mm), galvanised", Length: thousandths(2.5), Diameter: thousandths(0.131), Source: "IBC Table 2304.10.1"}
	nail16dCommon = Nail{Name: "16d common nail, 3 1/2 × 0.162 in (89 × 4.1 mm), galvanised", Length: thousandths(3.5), Diameter: thousandths(0.162), Source: "IBC Table 2304.10.1"}
	nail20dCommon = Nail{Name: "20d common nail, 4 × 0.192 in (102 × 4.9 mm), galvanised", Length: thousandths(4), Diameter: thousandths(0.192), Source: "ASTM F1667", Memory: true}
	nail8dRing    = Nail{Name: "8d ring-shank nail, 2 1/2 × 0.131 in (64 × 3.3 mm), galvanised", Length: thousandths(2.5), Diameter: thousandths(0.131), Source: "IRC Table R602.3(1)"}
	nailHanger    = Nail{Name: "hanger nail, 1 1/2 × 0.148 in (38 × 3.8 mm), hot-dip galvanised", Length: thousandths(1.5), Diameter: thousandths(0.148), Source: "common practice, no source"}
	screwCap      = Nail{Name: "structural screw for post caps, 1 1/2 in (38 mm), galvanised", Length: thousandths(1.5), Diameter: thousandths(0.164), Source: "common practice, no source"}
	screwBoard    = Nail{Name: "decking screw no. 8, 2 1/2 in (65 mm), stainless or coated", Length: thousandths(2.5), Diameter: thousandths(0.164), Source: "deck guide: two no. 8 screws at each joist", Memory: true}
)

// short names the nail without its sizes.
func (n Nail) short() string {
	name, _, _ := strings.Cut(n.Name, ",")
	return name
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

// box is how nails are sold: by the pound, or by the half kilogram.
func box(system measure.System) (measure.Mass, string) {
	if system == measure.Metric {
		return 0.5, "boxes of 0.5 kg"
	}
	return measure.Pound, "boxes of 1 lb"
}
