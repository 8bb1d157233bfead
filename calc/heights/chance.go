package heights

import (
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// ShortChance is how likely the post at an estimated pier comes out under the
// shortest, since its ground may lie higher than estimated.
type ShortChance struct {
	Pier      string
	AsPlanned measure.Percent // with the hole dug to its planned depth
	AtAll     measure.Percent // with the seat as low as the pier's limits let it
	Safe      measure.Length  // floor that is high enough at this pier nine times in ten
}

// ShortChances returns the chances at the estimated piers, in the order of the
// frame. The error of an estimate is taken as normal.
//
//	as planned = P(error > post − shortest)      at all = P(error > floor − lowest floor of this pier)
func (h *Heights) ShortChances() []ShortChance {
	if h.Floor == nil {
		return nil
	}
	var list []ShortChance
	for i, p := range h.Piers {
		if p.Level.Read || p.Level.Error <= 0 || h.places[i].seat != nil {
			continue
		}
		demand := h.demandOf(i)
		spread := float64(p.Level.Error)
		list = append(list, ShortChance{
			Pier:      p.Name,
			AsPlanned: measure.Percent(below(-float64(p.Hole.Post-h.terms.Shortest) / spread)),
			AtAll:     measure.Percent(below(-float64(h.Floor.Height-demand) / spread)),
			Safe:      demand + p.Level.Error.Scale(trade.OftenDeviate),
		})
	}
	return list
}

// SafeFloor returns the floor that is high enough, nine times in ten at each
// estimated pier, and for certain at those that were read.
func (h *Heights) SafeFloor() measure.Length {
	if h.Floor == nil {
		return 0
	}
	floor := h.Floor.Lowest
	for _, chance := range h.ShortChances() {
		floor = max(floor, chance.Safe)
	}
	return h.terms.step(floor)
}

// demandOf returns the lowest floor that one pier allows.
func (h *Heights) demandOf(i int) measure.Length {
	return h.terms.demands(h.places[i:i+1], nil)[0].Floor
}
