package order

import (
	"cmp"
	"slices"

	"pierbook/calc/measure"
)

// Trip is one load of the vehicle.
type Trip struct {
	Goods   []TripGoods
	Weight  measure.Mass
	Longest measure.Length // longest stick in it, 0 when none
	Over    bool           // one piece alone is heavier than the payload: have it delivered
}

// TripGoods are so many of one line of the order.
type TripGoods struct {
	What  string
	Count int // 0 for stone, which is shovelled or tipped by weight
	Mass  measure.Mass
}

// trips puts everything on the vehicle: the longest sticks first, then the rest
// by falling weight, each into the first load that still carries it; stone by
// itself. Loads are by weight alone: what the bed holds by size, the driver sees.
func trips(lines []Line, payload measure.Mass) []Trip {
	if payload <= 0 {
		return nil
	}
	var loads []Trip
	var stone []Line
	goods := slices.DeleteFunc(slices.Clone(lines), func(l Line) bool { return l.Each == 0 }) // a delivery is not carried
	slices.SortStableFunc(goods, func(a, b Line) int { return cmp.Or(cmp.Compare(longOf(b), longOf(a)), cmp.Compare(b.Each, a.Each)) })
	for _, l := range goods {
		if l.Group == Stone {
			stone = append(stone, l)
			continue
		}
		loads = load(loads, l, payload)
	}
	for _, l := range stone {
		left := l.Mass()
		for left > 1e-9*payload {
			take := min(left, payload)
			loads = append(loads, Trip{Goods: []TripGoods{{What: l.Short(), Mass: take}}, Weight: take})
			left -= take
		}
	}
	return loads
}

// load puts the pieces of a line on the loads, one by one.
func load(loads []Trip, l Line, payload measure.Mass) []Trip {
	for range l.Count {
		at := slices.IndexFunc(loads, func(t Trip) bool { return !t.Over && t.Weight+l.Each <= payload*(1+1e-9) })
		if at < 0 {
			loads = append(loads, Trip{Over: l.Each > payload})
			at = len(loads) - 1
		}
		t := &loads[at]
		if n := len(t.Goods); n == 0 || t.Goods[n-1].What != l.Short() {
			t.Goods = append(t.Goods, TripGoods{What: l.Short()})
		}
		last := &t.Goods[len(t.Goods)-1]
		last.Count++
		last.Mass += l.Each
		t.Weight += l.Each
		t.Longest = max(t.Longest, longOf(l))
	}
	return loads
}

func longOf(l Line) measure.Length {
	if l.Long == nil {
		return 0
	}
	return *l.Long
}
