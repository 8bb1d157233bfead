package cutting

import (
	"slices"

	"pierbook/calc/measure"
)

// SheetCut is one straight cut through all of what is being cut, and the cuts
// within the strip that it takes off.
type SheetCut struct {
	Rip    bool           // along the sheet's length, else across it
	At     measure.Length // near side of the kerf, from the corner of the sheet
	Rest   bool           // no cut: what the cuts before it have left
	Within []SheetCut
}

// Saw returns the cuts of a sheet in the order of the saw: strips first, then
// what is cut from each. A part that reaches the edges needs no cut.
func (s Sheet) Saw(length, width measure.Length) []SheetCut {
	return saw(length, width, s.Placed)
}

// strip is the room of one or more parts between two cuts.
type strip struct {
	to    measure.Length // where the cut after it runs
	parts []Placed
}

// saw cuts up what reaches to right and far and holds the parts.
func saw(right, far measure.Length, parts []Placed) []SheetCut {
	rips := strips(parts, func(p Placed) (measure.Length, measure.Length) { return p.Y, p.Y + p.Width })
	crosses := strips(parts, func(p Placed) (measure.Length, measure.Length) { return p.X, p.X + p.Length })
	switch {
	case len(rips) > 1 || len(rips) == 1 && len(crosses) == 1 && rips[0].to < far:
		return cutOff(rips, true, far, func(to measure.Length, parts []Placed) []SheetCut { return saw(right, to, parts) })
	case len(crosses) > 1 || len(crosses) == 1 && crosses[0].to < right:
		return cutOff(crosses, false, right, func(to measure.Length, parts []Placed) []SheetCut { return saw(to, far, parts) })
	}
	return nil
}

// cutOff takes the strips off one after another, the last with a cut of its own
// where something is left beyond it.
func cutOff(strips []strip, rip bool, end measure.Length, within func(to measure.Length, parts []Placed) []SheetCut) []SheetCut {
	var cuts []SheetCut
	for _, s := range strips {
		cut := SheetCut{Rip: rip, At: s.to, Rest: s.to >= end, Within: within(s.to, s.parts)}
		if !cut.Rest || len(cut.Within) > 0 {
			cuts = append(cuts, cut)
		}
	}
	return cuts
}

// strips gathers parts whose extents overlap, in their order along the sheet.
func strips(parts []Placed, extent func(Placed) (from, to measure.Length)) []strip {
	sorted := slices.Clone(parts)
	slices.SortStableFunc(sorted, func(a, b Placed) int {
		x, _ := extent(a)
		y, _ := extent(b)
		return int(max(-1, min(1, x-y)))
	})
	var list []strip
	for _, p := range sorted {
		from, to := extent(p)
		if n := len(list); n > 0 && from < list[n-1].to {
			list[n-1].to = max(list[n-1].to, to)
			list[n-1].parts = append(list[n-1].parts, p)
			continue
		}
		list = append(list, strip{to: to, parts: []Placed{p}})
	}
	return list
}
