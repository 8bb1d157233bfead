package cutting

import (
	"math"
	"slices"
)

// lister lists the patterns that a plan within the target can hold.
type lister struct {
	*task
	prices *prices
	sack   knapsack
	items  []item // pieces by value for length, those without value last
	table  *table // nil when it would be too large
	stock  int
	wanted int64 // least worth of a pattern on this stock length
	count  []int32
	list   []pattern
	limit  int
	steps  int
	extra  []part // put into every stick
	parts  []part // the store that patterns are cut from
}

// list returns every pattern whose reduced cost is not above the gap between
// the bound and the target, and whether there are no more than the limit:
//
//	bound + (weight − worth) ≤ target
//
// A plan within the target consists of such patterns alone. Patterns that have
// room for one more piece that may be needed are left out, since the fuller
// ones serve instead.
func (t *task) list(p *prices, gap int64, limit int) ([]pattern, bool) {
	if gap < 0 {
		return nil, true
	}
	l := &lister{task: t, prices: p, limit: limit, steps: 40 * limit}
	l.order()
	for j, s := range t.stocks {
		if !l.fill(j, s.room, gap) {
			return nil, false
		}
	}
	return l.list, true
}

// fill lists the patterns of one stock length with the room given.
func (l *lister) fill(j int, room, gap int64) bool {
	l.stock = j
	l.wanted = l.prices.yields[j] - gap
	l.prepare(j, room)
	before := l.steps
	l.descend(0, room, 0, math.MaxInt64)
	l.use(stepsOfScan * (before - l.steps))
	return l.steps > 0 && len(l.list) <= l.limit
}

func (l *lister) order() {
	t, p := l.task, l.prices
	l.sack.sort(t, p.dual[:len(t.pieces)])
	l.items = slices.Clone(l.sack.items)
	for i, k := range t.pieces {
		if p.dual[i] <= 0 {
			l.items = append(l.items, item{uses: k.uses, piece: int32(i)})
		}
	}
	l.count = make([]int32, len(l.items))
}

// prepare sets the numbers of each piece for the stock length and works out the table
// that tells how much the rest of a stick can still be worth.
func (l *lister) prepare(j int, room int64) {
	t := l.task
	pieces := make([]piece, len(l.items))
	value := make([]int64, len(l.items))
	for i := range l.items {
		l.items[i].most = int64(t.mostOf(int(l.items[i].piece), j))
		pieces[i], value[i] = t.pieces[l.items[i].piece], l.items[i].value
	}
	l.table = nil
	if l.sack.table.fits(len(pieces), room) {
		l.table = &l.sack.table
		l.use(l.table.fill(pieces, value, room, func(i int) int { return int(l.items[i].most) }))
	}
}

// rest returns an upper bound on what items from i on can be worth in a room.
func (l *lister) rest(i int, room int64) int64 {
	if l.table != nil {
		return l.table.rows[i][room]
	}
	if i == len(l.items) {
		return 0
	}
	return share(room, l.items[i].value, l.items[i].uses)
}

// descend puts items from i on into the room. spare is the shortest take of a
// piece passed over that might still go in.
func (l *lister) descend(i int, room, worth, spare int64) {
	l.steps--
	if l.steps <= 0 || len(l.list) > l.limit || worth+l.rest(i, room) < l.wanted {
		return
	}
	if i == len(l.items) {
		if spare > room {
			l.keep()
		}
		return
	}
	it := l.items[i]
	n := min(it.most, room/it.uses)
	if n == it.most {
		l.count[i] = int32(n)
		l.descend(i+1, room-n*it.uses, worth+n*it.value, spare)
		n--
	}
	for ; n >= 0; n-- {
		l.count[i] = int32(n)
		l.descend(i+1, room-n*it.uses, worth+n*it.value, min(spare, it.uses))
	}
	l.count[i] = 0
}

// keep puts the pattern at hand on the list.
func (l *lister) keep() {
	if cap(l.parts)-len(l.parts) < len(l.count)+1 {
		l.parts = make([]part, 0, 4096+len(l.count))
	}
	start := len(l.parts)
	for i, n := range l.count {
		if n > 0 {
			l.parts = append(l.parts, part{l.items[i].piece, n})
		}
	}
	used := l.stick(l.stock, l.parts[start:]).used
	l.parts = append(l.parts, l.extra...)
	parts := l.parts[start:len(l.parts):len(l.parts)]
	if len(parts) > 0 {
		l.list = append(l.list, pattern{int32(l.stock), parts, used})
	}
}
