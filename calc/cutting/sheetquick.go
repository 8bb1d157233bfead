package cutting

import (
	"cmp"
	"math"
	"slices"
)

// panel is a rectangle still to be cut from a sheet.
type panel struct {
	sheet         int
	x, y          int64
	length, width int64
}

// quickSheets returns the best of several quick plans: parts in the order of
// area, length, width or girth, each in the free panel that it fits most
// closely, the rest of the panel cut one way or the other.
func quickSheets(parts []rectangle, length, width int64) []Sheet {
	orders := []func(r rectangle) float64{
		func(r rectangle) float64 { return float64(r.length) * float64(r.width) },
		func(r rectangle) float64 { return float64(r.length) },
		func(r rectangle) float64 { return float64(r.width) },
		func(r rectangle) float64 { return float64(r.length + r.width) },
	}
	var best []Sheet
	for _, size := range orders {
		sorted := slices.Clone(parts)
		slices.SortStableFunc(sorted, func(a, b rectangle) int { return cmp.Compare(size(b), size(a)) })
		for _, longer := range []bool{false, true} {
			q := quick{length: length, width: width, longer: longer}
			for _, r := range sorted {
				q.put(r)
			}
			if best == nil || len(q.sheets) < len(best) {
				best = q.sheets
			}
		}
	}
	return best
}

// quick lays one part after the other.
type quick struct {
	length, width int64
	longer        bool // the first cut runs so that the larger rest stays whole
	free          []panel
	sheets        []Sheet
}

// put lays a part in the free panel that leaves the least beside it, or on a
// new sheet.
func (q *quick) put(r rectangle) {
	at, turned := q.closest(r)
	if at < 0 {
		q.free = append(q.free, panel{sheet: len(q.sheets), length: q.length, width: q.width})
		q.sheets = append(q.sheets, Sheet{})
		at, turned = q.closest(r)
	}
	p := q.free[at]
	q.free = slices.Delete(q.free, at, at+1)
	length, width := r.length, r.width
	if turned {
		length, width = width, length
	}
	q.sheets[p.sheet].Placed = append(q.sheets[p.sheet].Placed, r.at(p.x, p.y, turned))
	beyond := panel{p.sheet, p.x + length, p.y, p.length - length, p.width}
	beside := panel{p.sheet, p.x, p.y + width, p.length, p.width - width}
	if (beyond.length >= beside.width) == q.longer {
		beside.length = length
	} else {
		beyond.width = width
	}
	for _, rest := range []panel{beyond, beside} {
		if rest.length > 0 && rest.width > 0 {
			q.free = append(q.free, rest)
		}
	}
}

// closest returns the free panel that the part fits most closely, and whether
// it lies turned there; -1 when it fits none.
func (q *quick) closest(r rectangle) (int, bool) {
	best, turned, least := -1, false, int64(math.MaxInt64)
	for i, p := range q.free {
		if r.length <= p.length && r.width <= p.width {
			if spare := min(p.length-r.length, p.width-r.width); spare < least {
				best, turned, least = i, false, spare
			}
		}
		if r.Turns && r.width <= p.length && r.length <= p.width {
			if spare := min(p.length-r.width, p.width-r.length); spare < least {
				best, turned, least = i, true, spare
			}
		}
	}
	return best, turned
}
