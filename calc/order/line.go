package order

import (
	"strings"

	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Group is a part of the list, in the order of the delivery.
type Group string

// The groups of the list.
const (
	Timber    Group = "Timber"
	Surface   Group = "Surface"
	Hardware  Group = "Blocks and hardware"
	Fasteners Group = "Fasteners"
	Stone     Group = "Stone"
	Ground    Group = "Ground cover and finish"
	SetOut    Group = "Setting out"
	Carriage  Group = "Delivery"
)

// Groups returns the groups in the order of the list: what is needed first on
// site stands last, since it is small.
func Groups() []Group {
	return []Group{Timber, Surface, Hardware, Fasteners, Stone, Ground, SetOut, Carriage}
}

// Line is one line of the list.
type Line struct {
	Key    string // stable, such as order.stick.2x8.12ft
	Group  Group
	What   string
	Use    string          // what it is for
	Count  int             // of pieces, boxes or sold units to buy
	Spare  int             // of the single things, how many are spare
	Unit   string          // "pieces", "boxes of 1 lb", "loads"
	Pieces int             // single things in them, where Count counts boxes; else 0
	Each   measure.Mass    // of one lift
	Price  *measure.Money  // of one, nil when not known
	Long   *measure.Length // of a stick, nil for the rest
	Part   string          // the step's part that it belongs to: "joists", "caps", …
	Note   string          // what to know before it is ordered, or empty

	Source  string   // of the count
	Memory  bool     // the source is from memory
	Formula string   // of the count
	Working string   // the same with this job's numbers
	From    []string // keys of the figures it comes from
	Weighed string   // where the weight of one comes from
}

// Units returns the unit as it follows the count: "1 stick", "2 boxes of 1 lb".
func (l Line) Units() string { return unitsOf(l.Count, l.Unit) }

func unitsOf(count int, unit string) string {
	if count != 1 {
		return unit
	}
	word, rest, _ := strings.Cut(unit, " ")
	switch word {
	case "boxes":
		word = "box"
	case "sold":
		return "sold unit"
	case "running":
		return unit
	default:
		word = strings.TrimSuffix(word, "s")
	}
	return strings.TrimSpace(word + " " + rest)
}

// Short returns what the line is without its sizes; sticks keep their length.
func (l Line) Short() string {
	if l.Long != nil {
		return l.What
	}
	short, _, _ := strings.Cut(l.What, ",")
	return short
}

// Mass returns the weight of the whole line.
func (l Line) Mass() measure.Mass { return l.Each * measure.Mass(l.Count) }

// TwoPeople says whether one lift is too heavy for one person. Stone is
// shovelled, not lifted.
func (l Line) TwoPeople(system measure.System) bool {
	return l.Group != Stone && l.Each > trade.LiftAlone.In(system)
}

// Cost returns the price of the whole line and whether it is known.
func (l Line) Cost() (measure.Money, bool) {
	if l.Price == nil {
		return 0, false
	}
	return *l.Price * measure.Money(l.Count), true
}

// Order is the whole list.
type Order struct {
	Lines   []Line // what is still to buy
	Needed  []Line // the same before anything has come
	Tools   []Tool
	Weight  measure.Mass  // of everything to be carried to the site
	Cost    measure.Money // of the lines with a price
	Blank   int           // lines without one
	Trips   []Trip        // loads of the vehicle, nil when its payload is unknown
	Payload measure.Mass
	Cloth   Cloth

	schedule                     []Joint
	beams, joists, posts, boards []Part
	gone                         []Line // of which all has come
	came                         string // what has come, in words
	style                        measure.Style
}

// Loads returns how many times the vehicle drives, 0 when its payload is unknown.
func (o *Order) Loads() int { return len(o.Trips) }

// Tool is something to own or to hire.
type Tool struct {
	What, For string
	Hire      bool // more often hired than owned
}

// total adds up the list.
func (o *Order) total() {
	for _, l := range o.Lines {
		o.Weight += l.Mass()
		if cost, known := l.Cost(); known {
			o.Cost += cost
		} else {
			o.Blank++
		}
	}
	o.Trips = trips(o.Lines, o.Payload)
}
