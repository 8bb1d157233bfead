package frame

import (
	"cmp"
	"slices"

	"pierbook/calc/measure"
)

// part is one piece of a panelled floor before it is known which sheet it is cut from.
type part struct {
	row, number int // from 0
	cut         cut
	width       measure.Length
	ripped      bool
	sheet       int // from 0
}

// parts lists the pieces of a floor whose rows take turns in two ways of cutting,
// in the space of parts.
func (p *floor) parts(parts []part, odd, even []cut) []part {
	for r, width := range p.rowWidths() {
		way := odd
		if r%2 == 1 {
			way = even
		}
		for i, c := range way {
			parts = append(parts, part{row: r, number: i, cut: c, width: width, ripped: width < p.faceWidth})
		}
	}
	return parts
}

// slot is one length taken from a sheet: one piece, or strips side by side.
type slot struct {
	long  measure.Length
	parts []int
}

// share gives every piece its sheet and returns how many sheets it takes. Whole
// sheets come first; the rest go longest first, each to the offcut that it fills
// best. A cut end always lies over a joist, so any offcut long enough will do.
func (p *floor) share(parts []part) int {
	var slots []slot
	var narrow []int
	sheets := 0
	for i := range parts {
		long := parts[i].cut.to - parts[i].cut.from
		switch {
		case parts[i].ripped:
			narrow = append(narrow, i)
		case long == p.face:
			parts[i].sheet = sheets
			sheets++
		default:
			slots = append(slots, slot{long: long, parts: []int{i}})
		}
	}
	if len(narrow) > 0 { // rows that share the narrowing are alike
		slots = append(slots, sideBySide(parts, narrow, p.across(parts[narrow[0]].width))...)
	}
	slices.SortStableFunc(slots, func(a, b slot) int { return cmp.Compare(b.long, a.long) })
	var left []measure.Length // of the sheets cut up, the first of them being number `first`
	first := sheets
	for _, s := range slots {
		at := bestFit(left, s.long)
		if at < 0 {
			left = append(left, p.face)
			at = len(left) - 1
			sheets++
		}
		left[at] -= s.long + p.kerf
		for _, i := range s.parts {
			parts[i].sheet = first + at
		}
	}
	return sheets
}

// sideBySide puts strips of like length together, as many as a sheet is wide.
func sideBySide(parts []part, narrow []int, across int) []slot {
	long := func(i int) measure.Length { return parts[i].cut.to - parts[i].cut.from }
	slices.SortStableFunc(narrow, func(a, b int) int { return cmp.Compare(long(b), long(a)) })
	var slots []slot
	for group := range slices.Chunk(narrow, max(1, across)) {
		slots = append(slots, slot{long: long(group[0]), parts: group})
	}
	return slots
}

// bestFit returns the offcut that a piece fills best, −1 when it fits none.
func bestFit(left []measure.Length, long measure.Length) int {
	best := -1
	for i, l := range left {
		if l >= long && (best < 0 || l < left[best]) {
			best = i
		}
	}
	return best
}

// cutUp is a floor cut up at its best.
type cutUp struct {
	parts  []part
	step   int // joists between end joints of neighbouring rows, at most leastBays
	sheets int
	cuts   int // pieces shorter than a sheet
}

func (c cutUp) compare(o cutUp) int {
	return cmp.Or(cmp.Compare(o.step, c.step), cmp.Compare(c.sheets, o.sheets), cmp.Compare(c.cuts, o.cuts))
}

// best tries every pair of ways to cut alternate rows: first the stagger, then
// the fewest sheets, then the fewest cuts. It is false when no row can be laid.
func (p *floor) best() (cutUp, bool) {
	ways := p.rows()
	var best cutUp
	var spare []part // the pieces of the pair that lost
	for _, odd := range ways {
		for _, even := range ways {
			c := cutUp{parts: p.parts(spare[:0], odd, even), step: leastBays}
			spare = c.parts
			if len(c.parts) > len(odd) {
				c.step = stepBetween(odd, even, leastBays)
			}
			if best.parts != nil && c.step < best.step {
				continue
			}
			c.sheets = p.share(c.parts)
			for _, part := range c.parts {
				if part.cut.to-part.cut.from != p.face {
					c.cuts++
				}
			}
			if best.parts == nil || c.compare(best) < 0 {
				spare, best = best.parts, c
			}
		}
	}
	return best, best.parts != nil
}
