package order

import "pierbook/calc/measure"

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
)

// Line is one line of the list.
type Line struct {
	Key    string // stable, such as order.stick.2x8.12ft
	Group  Group
	What   string
	Use    string          // what it is for
	Count  int             // of pieces, boxes or sold units to buy
	Spare  int             // of these, how many are spare
	Unit   string          // "pieces", "boxes of 1 lb", "loads"
	Pieces int             // single things in them, where Count counts boxes; else 0
	Each   measure.Mass    // of one lift
	Price  *measure.Money  // of one, nil when not known
	Source string          // of the count
	Memory bool            // the source is from memory
	Long   *measure.Length // of a stick, nil for the rest
	Part   string          // the part of the frame it makes, for the step sheets: "joists", "beams", …
}

// Mass returns the weight of the whole line.
func (l Line) Mass() measure.Mass { return l.Each * measure.Mass(l.Count) }

// TwoPeople says whether one lift is too heavy for one person.
func (l Line) TwoPeople() bool { return l.Each > OnePersonLift }

// Cost returns the price of the whole line and whether it is known.
func (l Line) Cost() (measure.Money, bool) {
	if l.Price == nil {
		return 0, false
	}
	return *l.Price * measure.Money(l.Count), true
}

// OnePersonLift is what one person may lift and carry alone: 50 lb. Source:
// NIOSH 2013-111, Simple Solutions for Home Building Workers; NIOSH 94-110 has
// 51 lb for the best case, less with reach, height or a poor grip.
const OnePersonLift = 50 * measure.Pound

// Order is the whole list.
type Order struct {
	Lines   []Line
	Tools   []Tool
	Weight  measure.Mass  // of everything to be carried to the site
	Cost    measure.Money // of the lines with a price
	Blank   int           // lines without one
	Loads   int           // for the vehicle, 0 when its payload is unknown
	Payload measure.Mass
	Strips  int // of ground cloth

	joints []joint
}

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
	if o.Payload > 0 {
		o.Loads = loadsFor(o.Weight, o.Payload)
	}
}

// loadsFor returns how many times a vehicle drives, allowing for the last bits
// of a weight that is a whole number of loads.
func loadsFor(weight, payload measure.Mass) int {
	loads := int(weight / payload)
	if float64(weight-payload*measure.Mass(loads)) > 1e-9*float64(payload) {
		loads++
	}
	return loads
}
