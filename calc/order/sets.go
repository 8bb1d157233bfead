package order

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Sets returns the lines of the order, the loads and the tools, with the figures
// of each that only tables ask for.
func (o *Order) Sets() []figure.Set {
	return []figure.Set{o.lineSet(), o.tripSet(), o.toolSet()}
}

func (o *Order) lineSet() figure.Set {
	set := figure.Set{Name: "order", Key: "order", Known: []string{"each", "weight", "cost"}, Fields: []figure.Field{
		{Key: "group", Means: "part of the order with: %", Formula: "in the order of the delivery"},
		{Key: "what", Means: "what to buy and for what: %", Formula: "the line, its use, and single things where it counts boxes"},
		{Key: "count", Means: "how many to buy: %", Formula: "the count of the line"},
		{Key: "units", Means: "unit of: %", Formula: "as it is sold"},
		{Key: "lift", Means: "mark of a lift for two: %", Formula: "weight of one over what one person lifts", From: []string{trade.LiftAlone.Key()}},
		{Key: "price", Means: "price of one: %", Formula: "as the yard's file has it"},
		{Key: "stick", Means: "sold by its length: %", Formula: "sticks are"},
		{Key: "total", Means: "a sum over lines: %", Formula: "the last lines of the list are"},
		{Key: "sound", Means: "looked over at delivery: %", Formula: "timber, surface and hardware are"},
	}}
	for _, l := range slices.Concat(o.ByGroup()...) {
		var price measure.Quantity
		if l.Price != nil {
			price = *l.Price
		}
		lift := figure.Nothing
		if l.TwoPeople(o.style.System) {
			lift = liftMark
		}
		sound := l.Group == Timber || l.Group == Surface || l.Group == Hardware
		set.Row(strings.TrimPrefix(l.Key, "order."), l.What, measure.Word(l.Group), figure.Said{Quantity: measure.Word(l.words()), Memory: l.Memory},
			figure.Said{Quantity: measure.Count(l.Count), From: []string{l.Key}}, measure.Word(l.Units()), lift, price, figure.Yes(l.Long != nil), figure.Yes(false), figure.Yes(sound))
	}
	total := func(key, words string) {
		no, none := figure.Yes(false), figure.Nothing
		set.Row(key, "in all", measure.Word("In all"), measure.Word(words), none, none, none, none, no, figure.Yes(true), no)
	}
	everything := fmt.Sprintf("%d lines", len(o.Lines))
	if o.Loads() > 0 {
		everything += fmt.Sprintf(", %d loads of %s", o.Loads(), o.Payload.Print(o.style))
	}
	switch priced := len(o.Lines) - o.Blank; {
	case priced == 0:
		total("in_all", everything+"; no price is known")
	case o.Blank == 0:
		total("in_all", everything+", all with a price")
	default:
		total("in_all", everything)
		total("in_part", fmt.Sprintf("%d lines with a price; what the other %d cost comes on top", priced, o.Blank))
	}
	return set
}

// liftMark stands behind a weight that wants two people.
const liftMark measure.Word = "‡"

func (l Line) words() string {
	s := l.What
	if l.Use != "" {
		s += "; for " + l.Use
	}
	if l.Pieces > 0 {
		s += fmt.Sprintf("; %d needed, %d spare", l.Pieces, l.Spare)
	}
	return s
}

// noteFigures are what tables of the order say below them.
func (o *Order) noteFigures() []figure.Figure {
	var notes []string
	for _, l := range slices.Concat(o.ByGroup()...) {
		if note := l.Use + ": " + l.Note; l.Note != "" && !slices.Contains(notes, note) {
			notes = append(notes, note)
		}
	}
	weight, cost := o.totalFigures()
	long, over := measure.Length(0), false
	for _, trip := range o.Trips {
		long, over = max(long, trip.Longest), over || trip.Over
	}
	figures := []figure.Figure{
		{Key: "order.notes", Means: "what to know before it is ordered", Value: measure.Word(strings.Join(notes, " ")), Formula: "the notes of the lines"},
		weight, cost,
		{Key: "order.came", Means: "what has come and is not on the order any more", Value: measure.Word(o.came), Formula: "as the job file has it under measured.delivered"},
		{Key: "order.longest", Means: "longest stick on a load", Value: long, Formula: "the longest of all loads", From: []string{"order.loads"}},
		{Key: "order.long_load", Means: "a stick reaches past the bed of a pick-up", Value: figure.Yes(long > trade.LongStick.In(o.style.System)), Formula: "longest stick over the longest that lies on the bed", From: []string{"order.longest", "trade.long_stick"}},
		{Key: "order.over_load", Means: "one piece is heavier than a load", Value: figure.Yes(over), Formula: "weight of a piece over the payload", From: []string{"yard.payload"}},
	}
	for i := range figures {
		figures[i].Origin = figure.Computed
	}
	return figures
}

// totalFigures are what the last lines of the list come to: the cost stands in a
// line of its own where some lines have no price.
func (o *Order) totalFigures() (weight, cost figure.Figure) {
	weight = figure.Figure{Key: "order.in_all.weight", Means: "weight of all lines", Value: o.Weight, Formula: "Σ weight of each line", From: []string{"order.weight"}}
	cost = figure.Figure{Key: "order.in_all.cost", Means: "cost of all lines", Formula: "Σ count × price", From: []string{"order.cost"}}
	if o.Blank < len(o.Lines) {
		cost.Value = o.Cost
	}
	if o.Blank > 0 && o.Blank < len(o.Lines) {
		cost.Key, cost.Means = "order.in_part.cost", "cost of the lines with a price"
	}
	return weight, cost
}

// tripSet is the loads of the vehicle, those that are alike and follow one another
// as one.
func (o *Order) tripSet() figure.Set {
	set := figure.Set{Name: "trips", Key: "trip", Fields: []figure.Field{
		{Key: "goods", Means: "what goes on load %", Formula: "each piece into the first load that still carries it"},
		{Key: "weight", Means: "weight of load %", Formula: "Σ weight of what is on it", From: []string{"yard.payload"}},
		{Key: "longest", Means: "longest stick on load %", Formula: "the longest of what is on it"},
	}}
	for i := 0; i < len(o.Trips); {
		trip, last := o.Trips[i], i
		for last+1 < len(o.Trips) && slices.Equal(o.Trips[last+1].Goods, trip.Goods) {
			last++
		}
		name := strconv.Itoa(i + 1)
		if last > i {
			name += " to " + strconv.Itoa(last+1)
		}
		var longest measure.Quantity = figure.Nothing
		if trip.Longest > 0 {
			longest = trip.Longest
		}
		set.Row(strconv.Itoa(i+1), name, measure.Word(trip.goods()), trip.Weight, longest)
		i = last + 1
	}
	return set
}

// goods lists what goes on a load: "7 × pier block; 2 × post cap".
func (t Trip) goods() string {
	goods := make([]string, len(t.Goods))
	for k, g := range t.Goods {
		goods[k] = g.What
		if g.Count > 0 {
			goods[k] = fmt.Sprintf("%d\u00a0× %s", g.Count, g.What)
		}
	}
	return strings.Join(goods, "; ")
}

func (o *Order) toolSet() figure.Set {
	set := figure.Set{Name: "tools", Key: "tool", Fields: []figure.Field{
		{Key: "use", Means: "what for: %", Formula: "the steps that take it"},
		{Key: "hire", Means: "more often hired than owned: %", Formula: "common practice, no source"},
	}}
	for i, tool := range o.Tools {
		hire := figure.Nothing
		if tool.Hire {
			hire = "usual"
		}
		set.Row(strconv.Itoa(i+1), tool.What, measure.Word(tool.For), hire)
	}
	return set
}
