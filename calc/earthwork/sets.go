package earthwork

import "pierbook/calc/figure"

// OddsSet is the order of stone at even odds and at nine in ten.
func (e *Earthwork) OddsSet() figure.Set {
	set := figure.Set{Name: "stone-orders", Key: "stone.order", Fields: []figure.Field{
		{Key: "loose", Means: "loose stone with waste: %", Formula: "known beds, and those to foresee"},
		{Key: "sold", Means: "stone as sold: %", Formula: "loose, up to whole sold units", From: []string{".loose", "stone.sold_by"}},
		{Key: "units", Means: "sold units: %", Formula: "as sold ÷ sold unit", From: []string{".sold"}},
		{Key: "mass", Means: "weight: %", Formula: "as sold × density × (1 + water)", From: []string{".sold"}},
		{Key: "trips", Means: "loads: %", Formula: "weight ÷ payload, up", From: []string{".mass"}},
		{Key: "enough", Means: "chance that it is enough: %", Formula: "Student's t", From: []string{".sold"}},
	}}
	if odds := e.Odds; odds != nil {
		for _, row := range []struct {
			key, name string
			order     StoneOrder
		}{{"even", "even odds", odds.Even}, {"nine_in_ten", "nine times in ten", odds.NineInTen}} {
			set.Row(row.key, row.name, row.order.WithWaste, row.order.Order, row.order.Units, row.order.Mass, row.order.Trips, row.order.Chance)
		}
	}
	return set
}
