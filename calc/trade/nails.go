package trade

import (
	"fmt"
	"math"

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

func readNails(rows []row) []Nail {
	list := make([]Nail, len(rows))
	for i, r := range rows {
		list[i] = Nail{Key: r.text("key"), Trade: r.text("trade"), Kind: r.text("kind"), Length: r.length("length"), Diameter: r.length("diameter"), Screw: r.yes("screw"), Source: r.text("source"), Memory: r.yes("memory")}
		if finish := r.text("finish"); finish != "" {
			list[i].Finish = ", " + finish
		}
	}
	return list
}

// Nails returns the kinds of nails and screws.
func Nails() []Nail { return facts().nails }

// FindNail returns the nail of a key and whether there is one.
func FindNail(key string) (Nail, bool) { return findNail(facts().nails, key) }

func findNail(list []Nail, key string) (Nail, bool) {
	return find(list, func(n Nail) bool { return n.Key == key })
}

// Called returns what the nail is called in the middle of a sentence: "8d
// common nail", or "64 × 3.3 mm nail" in a metric job.
func (n Nail) Called(system measure.System) string {
	if system == measure.Metric {
		return fmt.Sprintf("%.0f\u00a0×\u00a0%.1f\u00a0mm %s", n.Length.Millimetres(), n.Diameter.Millimetres(), n.Kind)
	}
	return n.Trade
}

// Root returns the diameter at which the fastener bends: of a nail its own, of a
// wood screw that at the root of its thread, about 0.8 of the shank (0.131 in of a
// no. 8 and 0.152 in of a no. 10, NDS 2018 Appendix L3).
func (n Nail) Root() measure.Length {
	if n.Screw {
		return n.Diameter.Scale(0.8)
	}
	return n.Diameter
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

// reachesThrough says whether the nail goes through a piece and far enough into
// the next one to hold with its full value.
func (n Nail) reachesThrough(thickness measure.Length) bool {
	return n.Length-thickness >= fullHold*n.Diameter
}

// Through returns the nail, or when it does not go through a piece and far enough
// into the next one, the first longer one of its kind in the table that does. The
// longest stands in where none does.
func (n Nail) Through(thickness measure.Length) Nail {
	for _, other := range facts().nails {
		if n.reachesThrough(thickness) {
			break
		}
		if other.Kind == n.Kind && other.Screw == n.Screw && other.Length > n.Length {
			n = other
		}
	}
	return n
}
