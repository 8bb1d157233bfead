package ground

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// stone adds what the beds take and what to order.
func (l *ledger) stone(g *Ground) {
	side := sideOf(l.job)
	l.add(figure.Figure{Key: "hole.side", Means: "side of the square hole", Value: side, Formula: "side = block + 2 × margin",
		Working: l.sum(side, plus(l.job.Block.Base), plus(2*l.job.Stone.Margin)), From: []string{"block.base", "stone.margin"}})
	l.given("stone.loose_factor", "loose volume of the stone over its compacted volume", "stone.loose", l.job.Stone.Loose)
	l.given("stone.layer_at_most", "thickest loose layer to tamp at once", "stone.layer", l.job.Stone.LayerAtMost)
	s := g.Stone
	if s == nil {
		l.blank("stone.compacted", "compacted stone", "stone.loose", "stone as tipped", "stone.order", "stone to order", "stone.order_units", "sold units of stone",
			"stone.mass", "mass of the stone ordered", "stone.trips", "trips for the stone", "stone.layer", "thickest layer of stone, as tipped")
		return
	}
	var keys []string
	for _, p := range s.Piers {
		keys = append(keys, "pier."+p.Name+".stone")
	}
	l.add(figure.Figure{Key: "stone.compacted", Means: "compacted stone", Value: s.Compacted, Formula: "Σ (side² × stone + what goes beside the block)",
		Working: fmt.Sprintf("beds %s, beside the blocks %s: %s", l.print(s.Beds), l.print(s.Beside), l.print(s.Compacted)), From: append([]string{"hole.side"}, keys...)})
	l.add(figure.Figure{Key: "stone.loose", Means: "stone as tipped", Value: s.Loose, Formula: "compacted × loose factor",
		Working: fmt.Sprintf("%s × %s = %s", l.print(s.Compacted), l.print(l.job.Stone.Loose), l.print(s.Loose)), From: []string{"stone.compacted", "stone.loose_factor"}})
	l.add(figure.Figure{Key: "stone.order", Means: "stone to order", Value: s.Order, Formula: "loose × (1 + waste), up to whole sold units",
		Working: fmt.Sprintf("%s with %s waste is %s; %d × %s = %s", l.print(s.Loose), l.print(l.job.Stone.Waste), l.print(s.WithWaste),
			s.Units, l.print(l.job.Stone.SoldBy), l.print(s.Order)), From: []string{"stone.loose", "stone.waste", "stone.sold_by"}})
	l.add(figure.Figure{Key: "stone.order_units", Means: "sold units of stone", Value: s.Units, Formula: "order ÷ sold unit",
		Working: fmt.Sprintf("%s ÷ %s = %d", l.print(s.Order), l.print(l.job.Stone.SoldBy), s.Units), From: []string{"stone.order", "stone.sold_by"}})
	l.add(figure.Figure{Key: "stone.mass", Means: "mass of the stone ordered", Value: s.Mass, Formula: "order × loose density × (1 + water)",
		Working: fmt.Sprintf("%s × %s × (1 + %s) = %s", l.print(s.Order), l.print(l.job.Stone.LooseDensity), l.print(l.job.Stone.Water), l.print(s.Mass)), From: []string{"stone.order", "stone.loose_density", "stone.water"}})
	l.trips(s)
	l.add(figure.Figure{Key: "stone.layer", Means: "thickest layer of stone, as tipped", Value: s.Layer, Rounding: measure.Up,
		Formula: "stone as tipped ÷ layers, the thickest of all holes", Working: fmt.Sprintf("%s, %s at most", l.print(s.Layer), l.print(s.LayerAtMost)), From: []string{"stone.layer_at_most"}})
}

func (l *ledger) trips(s *Stone) {
	if l.job.Yard.Payload <= 0 {
		l.blank("stone.trips", "trips for the stone")
		return
	}
	l.add(figure.Figure{Key: "stone.trips", Means: "trips for the stone", Value: s.Trips, Formula: "mass ÷ payload, up to a whole number",
		Working: fmt.Sprintf("%s ÷ %s: %s", l.print(s.Mass), l.print(l.job.Yard.Payload), counted(int(s.Trips), "trip")), From: []string{"stone.mass", "yard.payload"}})
}

// spoil adds what the digging leaves over.
func (l *ledger) spoil(g *Ground) {
	s := g.Spoil
	if s == nil {
		l.blank("spoil.bank", "soil left over, as it lay in the ground", "spoil.loose", "loose soil to place elsewhere", "spoil.packed", "the same soil trodden down", "spoil.heap", "side of the heap of soil",
			"spoil.level", "height over the bench mark's datum to which the soil fills the low side under the frame", "spoil.deep", "depth of that soil at the lowest place")
		return
	}
	var keys []string
	for _, p := range g.Piers {
		keys = append(keys, "pier."+p.Name+".dig")
	}
	l.add(figure.Figure{Key: "spoil.bank", Means: "soil left over, as it lay in the ground", Value: s.Bank, Formula: "Σ side² × dig − what goes back",
		Working: l.sum(s.Bank, plus(s.Holes), minus(s.Back)), From: append([]string{"hole.side", "site.soil.packed"}, keys...)})
	l.add(figure.Figure{Key: "spoil.loose", Means: "loose soil to place elsewhere", Value: s.Loose, Formula: "bank × swell",
		Working: fmt.Sprintf("%s × %s = %s", l.print(s.Bank), l.print(l.job.Site.Soil.Swell), l.print(s.Loose)), From: []string{"spoil.bank", "site.soil.swell"}})
	l.add(figure.Figure{Key: "spoil.packed", Means: "the same soil trodden down", Value: s.Packed, Formula: "bank × packed",
		Working: fmt.Sprintf("%s × %s = %s", l.print(s.Bank), l.print(l.job.Site.Soil.Packed), l.print(s.Packed)), From: []string{"spoil.bank", "site.soil.packed"}})
	l.add(figure.Figure{Key: "spoil.heap", Means: "side of the heap of soil", Value: s.Heap, Rounding: measure.Up,
		Formula: "∛(9 × volume), a square heap rising 1 in 1.5", Working: l.up(s.Heap), From: []string{"spoil.loose"}})
	l.add(figure.Figure{Key: "spoil.level", Means: "height over the bench mark's datum to which the soil fills the low side under the frame", Value: s.Level,
		Formula: "the level under which the room over the ground takes the soil, trodden down", Working: fmt.Sprintf("%s up to %s", l.print(s.Packed), l.print(s.Level)),
		From: append([]string{"spoil.packed"}, l.nodes...)})
	l.add(figure.Figure{Key: "spoil.deep", Means: "depth of that soil at the lowest place", Value: s.Deep, Formula: "level − lowest ground",
		Working: l.sum(s.Deep, plus(s.Level), minus(s.Level-s.Deep)), From: []string{"spoil.level"}})
}

// clash adds what stands in the way of any floor; all its keys are blank when
// nothing does.
func (l *ledger) clash(g *Ground) {
	c := g.Clash
	if c == nil {
		l.blank("clash.kind", "what clashes", "clash.high", "the pier that keeps the floor up", "clash.low", "the pier that keeps the floor down", "clash.amount", "by how much they miss each other")
		return
	}
	l.word("clash.kind", "what clashes", string(c.Kind), nil)
	l.word("clash.high", "the pier that keeps the floor up", c.High.Name, g.demandKeys(c.High))
	l.word("clash.low", "the pier that keeps the floor down", c.Low.Name, []string{groundKey(c.Low.Name)})
	l.add(figure.Figure{Key: "clash.amount", Means: "by how much they miss each other", Value: c.Amount, Rounding: measure.Up,
		Formula: "lowest floor at the one − highest floor at the other, or what the floor tried misses of either", Working: l.clashWorking(c),
		From: []string{groundKey(c.High.Name), groundKey(c.Low.Name)}})
}

// clashWorking prints how far the two miss each other, or a floor either of them.
func (l *ledger) clashWorking(c *Clash) string {
	switch c.Kind {
	case TwoPiers:
		return l.sum(c.Amount, plus(c.High.Floor), minus(c.Low.Floor))
	case TooLow:
		return l.sum(c.Amount, plus(c.High.Floor), minus(c.Wanted))
	case TooHigh, RoundingUp:
		return l.sum(c.Amount, plus(c.Wanted), minus(c.Low.Floor))
	}
	return fmt.Sprintf("%s against %s at %s: %s", c.High.Limit, c.Low.Limit, c.High.Name, l.up(c.Amount))
}
