package earthwork

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// Figures returns every figure of the stone and the spoil. The keys are the same
// whatever is known: what has no value yet has none, and prints as a blank.
func (e *Earthwork) Figures(j *job.Job, ground *terrain.Ground, piers []heights.PierHeights) []figure.Figure {
	l := &ledger{Ledger: figure.Ledger{Style: j.Style()}, job: j, ground: ground}
	for i, p := range piers {
		l.pier(e.Stone, i, p)
	}
	l.stone(e.Stone)
	l.spoil(e.Spoil, piers)
	l.odds(e)
	return l.Figures
}

// ledger gathers the figures of the earthwork.
type ledger struct {
	figure.Ledger
	job    *job.Job
	ground *terrain.Ground
}

// pier adds the stone of one pier as it is tipped and tamped.
func (l *ledger) pier(s *StoneTakeoff, i int, p heights.PierHeights) {
	key := func(what string) string { return "pier." + p.Name + "." + what }
	if s == nil {
		l.Blank(key("stone_loose"), "stone as tipped at "+p.Name, key("layers"), "layers of stone at "+p.Name,
			key("layer"), "thickness of each layer at "+p.Name+", loose", key("stone_by_here"), "loose stone with waste from the first pier to "+p.Name)
		return
	}
	h, row := *p.Hole, s.Piers[i]
	l.Add(figure.Figure{Key: key("stone_loose"), Means: "stone as tipped at " + p.Name, Value: row.Loose, Formula: "stone × loose factor",
		Working: fmt.Sprintf("%s × %s = %s", l.Print(h.Stone), l.Print(l.job.Stone.Loose), l.Print(row.Loose)), From: []string{key("stone"), "stone.loose_factor"}})
	l.Add(figure.Figure{Key: key("layers"), Means: "layers of stone at " + p.Name, Value: measure.Count(row.Layers), Formula: "stone as tipped ÷ thickest layer, up to a whole number",
		Working: fmt.Sprintf("%s in layers of %s, %s at most", l.Print(row.Loose), l.Print(row.Layer), l.Print(s.LayerAtMost)), From: []string{key("stone_loose"), "stone.layer_at_most"}})
	l.Add(figure.Figure{Key: key("layer"), Means: "thickness of each layer at " + p.Name + ", loose", Value: row.Layer, Formula: "stone as tipped ÷ layers",
		Working: fmt.Sprintf("%s ÷ %d = %s", l.Print(row.Loose), row.Layers, l.Print(row.Layer)),
		From:    []string{key("stone_loose"), key("layers")}})
	l.Add(figure.Figure{Key: key("stone_by_here"), Means: "loose stone with waste from the first pier to " + p.Name, Value: measure.Tipped(row.UsedSoFar), Formula: "Σ stone as tipped × (1 + waste)",
		Working: l.Print(measure.Tipped(row.UsedSoFar)),
		From:    []string{key("stone_loose"), "stone.waste"}})
}

// stone adds what the beds take and what to order.
func (l *ledger) stone(s *StoneTakeoff) {
	side := sideOf(l.job)
	l.Add(figure.Figure{Key: "hole.side", Means: "side of the square hole", Value: side, Formula: "side = block + 2 × margin",
		Working: l.Sum(side, figure.Plus(l.job.Block.Base), figure.Plus(2*l.job.Stone.Margin)), From: []string{"block.base", "stone.margin"}})
	l.Add(l.job.Figure("stone.loose_factor", "loose volume of the stone over its compacted volume", "stone.loose", l.job.Stone.Loose))
	l.Add(l.job.Figure("stone.layer_at_most", "thickest loose layer to tamp at once", "stone.layer", l.job.Stone.LayerAtMost))
	if s == nil {
		l.Blank("stone.compacted", "compacted stone", "stone.loose", "stone as tipped", "stone.order", "stone to order",
			"stone.order_tipped", "stone to order, as it is counted while it is used", "stone.order_units", "sold units of stone",
			"stone.mass", "mass of the stone ordered", "stone.trips", "trips for the stone", "stone.layer", "thickest layer of stone, as tipped")
		return
	}
	var keys []string
	for _, p := range s.Piers {
		keys = append(keys, "pier."+p.Name+".stone")
	}
	l.Add(figure.Figure{Key: "stone.compacted", Means: "compacted stone", Value: s.Compacted, Formula: "Σ (side² × stone + what goes beside the block)",
		Working: fmt.Sprintf("beds %s, beside the blocks %s: %s", l.Print(s.Beds), l.Print(s.Beside), l.Print(s.Compacted)), From: append([]string{"hole.side"}, keys...)})
	l.Add(figure.Figure{Key: "stone.loose", Means: "stone as tipped", Value: s.Loose, Formula: "compacted × loose factor",
		Working: fmt.Sprintf("%s × %s = %s", l.Print(s.Compacted), l.Print(l.job.Stone.Loose), l.Print(s.Loose)), From: []string{"stone.compacted", "stone.loose_factor"}})
	l.Add(figure.Figure{Key: "stone.order", Means: "stone to order", Value: s.Order, Formula: "loose × (1 + waste), up to whole sold units",
		Working: fmt.Sprintf("%s with %s waste is %s; %d × %s = %s", l.Print(s.Loose), l.Print(l.job.Stone.Waste), l.Print(s.WithWaste),
			s.Units, l.Print(l.job.Stone.SoldBy), l.Print(s.Order)), From: []string{"stone.loose", "stone.waste", "stone.sold_by"}})
	l.Add(figure.Figure{Key: "stone.order_tipped", Means: "stone to order, as it is counted while it is used", Value: measure.Tipped(s.Order),
		Formula: "order", Working: l.Print(measure.Tipped(s.Order)), From: []string{"stone.order"}})
	l.Add(figure.Figure{Key: "stone.order_units", Means: "sold units of stone", Value: s.Units, Formula: "order ÷ sold unit",
		Working: fmt.Sprintf("%s ÷ %s = %d", l.Print(s.Order), l.Print(l.job.Stone.SoldBy), s.Units), From: []string{"stone.order", "stone.sold_by"}})
	l.Add(figure.Figure{Key: "stone.mass", Means: "mass of the stone ordered", Value: s.Mass, Formula: "order × loose density × (1 + water)",
		Working: fmt.Sprintf("%s × %s × (1 + %s) = %s", l.Print(s.Order), l.Print(l.job.Stone.LooseDensity), l.Print(l.job.Stone.Water), l.Print(s.Mass)),
		From:    []string{"stone.order", "stone.loose_density", "stone.water"}})
	l.trips(s)
	l.Add(figure.Figure{Key: "stone.layer", Means: "thickest layer of stone, as tipped", Value: s.Layer, Rounding: measure.Up,
		Formula: "stone as tipped ÷ layers, the thickest of all holes", Working: fmt.Sprintf("%s, %s at most", l.Print(s.Layer), l.Print(s.LayerAtMost)), From: []string{"stone.layer_at_most"}})
}

func (l *ledger) trips(s *StoneTakeoff) {
	if l.job.Yard.Payload <= 0 {
		l.Blank("stone.trips", "trips for the stone")
		return
	}
	l.Add(figure.Figure{Key: "stone.trips", Means: "trips for the stone", Value: s.Trips, Formula: "mass ÷ payload, up to a whole number",
		Working: fmt.Sprintf("%s ÷ %s: %s", l.Print(s.Mass), l.Print(l.job.Yard.Payload), measure.Counted(int(s.Trips), "trip")), From: []string{"stone.mass", "yard.payload"}})
}

// spoil adds what the digging leaves over.
func (l *ledger) spoil(s *Spoil, piers []heights.PierHeights) {
	if s == nil {
		l.Blank("spoil.cut", "soil of the cuts before the holes, as it lay", "spoil.bank", "soil left over, as it lay in the ground", "spoil.loose", "loose soil to place elsewhere", "spoil.packed", "the same soil trodden down",
			"spoil.heap", "side of the heap of soil",
			"spoil.level", "height over the bench mark's datum to which the soil fills the low side under the frame", "spoil.deep", "depth of that soil at the lowest place")
		return
	}
	var keys []string
	for _, p := range piers {
		keys = append(keys, "pier."+p.Name+".dig")
	}
	l.Add(figure.Figure{Key: "spoil.cut", Means: "soil of the cuts before the holes, as it lay", Value: s.Cut, Formula: "Σ volumes of the cuts, their sides 1 up in 2 out",
		Working: l.Print(s.Cut), From: l.ground.Keys()})
	l.Add(figure.Figure{Key: "spoil.bank", Means: "soil left over, as it lay in the ground", Value: s.Bank, Formula: "Σ side² × dig + cuts − what goes back",
		Working: l.Sum(s.Bank, figure.Plus(s.Holes), figure.Plus(s.Cut), figure.Minus(s.Back)), From: append([]string{"hole.side", "site.soil.packed", "spoil.cut"}, keys...)})
	l.Add(figure.Figure{Key: "spoil.loose", Means: "loose soil to place elsewhere", Value: s.Loose, Formula: "bank × swell",
		Working: fmt.Sprintf("%s × %s = %s", l.Print(s.Bank), l.Print(l.job.Site.Soil.Swell), l.Print(s.Loose)), From: []string{"spoil.bank", "site.soil.swell"}})
	l.Add(figure.Figure{Key: "spoil.packed", Means: "the same soil trodden down", Value: s.Packed, Formula: "bank × packed",
		Working: fmt.Sprintf("%s × %s = %s", l.Print(s.Bank), l.Print(l.job.Site.Soil.Packed), l.Print(s.Packed)), From: []string{"spoil.bank", "site.soil.packed"}})
	l.Add(figure.Figure{Key: "spoil.heap", Means: "side of the heap of soil", Value: s.Heap, Rounding: measure.Up,
		Formula: "∛(9 × volume), a square heap rising 1 in 1.5", Working: l.Up(s.Heap), From: []string{"spoil.loose"}})
	l.Add(figure.Figure{Key: "spoil.level", Means: "height over the bench mark's datum to which the soil fills the low side under the frame", Value: s.Level,
		Formula: "the level under which the room over the ground takes the soil, trodden down", Working: fmt.Sprintf("%s up to %s", l.Print(s.Packed), l.Print(s.Level)),
		From: append([]string{"spoil.packed"}, l.ground.Keys()...)})
	l.Add(figure.Figure{Key: "spoil.deep", Means: "depth of that soil at the lowest place", Value: s.Deep, Formula: "level − lowest ground",
		Working: l.Sum(s.Deep, figure.Plus(s.Level), figure.Minus(s.Level-s.Deep)), From: []string{"spoil.level"}})
}
